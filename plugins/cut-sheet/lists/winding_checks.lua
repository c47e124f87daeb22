-- Winding checks against the blank at the face they lie on.
local things = require "things"

return function(ctx)
  local rows = {}
  for i, fit in ipairs(ctx:get("fit.winding_checks") or {}) do
    rows[i] = {
      item = fit.part or "winding check", blank = fit.blank_mm, bore = fit.bore_mm or false, gap = fit.gap_mm,
      next_down = fit.next_bore_mm, ahead = fit.next_stops_ahead_mm, ream = fit.ream_mm,
    }
  end
  if #rows == 0 then
    return {}
  end
  return {
    {
      title = "Winding checks",
      datum = "the winding check's place, towards the tip",
      caution = things.before_cuts(ctx, "Which one it is follows"),
      note = "The smallest bore in stock that goes over the blank there; the next one down stops short of its place.",
      rows = rows,
      columns = {
        { key = "tick", title = "", kind = "tick" },
        { key = "item", title = "winding check", kind = "text" },
        { key = "blank", title = "blank there", kind = "diameter" },
        { key = "bore", title = "take bore", kind = "stock", strong = true },
        { key = "gap", title = "leaves a gap of", kind = "diameter", optional = true },
        { key = "next_down", title = "next bore down", kind = "diameter", optional = true },
        { key = "ahead", title = "stops ahead by", kind = "length", step = 1, inch = 16, optional = true },
        { key = "ream", title = "or ream it by", kind = "diameter", optional = true },
      },
    },
  }
end
