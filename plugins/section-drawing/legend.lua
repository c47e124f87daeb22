-- What the numbers and letters stand for, in columns.
local callouts = require "callouts"
local svg = require "withy.svg"
local text = require "withy.text"

local M = {}

local LINE = 3.5 -- mm
local COLUMN = 80 -- mm, at least
local LETTER = 0.5 -- width of a letter against its height, on average

local function lines_of(marks, column)
  local lines = {}
  local letters = math.floor((column - 7) / (callouts.SIZE * LETTER))
  for _, mark in ipairs(marks) do
    for i, line in ipairs(text.wrap(mark.words, letters)) do
      lines[#lines + 1] = { name = i == 1 and mark.name or nil, words = line }
    end
  end
  return lines
end

-- Nodes from y = `top` downwards, and the height they take.
function M.draw(marks, left, right, top)
  local columns = math.max(1, math.floor((right - left) / COLUMN))
  local column = (right - left) / columns
  local lines = lines_of(marks, column)
  local rows = (#lines + columns - 1) // columns
  local nodes = {}
  for i, line in ipairs(lines) do
    local x, y = left + (i - 1) // rows * column, top + ((i - 1) % rows + 1) * LINE
    nodes[#nodes + 1] = {
      line.name and svg.text(x + 4, y, line.name, { ["text-anchor"] = "end", ["font-weight"] = "bold" }) or nil,
      svg.text(x + 5.5, y, line.words),
    }
  end
  return nodes, rows * LINE
end

return M
