-- How far the line stands off the blank, place by place, and the rings that hold it there.
local clearance = require "clearance"
local strips = require "strip"
local svg = require "withy.svg"
local text = require "withy.text"
local train = require "train"

local TALL = 2.2 -- times the middle height of the rings: taller ones leave the strip, with their height beside them

local function height_above(known, ring)
  local radius = ring.from_butt_mm and known.radius(ring.from_butt_mm)
  return radius and ring.offset_mm and ring.offset_mm - radius
end

local function middle_of(values)
  table.sort(values)
  return values[(#values + 1) // 2]
end

local function bounds_of_heights(known, layouts)
  local heights, low = {}, 0
  for _, layout in ipairs(layouts) do
    for _, ring in ipairs(layout.strung.rings) do
      heights[#heights + 1] = height_above(known, ring)
    end
    for _, point in ipairs(layout.line) do
      low = math.min(low, point[2])
    end
  end
  if #heights == 0 then
    return low, 1
  end
  local middle = math.max(1, middle_of(heights))
  return math.max(low, -middle), math.min(math.max(1, heights[#heights]), TALL * middle) * 1.15
end

local function rings_off(known, strip, layout)
  local tall = {}
  for _, ring in ipairs(layout.strung.rings) do
    local height = height_above(known, ring)
    if height and strip:inside(ring.from_butt_mm) then
      local x = strip:mark(ring.from_butt_mm, height, layout.dashed)
      if height > strip.high then
        tall[#tall + 1] = { x = x, y = strip.top, words = text.fixed(height, 0) .. " ↑" }
      end
    end
  end
  return tall
end

-- Runs of the line within the strip, so that one that leaves it is not drawn along its edge.
local function runs_within(strip, points)
  local runs, run = {}, {}
  for _, point in ipairs(points) do
    if point[2] >= strip.low and point[2] <= strip.high then
      run[#run + 1] = point
    elseif #run > 0 then
      runs[#runs + 1], run = run, {}
    end
  end
  runs[#runs + 1] = run
  return runs
end

local function least(strip, strung)
  local at, gap = strung.clearance_at_mm, strung.clearance_mm
  if at and gap and strip:inside(at) then
    strip:add(svg.circle(strip:x(at), strip:y(gap), 1.2, { fill = "none", stroke = "#000", ["stroke-width"] = 0.35 }))
  end
end

-- Nodes of the strip in the box { top, height }; layouts { { strung =, name =, dashed = }, ... }, the main one last.
return function(known, of, layouts, box)
  for _, layout in ipairs(layouts) do
    layout.line = clearance.along(known, layout.strung)
  end
  local low, high = bounds_of_heights(known, layouts)
  local title = "Line off the blank's surface, mm; ring: where it is least, " .. of.least
  local strip = strips.new(of, box, title, low, high)
  local zero = strip:y(0)
  strip:add(svg.rect(of.left, zero, of.width, box.top + box.height - zero, { fill = "#bdbdbd" }))
  strip:add(svg.line(of.left, zero, of.left + of.width, zero, { stroke = "#000", ["stroke-width"] = 0.4 }))
  for _, layout in ipairs(layouts) do
    local tall = rings_off(known, strip, layout)
    for _, run in ipairs(runs_within(strip, layout.line)) do
      strip:line(run, layout.dashed and train.LINE_NOW or train.LINE)
    end
    least(strip, layout.strung)
    strip:numbers(layout.dashed and {} or tall)
  end
  if #layouts[1].line == 0 then
    strip:add(svg.text(of.left + 3, box.top + box.height / 2, "The blank's diameters are not known.",
      { ["font-size"] = strips.SMALL }))
  end
  return strip.nodes
end

