-- The rod in the plane in which it bends, one scale for both axes: bare blank dashed, finished rod solid, the straight
-- line that it has without any weight dotted. From the tip-side edge of the clamp, forward to the right, upwards up.
local list = require "withy.table"
local labels = require "labels"
local svg = require "withy.svg"
local words = require "words"

local M = {}

M.FINISHED = { fill = "none", stroke = "#000", ["stroke-width"] = 0.55, ["stroke-linejoin"] = "round" }
M.BARE = { fill = "none", stroke = "#000", ["stroke-width"] = 0.22, ["stroke-dasharray"] = "2 1" }
M.STRAIGHT = { fill = "none", stroke = "#000", ["stroke-width"] = 0.22, ["stroke-dasharray"] = "0.3 1.1" }
local THIN = { stroke = "#000", ["stroke-width"] = 0.25, fill = "none" }

local SCALES = { 4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 22, 25, 28, 32, 36, 40, 50, 60, 80, 100, 200 }
local ARROW, HEAD = 9, 1.8 -- mm
local WORDS = 16 -- mm beside tips and arrows, for what is said there
local BAR = 9 -- mm below the shapes, for the scale bar

local function toward(deg, distance)
  return distance * math.cos(math.rad(deg)), distance * math.sin(math.rad(deg))
end

-- What a case spans behind the clamp and, straight, ahead of it.
local function straight(main, bent)
  local angle = bent and bent.butt_angle_deg or 0
  local clamp = bent and bent.clamp_mm or main.report.clamp_mm
  local x1, y1 = toward(angle, main.tip - clamp)
  local x0, y0 = toward(angle, -clamp)
  return { angle = angle, ahead = { x1, y1 }, behind = { x0, y0 } }
end

-- Every point that is drawn at 1 : `scale`, in mm of the rod: visit(x, y, mm on paper to its right).
local function each_point(known, scale, visit)
  visit(0, 0, 4)
  for _, line in ipairs(known.straight) do
    visit(line.ahead[1], line.ahead[2], WORDS)
    visit(line.behind[1], line.behind[2], 2)
  end
  for _, case in ipairs(known.cases) do
    for _, bent in ipairs { case.finished, case.bare } do
      local n = #bent.at_mm
      for i = 1, n do
        visit(bent.forward_mm[i], bent.up_mm[i], 2)
      end
      local dx, dy = toward(bent.load_angle_deg or -90, ARROW * scale)
      visit(bent.forward_mm[n] + dx, bent.up_mm[n] + dy, WORDS + 8)
    end
  end
end

-- What is drawn at 1 : `scale` spans, in mm on paper from the clamp.
local function extent(known, scale)
  local box = { left = 0, right = 0, low = 0, high = 0 }
  each_point(known, scale, function(x, y, room)
    box.left, box.right = math.min(box.left, x / scale - 2), math.max(box.right, x / scale + room)
    box.low, box.high = math.min(box.low, y / scale - 3), math.max(box.high, y / scale + 3)
  end)
  return box
end

-- The largest scale at which all of it has room, and its extent there.
local function fitted(known, width, height)
  local box
  for _, scale in ipairs(SCALES) do
    box = extent(known, scale)
    if box.right - box.left <= width and box.high - box.low <= height then
      return scale, box
    end
  end
  return SCALES[#SCALES], box
end

-- The straight lines that are different.
local function straight_lines(known)
  local found, seen = {}, {}
  local function add(bent)
    local line = straight(known.main, bent)
    local key = ("%.1f %.1f"):format(line.angle, line.ahead[1])
    found[#found + 1] = not seen[key] and line or nil
    seen[key] = true
  end
  for _, case in ipairs(known.cases) do
    if case.main then
      add(case.main)
    end
  end
  if #found == 0 then
    add(nil)
  end
  return found
end

local function shape(bent, at, attributes)
  local points = {}
  for i in ipairs(bent.at_mm) do
    points[i] = { at(bent.forward_mm[i], bent.up_mm[i]) }
  end
  return svg.polyline(points, attributes)
end

-- Where the strain peaks: between two points of the shape.
local function hardest(bent, at)
  if not words.hardest(bent) then
    return nil
  end
  for i = 2, #bent.at_mm do
    local a, b = bent.at_mm[i - 1], bent.at_mm[i]
    if b >= bent.peak_at_mm and b > a then
      local t = (bent.peak_at_mm - a) / (b - a)
      local x, y = at(bent.forward_mm[i - 1] + t * (bent.forward_mm[i] - bent.forward_mm[i - 1]),
        bent.up_mm[i - 1] + t * (bent.up_mm[i] - bent.up_mm[i - 1]))
      return M.ring(x, y)
    end
  end
  return nil
end

function M.ring(x, y)
  return svg.circle(x, y, 1.1, { fill = "#fff", stroke = "#000", ["stroke-width"] = 0.35 })
end

-- The load at the tip, with its number and amount.
local function load(case, at, label)
  local bent = case.main
  local n = #bent.at_mm
  local x, y = at(bent.forward_mm[n], bent.up_mm[n])
  local dx, dy = toward(bent.load_angle_deg or -90, 1)
  dy = -dy
  local ex, ey = x + ARROW * dx, y + ARROW * dy
  local bx, by = ex - HEAD * dx, ey - HEAD * dy
  local said = case.number .. ": " .. words.load(bent)
  local left = dx < -0.1
  return {
    svg.line(x, y, bx, by, THIN),
    svg.polygon({ { ex, ey }, { bx - HEAD / 3 * dy, by + HEAD / 3 * dx }, { bx + HEAD / 3 * dy, by - HEAD / 3 * dx } },
      { fill = "#000" }),
    label(ex + (left and -labels.width(said) / 2 or 1.5), ey + (left and labels.SIZE + 1 or 0), said,
      { ["font-weight"] = "bold" }),
  }
end

local function clamp(x, y)
  return svg.rect(x - 3.4, y - 1.7, 3.4, 3.4, { fill = "#fff", stroke = "#000", ["stroke-width"] = 0.35 })
end

local function clamps(known, at)
  local nodes = {}
  local x, y = at(0, 0)
  for i, line in ipairs(known.straight) do
    nodes[i] = svg.group({ transform = ("rotate(%.2f %.3f %.3f)"):format(-line.angle, x, y) }, clamp(x, y))
  end
  return nodes
end

local function bar(known, scale, x, y)
  local length = list.at_most(known.length.bars, 60 * scale / known.length.mm)
  local w = length * known.length.mm / scale
  return {
    svg.line(x, y, x + w, y, THIN), svg.line(x, y - 1.3, x, y + 1.3, THIN),
    svg.line(x + w, y - 1.3, x + w, y + 1.3, THIN),
    svg.text(x + w + 2, y + 1, ("%g %s of the rod, both ways; 1 : %d"):format(length, known.length.unit, scale)),
  }
end

-- Nodes in the box from (left, top), `width` by `height`.
function M.draw(known, left, top, width, height)
  known.straight = straight_lines(known)
  local scale, box = fitted(known, width, height - BAR)
  local x0, y0 = left - box.left, top + box.high
  local function at(forward, up)
    return x0 + forward / scale, y0 - up / scale
  end
  local label = labels.layer(left + width)
  local back, front = {}, {}
  for _, line in ipairs(known.straight) do
    local bx, by = at(line.behind[1], line.behind[2])
    local ax, ay = at(line.ahead[1], line.ahead[2])
    back[#back + 1] = svg.line(x0, y0, ax, ay, M.STRAIGHT)
    back[#back + 1] = svg.line(bx, by, x0, y0, { stroke = "#000", ["stroke-width"] = 1.1 })
    front[#front + 1] = label(ax + 1.5, ay + 1, "straight")
  end
  for _, case in ipairs(known.cases) do
    back[#back + 1] = case.finished and shape(case.finished, at, M.FINISHED) or nil
    back[#back + 1] = case.bare and shape(case.bare, at, M.BARE) or nil
    front[#front + 1] = case.main and hardest(case.main, at) or nil
    front[#front + 1] = case.main and load(case, at, label) or nil
  end
  return { back, clamps(known, at), front, bar(known, scale, left + 1, top + height - 3) }
end

return M
