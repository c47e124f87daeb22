-- The pages to print: a drawing each, then their figures in tables, and the layouts that were looked at.
local html = require "withy.html"
local layouts = require "layouts"
local says = require "says"
local sheet = require "withy.sheet"
local table_of = require "withy.table"
local text = require "withy.text"
local words = require "words"

local M = {}

local e = html.element

local STYLE = [[
body { font-size: 9pt; }
svg { display: block; max-width: 100%; break-after: page; }
h1, h2, td, th, p { overflow-wrap: break-word; }
section { break-inside: avoid; }
td, th { font-variant-numeric: tabular-nums; padding: .3mm 1.5mm; }
]]

local function figure(value, decimals)
  return value and text.fixed(value, decimals) or "not known"
end

local function from_tip(known, strung, ring)
  local tip = strung.at_mm[#strung.at_mm]
  return ring and ring.from_butt_mm and tip and known.length.say(tip - ring.from_butt_mm) or "not known"
end

-- The span that goes on from a ring, towards the tip.
local function span_from(strung, id)
  return id and table_of.find(strung.spans, function(span) return span.from_ring == id end)
end

local function ring_of(strung, id)
  return id and table_of.find(strung.rings, function(ring) return ring.id == id end)
end

-- One ring under a load; beside it, where the load has both layouts, the same ring as it is now.
local function row(known, load, i)
  local strung = load.said
  local ring = strung.rings[i]
  local is_tip = i == #strung.rings
  local span = span_from(strung, ring.id)
  local cells = { is_tip and "" or ("%d"):format(i), is_tip and "tip-top" or text.clipped(ring.id or "no id", 40) }
  local function add(cell)
    cells[#cells + 1] = cell
  end
  local now = load.now and load.proposed and ring_of(load.now, ring.id)
  if load.proposed then
    add(is_tip and "0" or now and from_tip(known, load.now, now) or "not known")
  end
  add(is_tip and "0" or from_tip(known, strung, ring))
  if load.proposed then
    add(figure(now and now.turn_deg, 1))
  end
  add(figure(ring.turn_deg, 1))
  add(figure(ring.force_n, 2))
  add(figure(ring.force_across_n, 2))
  add(is_tip and "" or figure(span and span.clearance_mm, 1))
  if strung.rings_stand == "around" then
    add(figure(ring.aside_mm, 0))
  end
  return cells
end

local function head(load)
  local cells = { "no.", "guide" }
  local function add(...)
    table.move({ ... }, 1, select("#", ...), #cells + 1, cells)
  end
  if load.proposed then
    add("from the tip-top's ring, now", "proposed", "turn of the line now, deg", "proposed")
  else
    add("from the tip-top's ring", "turn of the line, deg")
  end
  add("force on the ring, N", "of it across the blank, N", "line off the blank from here to the next, mm, at least")
  if load.said.rings_stand == "around" then
    add("stands aside, mm")
  end
  return cells
end

local function load_table(known, load)
  local rows = {}
  for i in ipairs(load.said.rings) do
    rows[i] = row(known, load, i)
  end
  local said = table_of.map(says.head(known, load), function(s) return e("p", {}, s) end)
  said[1] = e("h2", {}, says.title(load))
  return e("section", {}, said, #rows > 0 and html.table { head = head(load), rows = rows } or nil)
end

function M.make(known, drawings)
  return html.page {
    title = known.name .. ": the line through its guides",
    style = sheet.style { paper = known.paper, landscape = true } .. STYLE,
    body = {
      drawings,
      e("h1", {}, known.name .. ": the line through its guides"),
      layouts.draw(known),
      table_of.map(known.loads, function(load) return load_table(known, load) end),
      e("p", {}, "Counted from the tip-top's ring centre to the guide's ring centre, along the rod. ± is about two "
        .. "standard deviations. The line runs straight from ring to ring; the rod's own weight is not in it."),
      e("p", {}, words.CAUTION),
    },
  }
end

return M
