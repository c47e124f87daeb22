-- withy.text: text for tables, sheets and files. Widths count characters.
local text = {}

local function width_of(s)
  return utf8.len(s) or #s
end

function text.trim(s)
  return (s:match("^%s*(.-)%s*$"))
end

function text.split(s, separator)
  if separator == "" then error("the separator is empty", 2) end
  local parts, from = {}, 1
  while true do
    local first, last = s:find(separator, from, true)
    if not first then break end
    parts[#parts + 1] = s:sub(from, first - 1)
    from = last + 1
  end
  parts[#parts + 1] = s:sub(from)
  return parts
end

function text.lines(s)
  local lines = text.split(s, "\n")
  if lines[#lines] == "" then lines[#lines] = nil end
  for i, line in ipairs(lines) do
    if line:byte(-1) == 13 then lines[i] = line:sub(1, -2) end
  end
  return lines
end

function text.wrap(s, width)
  local lines, line = {}, nil
  for word in s:gmatch("%S+") do
    if line and width_of(line) + 1 + width_of(word) <= width then
      line = line .. " " .. word
    else
      lines[#lines + 1] = line
      line = word
    end
  end
  lines[#lines + 1] = line
  return lines
end

function text.pad(s, width, align)
  local blanks = string.rep(" ", math.max(0, width - width_of(s)))
  if align == nil or align == "left" then return s .. blanks end
  if align == "right" then return blanks .. s end
  error("align is \"left\" or \"right\", not " .. tostring(align), 2)
end

function text.fixed(x, decimals)
  local written = string.format("%." .. (decimals or 0) .. "f", x)
  if written:match("^%-[0.]+$") then written = written:sub(2) end
  return written
end

local function csv_cell(value, separator)
  if value == nil then return "" end
  local cell = math.type(value) == "float" and text.fixed(value, 6):gsub("%.?0+$", "") or tostring(value)
  if cell:find("[\"\r\n]") or cell:find(separator, 1, true) then return '"' .. cell:gsub('"', '""') .. '"' end
  return cell
end

function text.csv_row(cells, separator)
  local row = {}
  for i = 1, #cells do row[i] = csv_cell(cells[i], separator or ",") end
  return table.concat(row, separator or ",")
end

-- One cell that begins at `from`: its text, and where its separator or the end is; or nil and what is wrong.
local function read_cell(line, separator, from)
  if line:sub(from, from) ~= '"' then
    local stop = line:find(separator, from, true) or #line + 1
    return line:sub(from, stop - 1), stop
  end
  local cell, at = "", from + 1
  while true do
    local quote = line:find('"', at, true)
    if not quote then return nil, "column " .. from .. ": a quote that is not closed" end
    cell = cell .. line:sub(at, quote - 1)
    if line:sub(quote + 1, quote + 1) ~= '"' then return cell, quote + 1 end
    cell, at = cell .. '"', quote + 2
  end
end

function text.uncertain(value, plus_minus, decimals)
  if not value then return "not known" end
  return text.fixed(value, decimals) .. (plus_minus and " ± " .. text.fixed(plus_minus, decimals) or "")
end

function text.clipped(s, most)
  local count = utf8.len(s)
  if not count or count <= most then return s end
  return s:sub(1, utf8.offset(s, most) - 1) .. "…"
end

function text.csv_cells(line, separator)
  separator = separator or ","
  local cells, from = {}, 1
  while true do
    local cell, stop = read_cell(line, separator, from)
    if not cell then return nil, stop end
    cells[#cells + 1] = cell
    if stop > #line then return cells end
    if line:sub(stop, stop + #separator - 1) ~= separator then
      return nil, "column " .. stop .. ": text after a closing quote"
    end
    from = stop + #separator
  end
end

return text
