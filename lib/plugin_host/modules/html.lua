-- withy.html: HTML as nodes. Text is escaped unless it is a node, so that nothing from a design becomes markup.
local html = {}

local Node = { __name = "node" }
local void = { br = true, col = true, hr = true, img = true, input = true, link = true, meta = true }
local escapes = { ["&"] = "&amp;", ["<"] = "&lt;", [">"] = "&gt;", ['"'] = "&quot;", ["'"] = "&#39;" }

-- Characters that XML 1.0 cannot hold (section 2.2) or that only steer a terminal (DEL, C1) are shown by their picture
-- (U+2400 to U+2421), else by U+FFFD: a drawing or page stays well-formed, and one sees that something stood there.
local function picture(control)
  local byte = control:byte()
  return utf8.char(byte == 127 and 0x2421 or 0x2400 + byte)
end

function html.escape(s)
  local shown = tostring(s):gsub("[\0-\8\11\12\14-\31\127]", picture)
  shown = shown:gsub("\xC2[\x80-\x9F]", "\u{FFFD}"):gsub("\xEF\xBF[\xBE\xBF]", "\u{FFFD}")
  return (shown:gsub("[&<>\"']", escapes))
end

-- A number with at most three decimals; other values as they are.
local function written(value)
  if math.type(value) ~= "float" then return tostring(value) end
  if value ~= value or value == math.huge or value == -math.huge then error("a number is not finite", 0) end
  local number = string.format("%.3f", value):gsub("0+$", ""):gsub("%.$", "")
  return number == "-0" and "0" or number
end

local function start_tag(name, attributes)
  local parts = { "<" .. name }
  for key, value in pairs(attributes) do
    if not tostring(key):match("^[%a_][%w_.:-]*$") then
      error("'" .. tostring(key) .. "' cannot name an attribute", 0)
    end
    if value == true then
      parts[#parts + 1] = key
    elseif value ~= false then
      parts[#parts + 1] = key .. '="' .. html.escape(written(value)) .. '"'
    end
  end
  return table.concat(parts, " ") .. ">"
end

local function add_children(out, children, count)
  for i = 1, count do
    local child = children[i]
    if type(child) == "table" and getmetatable(child) == Node then
      out[#out + 1] = child.markup
    elseif type(child) == "table" then
      add_children(out, child, #child)
    elseif child ~= nil and child ~= false then
      out[#out + 1] = html.escape(written(child))
    end
  end
end

function html.element(name, attributes, ...)
  if type(name) ~= "string" or not name:match("^%a[%w-]*$") then error("an element has a name", 2) end
  local out = { start_tag(name, attributes or {}) }
  if not void[name] then
    add_children(out, { ... }, select("#", ...))
    out[#out + 1] = "</" .. name .. ">"
  end
  return setmetatable({ markup = table.concat(out) }, Node)
end

function html.render(node)
  if getmetatable(node) ~= Node then error("render takes a node", 2) end
  return node.markup
end

local function table_row(cell, values, align)
  local cells = {}
  for i = 1, math.max(#values, #align) do
    local style = align[i] and ("text-align:" .. align[i]) or nil
    cells[i] = html.element(cell, { style = style }, values[i])
  end
  return html.element("tr", {}, cells)
end

function html.table(options)
  local align, rows = options.align or {}, {}
  for i, row in ipairs(options.rows) do rows[i] = table_row("td", row, align) end
  local head = options.head and html.element("thead", {}, table_row("th", options.head, align))
  return html.element("table", { class = options.class }, head, html.element("tbody", {}, rows))
end

function html.page(options)
  local style = options.style or ""
  if style:find("</", 1, true) then error("a style sheet cannot contain '</'", 2) end
  local out = {
    "<!DOCTYPE html>\n<html lang=\"", html.escape(options.language or "en"), "\">\n<head>\n",
    "<meta charset=\"utf-8\">\n<title>", html.escape(options.title), "</title>\n",
    "<style>\n", style, "</style>\n</head>\n<body>\n",
  }
  add_children(out, { options.body }, 1)
  out[#out + 1] = "\n</body>\n</html>\n"
  return table.concat(out)
end

return html
