-- withy.sheet: paper. Sizes: A4 and A3 from ISO 216, Letter and Tabloid from ANSI/ASME Y14.1 (8.5 x 11 and 11 x 17 in).
local svg = require "withy.svg"
local text = require "withy.text"
local sheet = {}

local papers = {
  A3 = { name = "A3", width_mm = 297, height_mm = 420 },
  A4 = { name = "A4", width_mm = 210, height_mm = 297 },
  Letter = { name = "Letter", width_mm = 215.9, height_mm = 279.4 },
  Tabloid = { name = "Tabloid", width_mm = 279.4, height_mm = 431.8 },
}

-- Black on white, so that a sheet is the same from any printer; nothing breaks inside a row or a drawing.
local base_style = [[
* { box-sizing: border-box; }
body { margin: 0 auto; font: 10pt/1.35 sans-serif; color: #000; background: #fff; }
h1 { font-size: 15pt; margin: 0 0 2mm; }
h2 { font-size: 12pt; margin: 5mm 0 1.5mm; break-after: avoid; }
p { margin: 0 0 2mm; }
table { border-collapse: collapse; width: 100%; margin: 0 0 3mm; }
th, td { border: 0.2mm solid #000; padding: 0.8mm 1.5mm; text-align: left; vertical-align: top; }
th { border-bottom-width: 0.5mm; }
thead { display: table-header-group; }
tr, svg, figure { break-inside: avoid; }
]]

function sheet.paper(name)
  local paper = papers[name]
  if not paper then error("paper is \"A4\", \"Letter\", \"A3\" or \"Tabloid\", not \"" .. tostring(name) .. "\"", 2) end
  return { name = paper.name, width_mm = paper.width_mm, height_mm = paper.height_mm }
end

function sheet.style(options)
  options = options or {}
  local margin = options.margin_mm or 12
  -- Without a paper: as wide as A4, the narrower of the two.
  local paper = options.paper and sheet.paper(options.paper)
  local width = paper and paper.width_mm or papers.A4.width_mm
  local size = ""
  if paper then
    local w, h = paper.width_mm, paper.height_mm
    if options.landscape then w, h, width = h, w, h end
    size = string.format("size: %smm %smm; ", text.fixed(w, 1), text.fixed(h, 1))
  end
  return string.format("@page { %smargin: %smm; }\n", size, text.fixed(margin, 1)) .. base_style ..
    string.format("body { width: %smm; }\n", text.fixed(width - 2 * margin, 1))
end

function sheet.scale_bar(length_mm)
  local marks = {}
  for x = 0, length_mm, 10 do
    local tall = x % 50 == 0
    marks[#marks + 1] = svg.line(x + 5, tall and 4 or 6, x + 5, 9)
    if tall then
      marks[#marks + 1] = svg.text(x + 5, 3, tostring(x), { ["text-anchor"] = "middle", stroke = "none" })
    end
  end
  local says = "This line is " .. text.fixed(length_mm, 0) .. " mm when the page is printed at 100 %"
  return svg.drawing(length_mm + 10, 15,
    svg.group({ stroke = "#000", ["stroke-width"] = 0.2, ["font-size"] = 3, ["font-family"] = "sans-serif" },
      svg.line(5, 9, length_mm + 5, 9), marks,
      svg.text(5, 13.5, says, { stroke = "none" })))
end

function sheet.tiles(length_mm, page_mm, overlap_mm)
  overlap_mm = overlap_mm or 0
  if not (overlap_mm >= 0 and page_mm > overlap_mm) then error("a page must be longer than what overlaps", 2) end
  local tiles, start = {}, 0
  repeat
    local stop = math.min(start + page_mm, length_mm)
    tiles[#tiles + 1] = { start_mm = start, end_mm = stop }
    start = start + page_mm - overlap_mm
  until stop >= length_mm
  return tiles
end

return sheet
