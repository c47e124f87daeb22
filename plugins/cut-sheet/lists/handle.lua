-- Handle parts in place, butt first.
local things = require "things"

local function words(word)
  return word and word:gsub("_", " ")
end

local function side(part)
  if part.clamps_on then
    return "sideways"
  end
  return part.slides_on_from and part.slides_on_from:lower()
end

return function(ctx)
  local rows = {}
  for _, fitted in ipairs(things.parts(ctx)) do
    local part, place = fitted.part, fitted.place
    rows[#rows + 1] = {
      item = fitted.name,
      kind = part.name or words(part.kind),
      start = place.start_mm,
      length = place.length_mm,
      butt = place.blank_at_start_mm,
      tip = place.blank_at_tip_side_mm,
      from = side(part),
      bond = part.bond or words(part.held_by),
    }
  end
  return {
    {
      title = "Handle",
      datum = "the butt end of the finished rod (outer end of the butt cap) to the part's butt face",
      empty = "No handle in this design.",
      rows = rows,
      columns = {
        { key = "tick", title = "", kind = "tick" },
        { key = "item", title = "part", kind = "text" },
        { key = "kind", title = "", figure = "kind", kind = "text", optional = true },
        { key = "start", title = "begins at", kind = "length", step = 1, inch = 16, strong = true },
        { key = "length", title = "long", kind = "length", step = 1, inch = 16, datum = "end to end" },
        { key = "butt", title = "blank, butt face", kind = "diameter", optional = true },
        { key = "tip", title = "blank, tip face", kind = "diameter", optional = true },
        { key = "from", title = "goes on from", kind = "text", optional = true },
        { key = "bond", title = "held by", kind = "text", optional = true },
      },
    },
  }
end
