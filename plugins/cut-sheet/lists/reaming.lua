-- Bores that have to be opened: rigid parts that are marked so, or that the blank does not pass.
local things = require "things"

local function rigid(part)
  local kind = part.fitting and part.fitting.kind
  return (kind == nil or kind == "rigid") and not part.on and not part.loose
end

-- Diameter of a bore at one of its faces, as it is; nil where it is not known.
local function bore_at(profile, first)
  local row = first and profile[1] or profile[#profile]
  return row and row.diameter_mm
end

-- The least bore that clears the blank with its gap; false where it is as wide already.
local function wanted(blank, gap, bore)
  if blank and bore and bore >= blank + gap then
    return false
  end
  return blank and blank + gap
end

return function(ctx)
  local gap = 2 * ctx.options.ream_gap_mm
  local rows = {}
  for _, fitted in ipairs(things.parts(ctx)) do
    local part, place = fitted.part, fitted.place
    local tight = place.clearance_mm and place.clearance_mm < 0
    if rigid(part) and (tight or (part.fitting and part.fitting.reamed)) then
      local bore = things.bore(ctx, place)
      local butt_bore, tip_bore = bore_at(bore, true), bore_at(bore, false)
      local butt = wanted(place.blank_at_start_mm, gap, butt_bore)
      local tip = wanted(place.blank_at_tip_side_mm, gap, tip_bore)
      if tight or butt ~= false or tip ~= false then
        rows[#rows + 1] = { item = fitted.name, butt_bore = butt_bore, butt = butt, tip_bore = tip_bore, tip = tip }
      end
    end
  end
  return {
    {
      title = "Bores to ream",
      narrow = true,
      datum = "",
      empty = "No bore has to be opened.",
      note = ("Blank plus %.2f mm all round for glue."):format(ctx.options.ream_gap_mm),
      rows = rows,
      columns = {
        { key = "tick", title = "", kind = "tick" },
        { key = "item", title = "part", kind = "text" },
        { key = "butt_bore", title = "butt face: now", kind = "diameter" },
        { key = "butt", title = "butt face: ream to", kind = "ream", strong = true },
        { key = "tip_bore", title = "tip face: now", kind = "diameter" },
        { key = "tip", title = "tip face: ream to", kind = "ream", strong = true },
      },
    },
  }
end
