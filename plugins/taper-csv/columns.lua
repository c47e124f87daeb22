-- The header: what each column holds, and in which unit.
local cells = require "cells"

local M = {}

local NAMES = {
  at = "at", place = "at", position = "at", station = "at", distance = "at", from_butt = "at",
  outer = "outer", diameter = "outer", od = "outer", outer_diameter = "outer", outside_diameter = "outer",
  outer_across = "outer_across", outer2 = "outer_across", od2 = "outer_across",
  wall = "wall", wall_thickness = "wall",
  inner = "inner", bore = "inner", id = "inner", inner_diameter = "inner", inside_diameter = "inner",
}
local UNITS = { mm = "mm", ["in"] = "inch", inch = "inch", inches = "inch", ['"'] = "inch", in64 = "in64" }
local HINT = "columns are at, outer, outer_across, wall, inner, each with its unit: at_mm, outer [in]"

-- "outer_mm", "outer [mm]", "Outer diameter (mm)" and "outer mm" are "outer" and "mm".
local function name_and_unit(cell)
  local name, unit = cell:lower():match('^([%a][%w_ ]-)[%s_%[%(]+(%a[%a%d]*)[%]%)]?$')
  if not name then
    name, unit = cell:lower():match('^([%a][%w_ ]-)%s*[%[%(]?(")[%]%)]?$')
  end
  return name and name:gsub("[%s_]+$", ""):gsub("%s+", "_"), unit
end

-- The columns of a header, in order: { name = "outer", unit = "mm" }.
function M.parse(ctx, header, line)
  local result, seen = {}, {}
  for i, cell in ipairs(header) do
    local function refuse(message)
      ctx:refuse(message .. "; " .. HINT, { line = line, column = cell.column })
    end
    local name, unit = name_and_unit(cell.text)
    local shown = cells.shown(cell.text)
    if cell.text == "" then
      refuse(("column %d has no name"):format(i))
    elseif not name and NAMES[cell.text:lower()] then
      refuse(("column '%s' does not say its unit"):format(shown))
    elseif not name or not NAMES[name] then
      refuse(("there is no column '%s'"):format(shown))
    elseif not UNITS[unit] then
      refuse(("'%s' is no unit that a column can have (mm, in, in64)"):format(cells.shown(unit)))
    elseif seen[NAMES[name]] then
      refuse(("column %s stands twice"):format(NAMES[name]))
    end
    seen[NAMES[name]] = true
    result[i] = { name = NAMES[name], unit = UNITS[unit] }
  end
  if not seen.at or not (seen.outer or seen.wall or seen.inner) then
    ctx:refuse("a table needs a column at and one of outer, wall, inner; " .. HINT, { line = line, column = 1 })
  end
  return result
end

return M
