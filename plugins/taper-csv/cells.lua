-- Bytes to lines, lines to cells that know their column.
local text = require "withy.text"

local M = {}

local MOST_CELLS = 64 -- in a row; a table has five columns
local LONGEST_CELL = 200 -- bytes
local LONGEST_SHOWN = 40 -- characters of a cell that a message repeats

-- The lines of the input, whatever ends them; refuses what is not 8-bit text.
function M.lines(ctx)
  local input = ctx.input
  if input:find("^\xFF\xFE") or input:find("^\xFE\xFF") or input:find("\0", 1, true) then
    ctx:refuse("this is not UTF-8 text (UTF-16?); save it as CSV in UTF-8", { line = 1, column = 1 })
  end
  input = input:gsub("^\xEF\xBB\xBF", ""):gsub("\r\n?", "\n")
  local lines = {}
  for line in (input .. "\n"):gmatch("([^\n]*)\n") do
    lines[#lines + 1] = line
  end
  return lines
end

-- Refuses a row that is not UTF-8 or holds a control character, with the place of the first.
function M.check(ctx, row, line)
  local length, wrong = utf8.len(row)
  if not length then
    ctx:refuse(("the byte 0x%02X is not UTF-8; save the table as CSV in UTF-8"):format(row:byte(wrong)),
      { line = line, column = utf8.len(row, 1, wrong - 1) + 1 })
  end
  local control = row:find("[\1-\8\11-\31\127]")
  if control then
    ctx:refuse(("there is a control character (0x%02X); take it out"):format(row:byte(control)),
      { line = line, column = utf8.len(row, 1, control - 1) + 1 })
  end
end

-- A cell as a message may repeat it: its start, and by its number each character that may not be seen.
function M.shown(cell)
  local parts = {}
  for _, code in utf8.codes(cell) do
    if #parts == LONGEST_SHOWN then
      parts[#parts + 1] = "..."
      break
    end
    local seen = code >= 0x20 and code < 0x7F or code >= 0xA1 and code < 0x250 and code ~= 0xAD
    parts[#parts + 1] = seen and utf8.char(code) or ("<U+%04X>"):format(code)
  end
  return table.concat(parts)
end

-- What parts the columns of a header.
function M.separator(header)
  return header:find("\t", 1, true) and "\t" or header:find(";", 1, true) and ";" or ","
end

-- The column, in characters, of a byte of a line.
local function column_of(line, byte)
  return utf8.len(line, 1, byte - 1) + 1
end

-- The byte of the quote that closes the one at `open`, or nil. Two quotes inside stand for one.
local function closing_quote(line, open)
  local at = open
  repeat
    at = line:find('"', at + 1, true)
    local doubled = at and line:sub(at + 1, at + 1) == '"'
    at = doubled and at + 1 or at
  until not doubled
  return at
end

-- Cells as { text =, column = }, trimmed and without their quotes. Refuses what no table has.
function M.split(ctx, line, number, separator)
  local result, start = {}, 1
  repeat
    if #result == MOST_CELLS then
      ctx:refuse(("this row has more than %d cells"):format(MOST_CELLS),
        { line = number, column = column_of(line, start) })
    end
    local first = line:match("^ *()", start)
    local close = line:sub(first, first) == '"' and closing_quote(line, first)
    local stop = line:find(separator, close or start, true) or #line + 1
    local value = close and line:sub(first + 1, close - 1):gsub('""', '"') or line:sub(first, stop - 1)
    if #value > LONGEST_CELL then
      ctx:refuse(("this cell has %d bytes, and at most %d are read"):format(#value, LONGEST_CELL),
        { line = number, column = column_of(line, first) })
    end
    result[#result + 1] = { text = text.trim(value), column = column_of(line, first) }
    start = stop + 1
  until stop > #line
  return result
end

return M
