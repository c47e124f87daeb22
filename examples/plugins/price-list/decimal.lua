-- Exact decimal numbers: a whole number of units of 10^-places. Money is never a binary fraction.
local M = {}

-- Within these, a thousand amounts add up exactly in 63 bits: 1000 x 10^9 x 10^6 < 2^63.
local LARGEST = 10 ^ 9
local MOST_PLACES = 6

-- "12.50" -> { units = 1250, places = 2 }; nil where the text is no decimal number, or too long to be added up.
function M.parse(s)
  local sign, whole, point, part = s:match("^(%-?)(%d+)(%.?)(%d*)$")
  if not whole or (point == "." and part == "") or #part > MOST_PLACES or tonumber(whole) > LARGEST then
    return nil
  end
  local units = math.tointeger(tonumber(whole .. part))
  return { units = sign == "-" and -units or units, places = #part }
end

local function at_places(x, places)
  local units = x.units
  for _ = x.places + 1, places do
    units = units * 10
  end
  return units
end

function M.add(a, b)
  local places = math.max(a.places, b.places)
  return { units = at_places(a, places) + at_places(b, places), places = places }
end

-- `count` is a whole number.
function M.times(x, count)
  return { units = x.units * count, places = x.places }
end

-- With at least `places` digits behind the point.
function M.format(x, places)
  local shown = math.max(x.places, places)
  local units = at_places(x, shown)
  local digits = ("%0" .. shown + 1 .. "d"):format(math.abs(units))
  local whole, part = digits:sub(1, #digits - shown), digits:sub(#digits - shown + 1)
  return (units < 0 and "-" or "") .. whole .. (shown > 0 and "." .. part or "")
end

return M
