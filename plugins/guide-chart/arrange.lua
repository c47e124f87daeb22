-- Where pictures and strips stand in the room that is left to them: pictures above strips or beside them, two pictures
-- side by side or one above the other, whichever draws the rod largest.
local strips = require "strips"
local svg = require "withy.svg"
local train = require "train"

local M = {}

local STRIPS = 78 -- mm: height of the strips below the pictures
local BESIDE = 0.49 -- of the width: the strips beside them
local NAME = { ["font-weight"] = "bold", ["font-size"] = 3.6 }
local SCALES = { 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 18, 20, 22, 25, 28, 32, 36, 40, 50, 60, 80, 100, 200 }

-- { { strung =, name =, line =, dashed = }, ... }: as they are first, what is proposed last.
local function layouts_of(load)
  local result = {}
  if load.now then
    result[1] = { strung = load.now, name = "now", line = load.proposed and train.LINE_NOW or train.LINE,
      dashed = load.proposed ~= nil }
  end
  if load.proposed then
    result[#result + 1] = { strung = load.proposed, name = "proposed", line = train.LINE }
  end
  return result
end

-- The largest scale at which each of them has room.
local function fitting(layouts, width, height)
  for _, scale in ipairs(SCALES) do
    local all = true
    for _, layout in ipairs(layouts) do
      local box = train.extent(layout.strung, scale)
      all = all and box.right - box.left <= width and box.high - box.low <= height
    end
    if all then
      return scale
    end
  end
  return SCALES[#SCALES]
end

-- `n` boxes in a box, side by side or one above the other.
local function parted(box, n, across)
  local parts = {}
  local width, height = across and box.width / n or box.width, across and box.height or box.height / n
  for i = 1, n do
    local left, top = across and (i - 1) * width or 0, across and 0 or (i - 1) * height
    parts[i] = { left = box.left + left, top = box.top + top, width = width, height = height,
      with_bar = i == (across and 1 or n) }
  end
  return parts
end

-- The ways to fill a box: { pictures = boxes, strips = box, scale = }, the largest scale first found.
local function chosen(layouts, box)
  local beside = box.width * BESIDE
  local ways = {
    { room = { left = box.left, top = box.top, width = box.width, height = box.height - STRIPS },
      strips = { left = box.left, top = box.top + box.height - STRIPS + 1, width = box.width, height = STRIPS - 1 } },
    { room = { left = box.left, top = box.top, width = box.width - beside - 3, height = box.height },
      strips = { left = box.left + box.width - beside, top = box.top, width = beside, height = box.height } },
  }
  local best
  for _, way in ipairs(ways) do
    for _, across in ipairs { true, false } do
      local pictures = parted(way.room, #layouts, across)
      local scale = fitting(layouts, pictures[1].width, pictures[1].height)
      if not best or scale < best.scale then
        best = { pictures = pictures, strips = way.strips, scale = scale }
      end
    end
  end
  return best
end

-- Nodes in the box { left, top, width, height }; nil where the load has no shape to draw. `hatch` names a pattern.
function M.draw(known, load, box, hatch)
  local layouts = layouts_of(load)
  if #layouts == 0 then
    return nil
  end
  local way = chosen(layouts, box)
  local nodes = {}
  for i, layout in ipairs(layouts) do
    local part = way.pictures[i]
    nodes[i] = {
      train.draw(known, layout.strung, part, way.scale, layout.line),
      load.proposed and svg.text(part.left + 1, part.top + 3.5, layout.name, NAME) or nil,
    }
  end
  return { nodes, strips.draw(known, layouts, way.strips, hatch) }
end

return M
