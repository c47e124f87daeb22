-- One cell to a number: decimal point, or fractions of an inch.
local M = {}

local function fraction(cell)
  local whole, above, below = cell:match("^(%d*)%s*%f[%d](%d+)/(%d+)$")
  if not below or tonumber(below) == 0 then
    return nil
  end
  return (tonumber(whole) or 0) + tonumber(above) / tonumber(below)
end

-- The number, or nil and why.
function M.parse(cell, unit)
  if cell:find("^[+-]?%d+%.?%d*$") or cell:find("^[+-]?%.%d+$") then
    local number = tonumber(cell) + 0.0
    if number < 0 then
      return nil, ("%s is negative; places and diameters are not"):format(cell)
    end
    return number
  elseif cell:find("^[+-]?%d+,%d+$") then
    return nil, ("'%s' has a decimal comma; write %s"):format(cell, (cell:gsub(",", ".")))
  elseif unit == "inch" and fraction(cell) then
    return fraction(cell)
  end
  return nil, ("'%s' is no number"):format(cell)
end

return M
