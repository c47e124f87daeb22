-- What is to be set up and measured, to scale: clamp, rod and line under the whole load, weight, and three letters.
-- A: the tip below the straight line of the butt, at right angles to it; B: line and blank at their nearest; C: the way
-- that the tip points.
local svg = require "withy.svg"
local words = require "words"

local M = {}

local WIDTH, HEIGHT, MARGIN = 76, 58, 3 -- mm
local HANG, WEIGHT = 9, 5 -- mm of the line below the tip-top, and of the weight on it
local SIZE = 3 -- mm
local CALLOUT = 11 -- mm below the rod, of a letter on its leader
local THIN = { stroke = "#000", ["stroke-width"] = 0.2, fill = "none" }
local DOTTED = { stroke = "#000", ["stroke-width"] = 0.2, ["stroke-dasharray"] = "0.4 1.1" }

local function toward(deg, distance)
  return distance * math.cos(math.rad(deg)), distance * math.sin(math.rad(deg))
end

-- The foot of the right angle from the tip to the straight line of the butt.
local function foot_of(strung)
  local n = #strung.at_mm
  local ux, uy = toward(strung.butt_angle_deg or 0, 1)
  local along = strung.forward_mm[n] * ux + strung.up_mm[n] * uy
  return along * ux, along * uy
end

-- Which point of the shape is where line and blank are nearest, or nil.
local function nearest_point(strung)
  for i, there in ipairs(strung.at_mm) do
    if strung.clearance_at_mm and there >= strung.clearance_at_mm then
      return i
    end
  end
  return nil
end

-- What is drawn at 1 : `scale` spans on paper, in mm from the clamp.
local function extent(strung, scale)
  local box = { left = 0, right = 0, low = 0, high = 0 }
  local function visit(x, y, right, below)
    box.left, box.right = math.min(box.left, x / scale), math.max(box.right, x / scale + right)
    box.low, box.high = math.min(box.low, y / scale - below), math.max(box.high, y / scale + 2.5)
  end
  local n = #strung.at_mm
  for i in ipairs(strung.at_mm) do
    visit(strung.forward_mm[i], strung.up_mm[i], 7, 3)
  end
  local bx, by = toward(strung.butt_angle_deg or 0, -(strung.clamp_mm or 0))
  visit(bx, by, 0, 2)
  local closest = nearest_point(strung)
  if closest then
    visit(strung.forward_mm[closest], strung.up_mm[closest], 7, CALLOUT)
  end
  local fx, fy = foot_of(strung)
  visit(fx, fy, 1, 0)
  local dx, dy = toward(strung.line_angle_deg or -90, (HANG + WEIGHT) * scale)
  visit(strung.forward_mm[n] + dx, strung.up_mm[n] + dy, 4, 2)
  return box
end

-- Scale, origin and height that let all of it in.
local function fitted(strung)
  local scale, box = 1
  repeat
    scale = scale * 1.05
    box = extent(strung, scale)
  until scale > 1000
    or box.right - box.left <= WIDTH - 2 * MARGIN and box.high - box.low <= HEIGHT - 2 * MARGIN
  return scale, MARGIN - box.left, MARGIN + box.high, box.high - box.low + 2 * MARGIN
end

local function letter(x, y, s)
  return { svg.circle(x, y, 2.1, { fill = "#fff", stroke = "#000", ["stroke-width"] = 0.25 }),
    svg.text(x, y + 1.05, s, { ["text-anchor"] = "middle", ["font-weight"] = "bold" }) }
end

local function pull(strung, x, y)
  local dx, dy = toward(strung.line_angle_deg or -90, 1)
  dy = -dy
  local ex, ey = x + HANG * dx, y + HANG * dy
  if words.hangs(strung) then
    return { svg.line(x, y, ex, ey, THIN),
      svg.rect(ex - 2, ey, 4, WEIGHT, { fill = "#bdbdbd", stroke = "#000", ["stroke-width"] = 0.3 }) }
  end
  return { svg.line(x, y, ex, ey, THIN),
    svg.polygon({ { ex + 2 * dx, ey + 2 * dy }, { ex - 0.7 * dy, ey + 0.7 * dx }, { ex + 0.7 * dy, ey - 0.7 * dx } },
      { fill = "#000" }) }
end

local function lines(strung, at)
  local rod, line = {}, {}
  for i in ipairs(strung.at_mm) do
    rod[i] = { at(strung.forward_mm[i], strung.up_mm[i]) }
  end
  if strung.reel_forward_mm and strung.reel_up_mm then
    line[1] = { at(strung.reel_forward_mm, strung.reel_up_mm) }
  end
  local rings = {}
  for _, ring in ipairs(strung.rings) do
    if ring.forward_mm and ring.up_mm then
      line[#line + 1] = { at(ring.forward_mm, ring.up_mm) }
      rings[#rings + 1] = svg.circle(line[#line][1], line[#line][2], 0.5,
        { fill = "#fff", stroke = "#000", ["stroke-width"] = 0.2 })
    end
  end
  return {
    svg.polyline(rod, { fill = "none", stroke = "#000", ["stroke-width"] = 0.7, ["stroke-linejoin"] = "round" }),
    svg.polyline(line, THIN), rings,
  }
end

local function nearest(strung, at)
  local i = nearest_point(strung)
  if not i then
    return nil
  end
  local x, y = at(strung.forward_mm[i], strung.up_mm[i])
  return { svg.line(x, y, x + 3, y + 6, THIN), letter(x + 3.6, y + 7.6, "B") }
end

-- Butt, clamp, level and the butt's angle.
local function butt(strung, at)
  local angle = strung.butt_angle_deg or 0
  local x, y = at(0, 0)
  local bx, by = at(toward(angle, -(strung.clamp_mm or 0)))
  local arc = 13
  local ax, ay = toward(angle, arc)
  local sweep = angle > 0 and 0 or 1
  return {
    svg.line(bx, by, x, y, { stroke = "#000", ["stroke-width"] = 1.3 }),
    math.abs(angle) >= 3 and {
      svg.line(x, y, x + arc + 5, y, THIN),
      svg.path(("M %.2f %.2f A %g %g 0 0 %d %.2f %.2f"):format(x + arc, y, arc, arc, sweep, x + ax, y - ay), THIN),
      svg.text(x + arc + 1.5, y - 1.5, ("%.0f°"):format(angle)),
    } or nil,
    svg.group({ transform = ("rotate(%.2f %.3f %.3f)"):format(-angle, x, y) },
      svg.rect(x - 3.2, y - 1.8, 3.2, 3.6, { fill = "#fff", stroke = "#000", ["stroke-width"] = 0.35 })),
  }
end

-- Nil where the rod's shape is not known.
function M.draw(strung)
  local n = #strung.at_mm
  if n < 2 or #strung.forward_mm ~= n or #strung.up_mm ~= n then
    return nil
  end
  local scale, x0, y0, height = fitted(strung)
  local function at(forward, up)
    return x0 + forward / scale, y0 - up / scale
  end
  local x, y = at(0, 0)
  local tx, ty = at(strung.forward_mm[n], strung.up_mm[n])
  local fx, fy = at(foot_of(strung))
  local cx, cy = toward(strung.tip_angle_deg or 0, 7)
  return svg.drawing(WIDTH, height, svg.group({ fill = "#000", ["font-size"] = SIZE,
    ["font-family"] = "Liberation Sans, Arimo, Helvetica, Arial, sans-serif" },
    svg.line(x, y, fx, fy, DOTTED), svg.line(fx, fy, tx, ty, THIN),
    letter((fx + tx) / 2, (fy + ty) / 2, "A"),
    pull(strung, tx, ty), lines(strung, at), butt(strung, at), nearest(strung, at),
    svg.line(tx, ty, tx + cx, ty - cy, DOTTED), letter(tx + cx + (cx < 0 and -2.4 or 2.4), ty - cy, "C")))
end

return M
