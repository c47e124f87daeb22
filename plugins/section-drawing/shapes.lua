-- The upper half of the cut, as closed outlines: the lower half is its mirror image. `view` turns mm of the rod into mm
-- of the drawing; the axis is y = 0, upwards is negative.
local gaps = require "gaps"
local profiles = require "profiles"
local svg = require "withy.svg"

local M = {}

local THIN, THICK = 0.15, 0.25

-- Between two profiles. What reaches the axis (`lower` nil) has no line along it.
local function outline(view, upper, lower, attributes)
  local points = {}
  local function add(row, radius)
    points[#points + 1] = { view.x(row.at_mm), -view.r(radius) }
  end
  if not lower then
    add(upper[1], 0)
  end
  for _, row in ipairs(upper) do
    add(row, row.radius)
  end
  if not lower then
    add(upper[#upper], 0)
  end
  for i = #(lower or {}), 1, -1 do
    add(lower[i], lower[i].radius)
  end
  attributes.stroke = attributes.stroke or "#000"
  attributes["stroke-width"] = attributes["stroke-width"] or THIN
  return lower and svg.polygon(points, attributes) or svg.polyline(points, attributes)
end

-- A part whose outside is not known is a dashed box, as high as this above what is in it.
local UNKNOWN_OUTSIDE = 3

local function outer_of(handle, part)
  if part.outer then
    return part.outer
  end
  local under = handle.blank and profiles.at(handle.blank, math.max(part.start, handle.blank[1].at_mm)) or 5
  return profiles.straight(under + UNKNOWN_OUTSIDE, part.start, part.stop)
end

-- The part's own outline, empty, and hatched over what is known of its material.
function M.part(handle, part, number, view)
  local outer = outer_of(handle, part)
  local nodes = { outline(view, outer, nil, {
    fill = "#fff", stroke = part.outer and "none" or "#000", ["stroke-dasharray"] = not part.outer and "1 0.7" or nil,
  }) }
  if part.outer and (part.bore or part.solid) then
    local inner = part.bore
    if inner and part.around_blank then
      inner = gaps.drawn(view.gaps, handle.blank, inner)
    end
    local over = inner and profiles.over(outer, inner[1].at_mm, inner[#inner].at_mm) or outer
    nodes[2] = outline(view, over, inner, { fill = ("url(#hatch-%d)"):format(number % 2 + 1) })
  end
  if part.outer then
    nodes[#nodes + 1] = outline(view, outer, nil, { fill = "none", ["stroke-width"] = THICK })
  end
  return nodes
end

-- An arbor fills the room between blank and the diameter that it is built to.
function M.arbor(handle, part, arbor, view)
  if not (handle.blank and arbor.outer_mm and arbor.start_mm and arbor.length_mm) then
    return nil
  end
  local start = math.max(arbor.start_mm, handle.blank[1].at_mm)
  local stop = arbor.start_mm + arbor.length_mm
  if start >= stop then
    return nil
  end
  local outer = gaps.drawn_arbor(view.gaps, handle.blank, part.bore, arbor.outer_mm / 2, start, stop)
  return outline(view, outer, profiles.over(handle.blank, start, stop), { fill = "url(#hatch-arbor)" })
end

-- Units one behind the other, as many as lie within the part, those that lie side by side drawn as two, in the adhesive
-- that pots them.
function M.counterweights(weights, view)
  local front = weights.start + weights.drawn * weights.length + weights.cover
  local across = weights.abreast > 1 and 2 * weights.diameter or weights.diameter
  local radius = weights.part.cavity.diameter_mm and weights.part.cavity.diameter_mm / 2 or across / 2
  local nodes = { outline(view, profiles.straight(radius, weights.start, front), nil, { fill = "url(#potting)" }) }
  for layer = 1, weights.drawn do
    local start = weights.start + (layer - 1) * weights.length
    local stop = start + weights.length
    nodes[#nodes + 1] = outline(view, profiles.straight(across / 2, start, stop), nil, { fill = "url(#weight)" })
  end
  return nodes, front
end

-- Black where the wall is known, else an empty outline.
function M.wall(wall, view)
  return {
    outline(view, wall.outer, nil, { fill = "#fff" }),
    wall.inner and outline(view, wall.outer, wall.inner, { fill = "#000" }) or nil,
  }
end

-- Where blank and bore touch, on the surface of the blank.
function M.touch(handle, touch, view)
  if not touch.from_mm then
    return nil
  end
  local from, to = touch.from_mm, touch.to_mm or touch.from_mm
  local y = -view.r(profiles.at(handle.blank, math.max(from, handle.blank[1].at_mm)))
  local x = view.x((from + to) / 2)
  return {
    to > from and svg.line(view.x(from), y, view.x(to), y, { stroke = "#000", ["stroke-width"] = 0.8 }) or nil,
    svg.circle(x, y, 0.85, { fill = "#fff", stroke = "#000", ["stroke-width"] = 0.35 }),
  }
end

-- Tape on the blank that meets the mouth when it is home.
function M.depth_mark(handle, mouth, view)
  local radius = view.r(profiles.at(handle.blank, mouth))
  return svg.rect(view.x(mouth), -radius - 0.5, 1, 0.5, { fill = "#000" })
end

-- The blank goes on: a wavy break.
function M.break_line(handle, view)
  local x, radius = view.x(handle.stop), view.r(profiles.at(handle.blank, handle.stop)) + 1.2
  return svg.path(("M%.3f %.3f q1.2 %.3f 0 %.3f t0 %.3f"):format(x, -radius, radius / 2, radius, radius),
    { fill = "none", stroke = "#000", ["stroke-width"] = THIN })
end

function M.patterns()
  local function pattern(id, size, turn, ...)
    return svg.element("pattern", {
      id = id, width = size, height = size, patternUnits = "userSpaceOnUse",
      patternTransform = turn ~= 0 and ("rotate(%d)"):format(turn) or nil,
    }, svg.rect(0, 0, size, size, { fill = "#fff" }), ...)
  end
  local function lines(id, size, turn, width)
    return pattern(id, size, turn, svg.line(0, 0, 0, size, { stroke = "#000", ["stroke-width"] = width }))
  end
  return svg.element("defs", {},
    lines("hatch-1", 1.5, 45, 0.2), lines("hatch-2", 1.5, -45, 0.2), lines("hatch-arbor", 0.55, -45, 0.28),
    lines("weight", 0.8, 0, 0.5), pattern("potting", 0.9, 0, svg.circle(0.45, 0.45, 0.17, { fill = "#000" })))
end

return M
