-- How far the line stands off the blank's surface, place by place, from the shape in the report.
--
-- In the plane: from the point of the surface on the side of the rings, at right angles to the line. Where guides are
-- turned about the blank: from the axis to the line in space, less half the diameter. Both as the report's least
-- clearance is meant; below zero the line, kept straight, would cut into the blank.
local axis = require "axis"

local M = {}

local PARTS = 4 -- between two points of the shape

-- A point between the i-th of the shape and the next: { at, x, y, tx, ty }, by Hermite's cubic through both with their
-- directions, as smooth as the blank.
local function between(strung, i, t)
  local length = strung.at_mm[i + 1] - strung.at_mm[i]
  local ax, ay = axis.direction(strung, i)
  local bx, by = axis.direction(strung, i + 1)
  local h00, h10 = (1 + 2 * t) * (1 - t) ^ 2, t * (1 - t) ^ 2
  local h01, h11 = t * t * (3 - 2 * t), t * t * (t - 1)
  local tx, ty = axis.unit(ax + t * (bx - ax), ay + t * (by - ay))
  return {
    at = strung.at_mm[i] + t * length, tx = tx, ty = ty,
    x = h00 * strung.forward_mm[i] + h01 * strung.forward_mm[i + 1] + length * (h10 * ax + h11 * bx),
    y = h00 * strung.up_mm[i] + h01 * strung.up_mm[i + 1] + length * (h10 * ay + h11 * by),
  }
end

local function in_plane(point, from, to, radius, side)
  local px, py = point.x - side * radius * point.ty, point.y + side * radius * point.tx
  local ux, uy = axis.unit(to.x - from.x, to.y - from.y)
  return side * ((from.y - py) * ux - (from.x - px) * uy)
end

local function in_space(point, from, to, radius)
  local ux, uy, uz = to.x - from.x, to.y - from.y, to.z - from.z
  local length = math.sqrt(ux * ux + uy * uy + uz * uz)
  local px, py, pz = point.x - from.x, point.y - from.y, -from.z
  local along = (px * ux + py * uy + pz * uz) / length
  return math.sqrt(math.max(0, px * px + py * py + pz * pz - along * along)) - radius
end

-- +1: the rings stand to the left of the rod, seen from the butt; of the ring that is farthest from the blank.
local function side_of(strung)
  local most, side = -1, 1
  for _, ring in ipairs(strung.rings) do
    if ring.forward_mm and ring.up_mm and ring.from_butt_mm and (ring.offset_mm or 0) > most then
      local x, y, tx, ty = axis.at(strung, ring.from_butt_mm)
      most = ring.offset_mm or 0
      side = tx * (ring.up_mm - y) - ty * (ring.forward_mm - x) >= 0 and 1 or -1
    end
  end
  return side
end

-- What the line runs through: the reel, then ring by ring.
local function stations(strung)
  local result = {}
  if strung.reel_forward_mm and strung.reel_up_mm then
    local at = strung.reel_mm or strung.clamp_mm or 0
    result[1] = { at = at, x = strung.reel_forward_mm, y = strung.reel_up_mm, z = 0 }
  end
  for _, ring in ipairs(strung.rings) do
    if ring.from_butt_mm and ring.forward_mm and ring.up_mm then
      result[#result + 1] = { at = ring.from_butt_mm, x = ring.forward_mm, y = ring.up_mm, z = ring.aside_mm or 0 }
    end
  end
  return result
end

-- { { place from the butt end, mm off the surface }, ... }; empty where the blank's diameters are not known.
function M.along(known, strung)
  local points, line, side = {}, stations(strung), side_of(strung)
  local k = 1
  local function add(point)
    while k + 1 < #line and point.at > line[k + 1].at do
      k = k + 1
    end
    local from, to, radius = line[k], line[k + 1], known.radius(point.at)
    if from and to and radius and point.at >= from.at then
      points[#points + 1] = { point.at, strung.rings_stand == "around" and in_space(point, from, to, radius)
        or in_plane(point, from, to, radius, side) }
    end
  end
  for i = 1, #strung.at_mm - 1 do
    for part = 0, PARTS - 1 do
      add(between(strung, i, part / PARTS))
    end
  end
  add(between(strung, #strung.at_mm - 1, 1))
  return points
end

return M
