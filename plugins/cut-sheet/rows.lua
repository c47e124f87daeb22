-- The lists as CSV: one figure a line.
local kinds = require "kinds"
local text = require "withy.text"

local M = {}

local HEAD = { "list", "item", "figure", "value", "unit", "inches", "counted from" }

-- The line of one figure, or nil where there is nothing to say.
local function figure(list, row, column)
  local kind, value = kinds[column.kind], row[column.key]
  if not kind.figure or column.key == "item" or (value == nil and column.optional) then
    return nil
  end
  local cells = value == nil and { "not known", "", "" } or kind.figure(value, column)
  local from = column.kind == "length" and (column.datum or list.datum) or ""
  return text.csv_row { list.title, row.item, column.figure or column.title, cells[1], cells[2], cells[3], from }
end

function M.make(lists)
  local result = { text.csv_row(HEAD) }
  for _, list in ipairs(lists) do
    for _, row in ipairs(list.rows) do
      for _, column in ipairs(list.columns) do
        result[#result + 1] = figure(list, row, column)
      end
    end
  end
  return table.concat(result, "\r\n") .. "\r\n"
end

return M
