-- One strip: a frame along the rod with values across it, the tip at the right; lines, marks and numbers on it.
local list = require "withy.table"
local room = require "room"
local svg = require "withy.svg"
local text = require "withy.text"

local M = {}

local GRID = { stroke = "#000", ["stroke-width"] = 0.07 }
local FRAME = { fill = "none", stroke = "#000", ["stroke-width"] = 0.25 }
local STEM = { stroke = "#000", ["stroke-width"] = 0.2 }
local DASHED = { stroke = "#000", ["stroke-width"] = 0.2, ["stroke-dasharray"] = "0.8 0.7" }
local STEPS = { 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000 }

M.LEFT = 9 -- mm before the frame, for what stands on its axis
M.SMALL = 2.6 -- mm, height of letters

local SMALL = M.SMALL
local TITLE, LETTER = 2.8, 0.54 -- mm, and width of a letter against its height

local NUMBER = { ["text-anchor"] = "middle", ["font-size"] = SMALL, stroke = "#fff", ["stroke-width"] = 0.6,
  ["paint-order"] = "stroke" }

local Strip = {}
Strip.__index = Strip

-- A frame for values from `low` to `high`, with a mark at each step; x(place), y(value).
-- `of`: { left, width, first, last, step } of the axis along the rod, which all strips have in common.
function M.new(of, box, title, low, high)
  local top, height = box.top, box.height
  local step = list.at_least(STEPS, (high - low) / (height / 6))
  high = math.ceil(high / step) * step
  local strip = setmetatable({ of = of, top = top, height = height, low = low, high = high }, Strip)
  local right = of.left + of.width
  strip.nodes = {}
  local lines = text.wrap(title, math.floor((of.width + M.LEFT) / (TITLE * LETTER)))
  for k, line in ipairs(lines) do
    strip:add(svg.text(of.left - M.LEFT, top - 1.4 - (#lines - k) * 3.3, line,
      { ["font-weight"] = "bold", ["font-size"] = TITLE }))
  end
  for n = math.ceil(low / step), math.floor(high / step + 0.5) do
    local y = strip:y(n * step)
    strip:add(svg.line(of.left, y, right, y, GRID))
    strip:add(svg.text(of.left - 1, y + 0.9, ("%g"):format(tonumber(text.fixed(n * step, 2))),
      { ["text-anchor"] = "end", ["font-size"] = SMALL }))
  end
  for n = 0, math.floor((of.last - of.first) / of.step) do
    local x = strip:x(of.last - n * of.step)
    strip:add(svg.line(x, top, x, top + height, GRID))
  end
  strip:add(svg.rect(of.left, top, of.width, height, FRAME))
  return strip
end

function Strip:add(node)
  self.nodes[#self.nodes + 1] = node
end

function Strip:x(place)
  return self.of.left + self.of.width * (place - self.of.first) / (self.of.last - self.of.first)
end

function Strip:y(value)
  local share = self.high > self.low and (value - self.low) / (self.high - self.low) or 0
  return self.top + self.height * (1 - math.max(0, math.min(1, share)))
end

function Strip:inside(place)
  return place >= self.of.first and place <= self.of.last
end

function Strip:line(points, attributes)
  local drawn = {}
  for _, point in ipairs(points) do
    drawn[#drawn + 1] = self:inside(point[1]) and { self:x(point[1]), self:y(point[2]) } or nil
  end
  self:add(#drawn > 1 and svg.polyline(drawn, attributes) or nil)
end

-- Words above points, from the tip on, left out where they would lie on others.
function Strip:numbers(points)
  local free = math.huge
  for i = #points, 1, -1 do
    local p = points[i]
    local w = room.width(p.words, SMALL)
    if p.x + w / 2 <= free then
      local x = math.min(p.x, self.of.left + self.of.width - w / 2)
      self:add(svg.text(x, math.max(p.y - 1.2, self.top + 2.4), p.words, NUMBER))
      free = p.x - w / 2 - 0.4
    end
  end
end

-- How a mark is told without colour: now = square on a dashed stem, proposed = full circle on a solid one.
function Strip:mark(place, value, now)
  local x, y = self:x(place), self:y(value)
  self:add(svg.line(x, self:y(0), x, y, now and DASHED or STEM))
  self:add(now and svg.rect(x - 0.75, y - 0.75, 1.5, 1.5, { fill = "#fff", stroke = "#000", ["stroke-width"] = 0.3 })
    or svg.circle(x, y, 0.85, { fill = "#000" }))
  return x, y
end

return M
