-- Places in words. Lengths are rounded as on the cut sheet: in the design's own unit to 1/16 in or 1 mm; the other unit
-- says where that same place is.
local text = require "withy.text"
local units = require "withy.units"

local M = {}

-- The words for a place, in mm.
function M.length(ctx)
  if ctx:get("identity.units") == "INCH" then
    return function(mm)
      local place = units.round(mm, 25.4 / 16)
      return ("%s  %s mm"):format(units.inches(place, 16), text.fixed(place, 1))
    end
  end
  return function(mm)
    local place = units.round(mm, 1)
    return ("%s mm  %s"):format(text.fixed(place, 0), units.inches(place, 32))
  end
end

function M.rounding(ctx)
  return ctx:get("identity.units") == "INCH" and ", to 1/16 in; mm are the same place"
    or ", to 1 mm; inches are the same place to 1/32"
end

function M.diameter(mm)
  return text.fixed(mm, 2) .. " mm"
end

return M
