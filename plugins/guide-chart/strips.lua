-- Three strips along the rod, one below the other, the tip at the right as in the picture above them: line off the
-- blank, turn of the line at each guide, moment in the blank with what the line beside it makes of it.
local list = require "withy.table"
local moments = require "moments"
local off_blank = require "off_blank"
local strip = require "strip"
local svg = require "withy.svg"
local text = require "withy.text"
local turns = require "turns"

local M = {}

local TITLE, NARROW_TITLE, AXIS = 4.6, 8.4, 8 -- mm: above each, also where it takes two lines; below the last
local NARROW = 200 -- mm

-- Below the last strip: distances from the tip-top's ring.
local function axis(known, of, bottom)
  local unit = known.length
  local nodes = {}
  for n = 0, math.floor((of.last - of.first) / of.step) do
    local x = of.left + of.width * (1 - n * of.step / (of.last - of.first))
    nodes[#nodes + 1] = svg.text(x, bottom + 3.3, ("%g"):format(n * of.step / unit.mm),
      { ["text-anchor"] = "middle", ["font-size"] = strip.SMALL })
  end
  nodes[#nodes + 1] = svg.text(of.left + of.width / 2, bottom + 6.6,
    ("from the tip-top's ring, %s (the tip is at the right, the clamp at the left)"):format(unit.unit),
    { ["text-anchor"] = "middle", ["font-size"] = strip.SMALL })
  return nodes
end

local function both(layouts, words)
  local said = {}
  for i, layout in ipairs(layouts) do
    said[i] = (#layouts > 1 and layout.name .. " " or "") .. words(layout.strung)
  end
  return table.concat(said, ", ")
end

-- Nodes in the box { left, top, width, height }; layouts { { strung =, name =, dashed = }, ... }, the main one last.
function M.draw(known, layouts, box, hatch)
  local main = layouts[#layouts].strung
  local first, last = main.at_mm[1], main.at_mm[#main.at_mm]
  local of = {
    left = box.left + strip.LEFT, width = box.width - strip.LEFT - 2, first = first, last = last,
    step = list.at_least(known.length.steps, (last - first) / known.length.mm / 12) * known.length.mm,
    least = both(layouts, function(strung)
      return strung.clearance_mm and text.fixed(strung.clearance_mm, 1) or "not known"
    end),
    tip_turn = both(layouts, function(strung)
      local tip = strung.rings[#strung.rings]
      return tip and tip.turn_deg and text.fixed(tip.turn_deg, 1) or "not known"
    end),
  }
  local title = box.width < NARROW and NARROW_TITLE or TITLE
  local each = (box.height - AXIS) / 3
  local function part(n)
    return { top = box.top + title + n * each, height = each - title }
  end
  return {
    axis(known, of, box.top + 3 * each),
    off_blank(known, of, layouts, part(0)), turns(of, layouts, part(1)), moments.draw(of, layouts, part(2), hatch),
  }
end

return M
