-- Bytes to lines, lines to cells that know their column.
local text = require "withy.text"

local M = {}

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

-- What parts the columns of a header.
function M.separator(header)
  return header:find("\t", 1, true) and "\t" or header:find(";", 1, true) and ";" or ","
end

-- The column, in characters, of a byte of a line.
local function column_of(line, byte)
  return (utf8.len(line, 1, byte - 1, true) or byte - 1) + 1
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

-- Cells as { text =, column = }, trimmed and without their quotes.
function M.split(line, separator)
  local result, start = {}, 1
  repeat
    local first = line:match("^ *()", start)
    local close = line:sub(first, first) == '"' and closing_quote(line, first)
    local stop = line:find(separator, close or start, true) or #line + 1
    local value = close and line:sub(first + 1, close - 1):gsub('""', '"') or line:sub(first, stop - 1)
    result[#result + 1] = { text = text.trim(value), column = column_of(line, first) }
    start = stop + 1
  until stop > #line
  return result
end

return M
