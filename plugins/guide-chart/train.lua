-- Rod and line in the plane in which the rod bends, one scale for both axes: blank as thick as it is (not below a
-- stroke), line, rings where they stand, reel, clamp, and the pull beyond the tip-top. From the tip-side edge of the
-- clamp, forward to the right, upwards up.
local axis = require "axis"
local bar = require "bar"
local labels = require "labels"
local rooms = require "room"
local svg = require "withy.svg"
local words = require "words"

local M = {}

M.LINE = { fill = "none", stroke = "#14539a", ["stroke-width"] = 0.32, ["stroke-linejoin"] = "round" }
M.LINE_NOW = { fill = "none", stroke = "#9a4a14", ["stroke-width"] = 0.32, ["stroke-dasharray"] = "1.6 0.9" }

local BLANK = { fill = "#bdbdbd", stroke = "#000", ["stroke-width"] = 0.15, ["stroke-linejoin"] = "round" }
local THIN = { stroke = "#000", ["stroke-width"] = 0.25, fill = "none" }
local RING = { fill = "#fff", stroke = "#000", ["stroke-width"] = 0.25 }
local BOX = { fill = "#fff", stroke = "#000", ["stroke-width"] = 0.35 }
local THINNEST = 0.13 -- mm, half of what the blank is drawn wide at least
local PULL, HEAD = 17, 1.8 -- mm of the line beyond the tip-top, and of its arrow
local BAR_HIGH, BAR_WORDS = 8, 56 -- mm of the scale bar, and of what is said beside it
local WORDS = 12 -- mm about the rod, for what stands beside the rings

-- Every point that is drawn at 1 : `scale`, in mm of the rod: visit(x, y, mm on paper about it).
local function each_point(strung, scale, visit)
  local bx, by = axis.toward(strung.butt_angle_deg or 0, -(strung.clamp_mm or 0))
  visit(bx, by, 2)
  for i in ipairs(strung.at_mm) do
    visit(strung.forward_mm[i], strung.up_mm[i], WORDS)
  end
  for _, ring in ipairs(strung.rings) do
    if ring.forward_mm and ring.up_mm then
      visit(ring.forward_mm, ring.up_mm, 3)
    end
  end
  if strung.reel_forward_mm and strung.reel_up_mm then
    visit(strung.reel_forward_mm, strung.reel_up_mm, 5)
  end
  local n = #strung.at_mm
  local dx, dy = axis.toward(strung.line_angle_deg or -90, PULL * scale)
  visit(strung.forward_mm[n] + dx, strung.up_mm[n] + dy, 4)
end

-- What is drawn at 1 : `scale` spans, in mm on paper from the clamp.
function M.extent(strung, scale)
  local box = { left = 0, right = 0, low = 0, high = 0 }
  each_point(strung, scale, function(x, y, room)
    box.left, box.right = math.min(box.left, x / scale - room), math.max(box.right, x / scale + room)
    box.low, box.high = math.min(box.low, y / scale - room), math.max(box.high, y / scale + room)
  end)
  return box
end

-- The blank's outline to both sides of its axis, and the axis on paper; without diameters as thin as may be.
local function blank(known, strung, at, scale)
  local outline, line = {}, {}
  local n = #strung.at_mm
  for i, place in ipairs(strung.at_mm) do
    local x, y = at(strung.forward_mm[i], strung.up_mm[i])
    local half = math.max(THINNEST, (known.radius(place) or 0) / scale)
    local dx, dy = axis.direction(strung, i)
    line[i] = { x, y }
    outline[i] = { x - dy * half, y - dx * half }
    outline[2 * n + 1 - i] = { x + dy * half, y + dx * half }
  end
  return svg.polygon(outline, BLANK), line
end

-- The line from the reel through the rings; rings whose places are not known are passed by.
local function path_of(strung, at)
  local points = {}
  local function add(x, y)
    if x and y then
      points[#points + 1] = { at(x, y) }
    end
  end
  add(strung.reel_forward_mm, strung.reel_up_mm)
  for _, ring in ipairs(strung.rings) do
    add(ring.forward_mm, ring.up_mm)
  end
  return points
end

-- The line beyond the tip-top.
local function pull(strung, at, room, line)
  local n = #strung.at_mm
  local tip = strung.rings[#strung.rings]
  local x, y = at(tip and tip.forward_mm or strung.forward_mm[n], tip and tip.up_mm or strung.up_mm[n])
  local dx, dy = axis.toward(strung.line_angle_deg or -90, 1)
  dy = -dy
  local ex, ey = x + PULL * dx, y + PULL * dy
  local bx, by = ex - HEAD * dx, ey - HEAD * dy
  room:take_line(x, y, ex, ey)
  return {
    svg.line(x, y, bx, by, line),
    svg.polygon({ { ex, ey }, { bx - HEAD / 3 * dy, by + HEAD / 3 * dx }, { bx + HEAD / 3 * dy, by - HEAD / 3 * dx } },
      { fill = "#000" }),
    room:label(ex, ey, dy < -0.5 and 0 or 1, dy < -0.5 and -1 or 0, words.pull(strung), { ["font-weight"] = "bold" }),
  }
end

-- Clamp and, behind it, the butt.
local function clamp(strung, at, scale, room)
  local angle, behind = strung.butt_angle_deg or 0, strung.clamp_mm or 0
  local x, y = at(0, 0)
  local bx, by = at(axis.toward(angle, -behind))
  room:take_line(bx, by, x, y)
  room:take_box(x - 2.5, y - 2.5, 5, 5)
  return svg.group({ transform = ("rotate(%.2f %.3f %.3f)"):format(-angle, x, y) },
    svg.line(x - behind / scale, y, x, y, { stroke = "#000", ["stroke-width"] = 1.1 }),
    svg.rect(x - 3.4, y - 1.9, 3.4, 3.8, BOX))
end

local function frames(strung, at, room)
  local nodes = {}
  for _, ring in ipairs(strung.rings) do
    if ring.forward_mm and ring.up_mm and ring.from_butt_mm then
      local x, y = at(ring.forward_mm, ring.up_mm)
      local ax, ay = at(axis.at(strung, ring.from_butt_mm))
      room:take_line(ax, ay, x, y)
      nodes[#nodes + 1] = { svg.line(ax, ay, x, y, THIN), svg.circle(x, y, 0.6, RING) }
    end
  end
  return nodes
end

local function reel(strung, at, room)
  if not (strung.reel_forward_mm and strung.reel_up_mm) then
    return nil
  end
  local x, y = at(strung.reel_forward_mm, strung.reel_up_mm)
  local from_clamp = (strung.reel_mm or strung.clamp_mm or 0) - (strung.clamp_mm or 0)
  local fx, fy = at(axis.toward(strung.butt_angle_deg or 0, from_clamp))
  room:take_box(x - 1, y - 1, 2, 2)
  local dx, dy = axis.unit(x - fx, y - fy)
  return { svg.line(fx, fy, x, y, THIN), svg.circle(x, y, 1, BOX), svg.circle(x, y, 0.35, { fill = "#000" }),
    room:label(x, y, dx, dy, "reel") }
end

-- The scale bar, in the lower corner where less is drawn.
local function rule(box, scale, room)
  local nodes, length = bar(scale, box.width / 3)
  local width, top = length + BAR_WORDS, box.top + box.height - BAR_HIGH
  local function taken(x)
    return room:box_taken { x = x, y = top, w = width, h = BAR_HIGH }
  end
  local left, right = box.left + 1, box.left + box.width - width
  local x = taken(right) < taken(left) and right or left
  room:take_box(x, top, width, BAR_HIGH)
  return svg.group({ transform = ("translate(%.3f %.3f)"):format(x, top + 4) }, nodes)
end

-- Nodes in the box { left, top, width, height, with_bar } at 1 : `scale`; `line` says how the line is drawn.
function M.draw(known, strung, box, scale, line)
  local span = M.extent(strung, scale)
  local x0 = box.left - span.left + math.max(0, (box.width - (span.right - span.left)) / 2)
  local y0 = box.top + span.high + math.max(0, (box.height - (span.high - span.low)) / 2)
  local function at(forward, up)
    return x0 + forward / scale, y0 - up / scale
  end
  local room = rooms.new(box.left, box.top, box.left + box.width, box.top + box.height)
  local outline, middle = blank(known, strung, at, scale)
  local path = path_of(strung, at)
  room:take_lines(middle)
  room:take_lines(path)
  local held = clamp(strung, at, scale, room)
  local rings = frames(strung, at, room)
  local drawn = { held, outline, svg.polyline(path, line), reel(strung, at, room), pull(strung, at, room, line), rings,
    box.with_bar and rule(box, scale, room) or nil }
  local nearest = labels.nearest(strung, at, room)
  return { drawn, nearest, labels.rings(known, strung, at, room) }
end

return M
