-- One list as a section of the page: its title, its datum, its table.
local html = require "withy.html"
local kinds = require "kinds"

local M = {}

local WHOLE = 40 -- rows that a page holds in any case: such a list is not parted

local e = html.element

local function class_of(cell_class, column)
  local class = cell_class .. (column.strong and " s" or "")
  return class ~= "" and class or nil
end

local function head(list)
  local cells = {}
  for _, column in ipairs(list.columns) do
    for i, unit in ipairs(kinds[column.kind].heads) do
      local class = i == 2 and column.kind == "length" and "i" or unit ~= "" and "n" or nil
      cells[#cells + 1] = e("th", { class = class }, i == 1 and column.title ~= "" and column.title or nil,
        i == 1 and unit ~= "" and column.title ~= "" and e("br", {}) or nil, unit)
    end
  end
  return e("thead", {}, e("tr", {}, cells))
end

local function body_row(list, row)
  local cells = {}
  for _, column in ipairs(list.columns) do
    local kind, value = kinds[column.kind], row[column.key]
    if value == nil and column.kind ~= "tick" and column.kind ~= "write" then
      cells[#cells + 1] = e("td", { class = "u", colspan = #kind.heads }, column.optional and "" or "not known")
    else
      for _, cell in ipairs(kind.cells(value, column)) do
        cells[#cells + 1] = e("td", { class = class_of(cell[1], column) }, cell[2], cell[3])
      end
    end
  end
  return e("tr", { class = row.strong and "s" or nil }, cells)
end

-- A row to write in.
local function spare_row(list)
  local cells = {}
  for _, column in ipairs(list.columns) do
    for i = 1, #kinds[column.kind].heads do
      cells[#cells + 1] = e("td", { class = column.kind == "write" and "w" or nil },
        column.kind == "tick" and i == 1 and kinds.tick.cells()[1][2] or nil)
    end
  end
  return e("tr", {}, cells)
end

local function datum(list)
  if #list.rows == 0 or list.datum == "" then
    return nil
  end
  return e("span", {}, "from " .. list.datum)
end

function M.section(list, ...)
  local content = e("p", { class = "note" }, list.empty)
  if #list.rows > 0 then
    local rows = {}
    for i, row in ipairs(list.rows) do
      rows[i] = body_row(list, row)
    end
    for i = 1, list.spare_rows or 0 do
      rows[#list.rows + i] = spare_row(list)
    end
    local shown = e("table", { class = list.fine and "fine" or list.write and "write" or nil }, head(list),
      e("tbody", {}, rows))
    content = {
      list.caution and e("p", { class = "note s" }, list.caution),
      shown,
      list.note and e("p", { class = "note" }, list.note),
    }
  end
  local class = list.class or #list.rows == 0 and "none" or #list.rows <= WHOLE and "whole" or nil
  return e("section", { class = class }, e("h2", {}, list.title, datum(list)), content, ...)
end

return M
