-- The cut through handle and blank in one view, about the axis y = 0.
local profiles = require "profiles"
local shapes = require "shapes"
local svg = require "withy.svg"
local things = require "things"

local M = {}

local UNKNOWN = 8 -- mm of radius taken for a part whose outside is not known

-- The outside of the handle at a place, on paper.
local function outside(handle, view, place)
  local most = view.r(handle.blank and profiles.at(handle.blank, place) or 2)
  for _, part in ipairs(handle.parts) do
    if part.start <= place and place <= part.stop then
      local outer = part.outer
      most = math.max(most,
        view.r(outer and math.max(profiles.at(outer, place), profiles.at(outer, place, true)) or UNKNOWN))
    end
  end
  return most
end

-- Half of what the cut takes across.
function M.edge(handle, view)
  local most = view.r(UNKNOWN)
  for _, part in ipairs(handle.parts) do
    for _, row in ipairs(part.start < view.last and part.stop > view.first and part.outer or {}) do
      most = math.max(most, view.r(row.radius))
    end
  end
  return most + 1
end

-- Marks with their place on paper, on the side of the cut (-1 above, 1 below) where they stand.
function M.marked(handle, view, list, side)
  local result = {}
  for i, one in ipairs(list) do
    result[i] = {
      x = view.x(one.place), y = side * outside(handle, view, one.place), name = one.name, shown = one.shown,
    }
  end
  return result
end

-- The upper half, in the order of painting: what lies on another part first, the blank last.
local function half(handle, view)
  local nodes = {}
  for _, on_another in ipairs { true, false } do
    for number, part in ipairs(handle.parts) do
      if (part.on ~= nil) == on_another then
        nodes[#nodes + 1] = shapes.part(handle, part, number, view)
      end
    end
  end
  for _, part in ipairs(handle.parts) do
    for _, arbor in ipairs(part.arbors) do
      nodes[#nodes + 1] = shapes.arbor(handle, part, arbor, view)
    end
  end
  local weights = things.counterweights(handle)
  nodes[#nodes + 1] = weights and shapes.counterweights(weights, view) or nil
  for _, wall in ipairs(handle.walls) do
    nodes[#nodes + 1] = shapes.wall(wall, view)
  end
  for _, touch in ipairs(handle.touches) do
    nodes[#nodes + 1] = shapes.touch(handle, touch, view)
  end
  if handle.host and handle.blank then
    nodes[#nodes + 1] = shapes.depth_mark(handle, handle.host.stop, view)
  end
  return nodes
end

-- A view that shows a part of the handle is cut off at its ends, where dashed lines say so.
local function window(handle, view)
  local edge = M.edge(handle, view)
  local nodes = {}
  for _, place in ipairs { view.first, view.last } do
    nodes[#nodes + 1] = place > 0 and place < handle.stop and svg.line(view.x(place), -edge, view.x(place), edge,
      { stroke = "#000", ["stroke-width"] = 0.15, ["stroke-dasharray"] = "1.5 1" }) or nil
  end
  local first = view.x(view.first)
  return svg.element("clipPath", { id = "window" },
    svg.rect(first, -edge - 1, view.x(view.last) - first, 2 * edge + 2)), nodes
end

function M.draw(handle, view)
  local part_of_it = view.first > 0 or view.last < handle.stop
  local name = part_of_it and "detail-half" or "half"
  local first, last = view.x(view.first) - 3, view.x(view.last) + 3
  local clip, ends
  if part_of_it then
    clip, ends = window(handle, view)
  end
  return {
    clip,
    svg.group({ ["clip-path"] = part_of_it and "url(#window)" or nil },
      svg.group({ id = name }, half(handle, view)),
      svg.element("use", { href = "#" .. name, transform = "scale(1 -1)" })),
    ends,
    handle.blank and not handle.ends_here and view.last == handle.stop and shapes.break_line(handle, view) or nil,
    svg.line(first, 0, last, 0, { stroke = "#000", ["stroke-width"] = 0.12, ["stroke-dasharray"] = "4 0.8 0.8 0.8" }),
  }
end

return M
