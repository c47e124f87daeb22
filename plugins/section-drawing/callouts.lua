-- Marks at places along the drawing, moved aside where they would overlap: numbers in circles for things, lengths in
-- upright figures for places. What they stand for is in the legend.
local svg = require "withy.svg"

local M = {}

M.SIZE = 2.5 -- mm, of the letters
M.STEP = 4.4 -- mm from one number to the next
M.UPRIGHT = 3.2 -- mm from one line of upright figures to the next

local KNEE, LEADER = 1.2, 5 -- mm beyond the edge at which a leader bends, and at which it ends
local RADIUS = 1.9 -- mm, of the circle around a number
local LETTER = 0.5 -- width of a letter against its height, on average

local function middle_within(group, step, left, right)
  local half = (#group - 1) / 2 * step
  return math.max(left + half, math.min(right - half, group.middle))
end

-- Marks as near their places as `step` and the edges let them: groups that touch are centred on their places.
local function spread(marks, step, left, right)
  local groups = {}
  for _, mark in ipairs(marks) do
    local group = { mark, middle = mark.x }
    group.middle = middle_within(group, step, left, right)
    while #groups > 0 and group.middle - groups[#groups].middle < (#groups[#groups] + #group) / 2 * step do
      local before = table.remove(groups)
      local middle = (before.middle * #before + group.middle * #group) / (#before + #group)
      group = table.move(group, 1, #group, #before + 1, before)
      group.middle = middle
      group.middle = middle_within(group, step, left, right)
    end
    groups[#groups + 1] = group
  end
  for _, group in ipairs(groups) do
    for i, mark in ipairs(group) do
      mark.at = group.middle + (i - (#group + 1) / 2) * step
    end
  end
end

local function leader(mark, edge, side)
  return svg.polyline({ { mark.x, mark.y }, { mark.x, edge + side * KNEE }, { mark.at, edge + side * LEADER } },
    { fill = "none", stroke = "#000", ["stroke-width"] = 0.12 })
end

-- Numbers above the line y = `edge`, within [left, right]: marks { x =, y =, name = } by rising x.
function M.numbers(marks, edge, left, right)
  spread(marks, M.STEP, left, right)
  local nodes = {}
  for _, mark in ipairs(marks) do
    local y = edge - LEADER - RADIUS
    nodes[#nodes + 1] = {
      leader(mark, edge, -1),
      svg.circle(mark.at, y, RADIUS, { fill = "#fff", stroke = "#000", ["stroke-width"] = 0.15 }),
      svg.text(mark.at, y + M.SIZE * 0.36, mark.name, { ["text-anchor"] = "middle" }),
    }
  end
  return nodes
end

-- Upright figures below it: marks { x =, y =, name =, shown = }.
function M.figures(marks, edge, left, right)
  spread(marks, M.UPRIGHT, left, right)
  local nodes = {}
  for _, mark in ipairs(marks) do
    local x, y = mark.at + M.SIZE * 0.34, edge + LEADER + 0.6
    nodes[#nodes + 1] = {
      leader(mark, edge, 1),
      svg.text(x, y, mark.name .. "  " .. mark.shown, {
        transform = ("rotate(-90 %.3f %.3f)"):format(x, y), ["text-anchor"] = "end",
      }),
    }
  end
  return nodes
end

function M.height_of_numbers()
  return LEADER + 2 * RADIUS + 0.5
end

function M.height_of_figures(marks)
  local longest = 0
  for _, mark in ipairs(marks) do
    longest = math.max(longest, utf8.len(mark.shown) + utf8.len(mark.name) + 2)
  end
  return LEADER + 1.5 + longest * M.SIZE * LETTER
end

return M
