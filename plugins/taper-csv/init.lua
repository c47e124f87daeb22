-- Importer: a calliper table of one blank section, as a design that holds that section.
--
--   # butt section, read 2026-03-13               a line that begins with # is a comment
--   at_in, outer_mm, wall_mm                      the header names each column and its unit
--   0,     13.46,    1.15
--   3,     13.21,                                 an empty cell is 'not known'
--   7 1/2, 12.80,                                 inches may be fractions
--
-- Columns: `at` (from the section's butt end as supplied), `outer` (or `outer diameter`), `outer_across` (a second
-- reading of the outer diameter, a quarter turn on), and `wall` or `inner`. Units: mm, in (or inch), in64. `at_mm`,
-- `at [mm]`, `at (mm)` and `at mm` are the same. Columns are parted by tabs, else semicolons, else commas, as the
-- header has them. The design keeps the units of the table.
local cells = require "cells"
local columns = require "columns"
local numbers = require "numbers"
local units = require "withy.units"

local function length_option(ctx)
  if not ctx.options.length then
    return nil
  end
  local length, why = units.length(ctx.options.length)
  return length or ctx:refuse("option length: " .. why .. '; write it like "87 in" or "2209.8 mm"')
end

-- Refuses a place such as 1.000 mm after 950 mm.
local function check_thousands(ctx, cell, place, before, position)
  local unit, number = next(place)
  if numbers.has_thousands_point(cell.text, number, before and before[unit]) then
    ctx:refuse(("at: '%s' after %g: does the point part thousands? write %s"):format(
      cell.text, before[unit], (cell.text:gsub("%.", ""))), position)
  end
end

-- The station of one line, or an orderly refusal that names line and column. `before` is the row above.
local function station(ctx, header, row, line, before)
  if #row > #header then
    ctx:refuse(("%d cells under a header of %d; a decimal comma? write 12.5, or part the columns with semicolons")
      :format(#row, #header), { line = line, column = row[#header + 1].column })
  end
  local result, read = {}, 0
  for i, cell in ipairs(row) do
    if cell.text ~= "" then
      local column = header[i]
      local position = { line = line, column = cell.column }
      local length, why = numbers.parse(cell.text, column.unit)
      if not length then
        ctx:refuse(column.name .. ": " .. why, position)
      end
      if column.name == "at" then
        check_thousands(ctx, cell, length, before and before.at, position)
      end
      result[column.name] = length
      read = read + 1
    end
  end
  if not result.at then
    ctx:refuse("this row does not say where it was read (column at)", { line = line, column = 1 })
  elseif read == 1 then
    ctx:refuse("this row has a place and no reading", { line = line, column = 1 })
  elseif result.wall and result.inner then
    ctx:refuse("wall and inner diameter in one row: leave one of them empty", { line = line, column = 1 })
  end
  return result
end

local function read_table(ctx)
  local header, separator
  local stations = {}
  for line, row_text in ipairs(cells.lines(ctx)) do
    if row_text:find("%S") and not row_text:find("^%s*#") then
      cells.check(ctx, row_text, line)
      separator = separator or cells.separator(row_text)
      local row = cells.split(ctx, row_text, line, separator)
      if not header then
        header = columns.parse(ctx, row, line)
      else
        stations[#stations + 1] = station(ctx, header, row, line, stations[#stations])
      end
    end
  end
  if not header then
    ctx:refuse("there is no header; begin with a line like: at_mm, outer_mm", { line = 1, column = 1 })
  elseif #stations == 0 then
    ctx:refuse("there is no row under the header", { line = 1, column = 1 })
  end
  return stations
end

local function import(ctx)
  local length = length_option(ctx)
  local stations = read_table(ctx)
  if not length then
    ctx:emit { message = "how long the section is stays 'not known'; give it with the option length" }
  end
  return {
    format = "withy/1",
    blank = {
      sections = {
        {
          id = ctx.options.section,
          material = ctx.options.material,
          length = length,
          taper = { reading = { source = "MEASURED", instrument = ctx.options.instrument }, stations = stations },
        },
      },
    },
  }
end

return {
  api = 1,
  name = "taper-csv",
  version = "1.0.0",
  license = "Apache-2.0",
  summary = "Calliper tables of blanks",
  importers = {
    {
      name = "taper-csv",
      extensions = { "csv", "tsv" },
      summary = "A calliper table of one section (at_mm, outer_mm, wall_mm or inner_mm; inches as at_in, at_in64)",
      options = {
        section = { type = "string", default = "blank", summary = "id of the section" },
        length = { type = "string", summary = 'its length as supplied, with unit: "87 in"; unset = not known' },
        material = { type = "string", summary = "carbon, glass, carbon_glass or cane; unset = not known" },
        instrument = { type = "string", default = "calliper", summary = "what the diameters were read with" },
      },
      run = import,
    },
  },
}
