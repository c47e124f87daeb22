-- By how much each guide turns the line, now and as proposed.
local strips = require "strip"
local text = require "withy.text"

-- The guides of a layout that the axis has: visit(ring), without the tip-top, whose turn is rather that of the rod.
local function each_guide(layout, visit)
  for i, ring in ipairs(layout.strung.rings) do
    if ring.turn_deg and ring.from_butt_mm and i < #layout.strung.rings then
      visit(ring)
    end
  end
end

-- Nodes of the strip in the box { top, height }; layouts as in strips.lua.
return function(of, layouts, box)
  local low, high = 0, 1
  for _, layout in ipairs(layouts) do
    each_guide(layout, function(ring) low, high = math.min(low, ring.turn_deg), math.max(high, ring.turn_deg) end)
  end
  local strip = strips.new(of, box, "Turn of the line at each guide, deg; at the tip-top: " .. of.tip_turn, low,
    high * 1.2)
  local said
  for _, layout in ipairs(layouts) do
    said = {}
    each_guide(layout, function(ring)
      if strip:inside(ring.from_butt_mm) then
        local x, y = strip:mark(ring.from_butt_mm, ring.turn_deg, layout.dashed)
        said[#said + 1] = { x = x, y = y, words = text.fixed(ring.turn_deg, 1) }
      end
    end)
  end
  strip:numbers(said)
  return strip.nodes
end
