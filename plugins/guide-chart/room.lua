-- What of a drawing is taken, on a grid: so that words find a place beside their point where nothing else is.
local svg = require "withy.svg"

local M = {}

M.SIZE = 2.7 -- mm, height of the letters
local WIDE = 0.56 -- width of a letter against its height, at most
local CELL, ROWS = 1.2, 4096 -- mm; more rows than a sheet has
local DISTANCES = { 3, 4.5, 6.5, 9, 12, 15.5, 19.5, 24, 30, 38 } -- mm from the point to its words
local TURNS = { 0, 20, -20, 40, -40, 60, -60, 85, -85, 180, 150, -150 } -- degrees from the way that is wished
-- How bad it is: each mm, each degree, the other side; each cell taken by others under the words, and under the leader.
local FAR, TURNED, OTHER_SIDE, BOX, LEADER = 0.3, 0.012, 3, 10, 4
local ALL_TAKEN = 1000 -- cells; counts as outside

function M.width(words, size)
  return (utf8.len(words) or #words) * (size or M.SIZE) * WIDE
end

local function cell(x, y)
  return x // CELL * ROWS + y // CELL
end

local Room = {}
Room.__index = Room

-- The room in a box from (left, top) to (right, bottom).
function M.new(left, top, right, bottom)
  return setmetatable({ left = left, top = top, right = right, bottom = bottom, taken = {} }, Room)
end

-- Cells that a straight line goes through; visit(cell).
local function along(x1, y1, x2, y2, visit)
  local steps = math.max(1, math.ceil(math.sqrt((x2 - x1) ^ 2 + (y2 - y1) ^ 2) / (CELL * 0.6)))
  for i = 0, steps do
    local share = i / steps
    visit(cell(x1 + share * (x2 - x1), y1 + share * (y2 - y1)))
  end
end

function Room:take_line(x1, y1, x2, y2)
  along(x1, y1, x2, y2, function(at) self.taken[at] = self.taken[at] or 1 end)
end

function Room:take_lines(points)
  for i = 2, #points do
    self:take_line(points[i - 1][1], points[i - 1][2], points[i][1], points[i][2])
  end
end

-- What is in a box is worse to draw across than a line.
function Room:take_box(x, y, w, h)
  for column = x // CELL, (x + w) // CELL do
    for row = y // CELL, (y + h) // CELL do
      self.taken[column * ROWS + row] = 3
    end
  end
end

-- How much of a box is taken; more than `enough` need not be counted to the end.
function Room:box_taken(box, enough)
  if box.x < self.left or box.y < self.top or box.x + box.w > self.right or box.y + box.h > self.bottom then
    return ALL_TAKEN
  end
  local count, taken = 0, self.taken
  for column = box.x // CELL, (box.x + box.w) // CELL do
    for row = box.y // CELL, (box.y + box.h) // CELL do
      count = count + (taken[column * ROWS + row] and 1 or 0)
    end
    if count > (enough or ALL_TAKEN) then
      return count
    end
  end
  return count
end

-- How much a straight line crosses.
function Room:line_taken(x1, y1, x2, y2)
  local count, last = 0, nil
  along(x1, y1, x2, y2, function(at)
    count = count + (at ~= last and self.taken[at] or 0)
    last = at
  end)
  return count
end

-- Where words stand at the end of a leader that goes (dx, dy) * distance from a point.
local function placed(x, y, dx, dy, distance, w)
  local ex, ey = x + dx * distance, y + dy * distance
  local box = { w = w, h = M.SIZE * 1.1, ex = ex, ey = ey, distance = distance }
  box.anchor = dx > 0.35 and "start" or dx < -0.35 and "end" or "middle"
  box.x = dx > 0.35 and ex + 0.5 or dx < -0.35 and ex - w - 0.5 or ex - w / 2
  box.y = math.abs(dx) > 0.35 and ey - box.h / 2 or dy < 0 and ey - box.h - 0.3 or ey + 0.3
  return box
end

-- The place for words `w` wide beside (x, y): the nearest that is free, else the one least taken.
function Room:best_place(x, y, dx, dy, w)
  local best
  for _, distance in ipairs(DISTANCES) do
    for _, turn in ipairs(TURNS) do
      local bad = distance * FAR + math.abs(turn) * TURNED + (math.abs(turn) > 90 and OTHER_SIDE or 0)
      if not best or bad < best.bad then
        local c, s = math.cos(math.rad(turn)), math.sin(math.rad(turn))
        local ux, uy = dx * c - dy * s, dx * s + dy * c
        local box = placed(x, y, ux, uy, distance, w)
        bad = bad + self:box_taken(box, best and (best.bad - bad) / BOX) * BOX
        if not best or bad < best.bad then
          box.bad = bad + self:line_taken(x + ux * 1.6, y + uy * 1.6, box.ex, box.ey) * LEADER
          best = (not best or box.bad < best.bad) and box or best
        end
      end
    end
    if best.bad <= distance * FAR + TURNED then
      break
    end
  end
  return best
end

-- Words beside (x, y), wished in the direction (dx, dy). Gives their nodes: leader and words.
function Room:label(x, y, dx, dy, words, attributes)
  local best = self:best_place(x, y, dx, dy, M.width(words))
  local w = best.w
  self:take_box(best.x - 0.6, best.y - 0.3, best.w + 1.2, best.h + 0.6)
  self:take_line(x, y, best.ex, best.ey)
  local all = { ["text-anchor"] = best.anchor, ["font-size"] = M.SIZE, stroke = "#fff", ["stroke-width"] = 0.7,
    ["stroke-linejoin"] = "round", ["paint-order"] = "stroke" }
  for key, value in pairs(attributes or {}) do
    all[key] = value
  end
  return {
    best.distance > 3.5 and svg.line(x, y, best.ex, best.ey, { stroke = "#000", ["stroke-width"] = 0.12 }) or nil,
    svg.text(best.anchor == "start" and best.x or best.anchor == "end" and best.x + w or best.x + w / 2,
      best.y + M.SIZE * 0.88, words, all),
  }
end

return M
