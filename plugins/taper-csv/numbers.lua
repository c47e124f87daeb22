-- One cell to a length in its column's unit: a decimal point, or inches as they are written at the bench.
local cells = require "cells"
local units = require "withy.units"

local M = {}

-- `12,5` has a decimal comma; `1,000` may be a thousand.
local function why_comma(cell)
  local pointed = cell:gsub(",", ".")
  if cell:find("^%d%d?%d?,%d%d%d$") then
    return ("'%s' has a comma; write %s, or %s if it parts thousands"):format(cell, pointed, (cell:gsub(",", "")))
  end
  return ("'%s' has a decimal comma; write %s"):format(cells.shown(cell), cells.shown(pointed))
end

-- `7 1/2`, `12-3/4`, `1' 6"`.
local function bench_inches(cell)
  return units.length(cell:find("[\"']") and cell or cell .. " in")
end

-- The length as a design holds it, { mm = 12.5 }, or nil and why.
function M.parse(cell, unit)
  if cell:find("^[+-]?%d+%.?%d*$") or cell:find("^[+-]?%.%d+$") then
    local number = tonumber(cell) + 0.0
    if number < 0 then
      return nil, ("%s is negative; places and diameters are not"):format(cells.shown(cell))
    end
    return { [unit] = number }
  elseif cell:find("^[+-]?%d+,%d+$") then
    return nil, why_comma(cell)
  end
  local length = unit == "inch" and not cell:find("^-") and bench_inches(cell) or nil
  return length, not length and ("'%s' is no number"):format(cells.shown(cell)) or nil
end

-- Whether a place is a thousand times too small because a point parts its thousands: 1.000 after 950.
function M.has_thousands_point(cell, number, before)
  return cell:find("^%d%d?%d?%.%d%d%d$") ~= nil and before ~= nil and number < before and number * 1000 > before
end

return M
