-- The axis of a bent rod: places along it, its directions, which way lies outside the bend.
local list = require "withy.table"

local M = {}

local SMALLEST = 1e-9

-- (x, y) of a direction above the horizontal, `distance` away.
function M.toward(deg, distance)
  return distance * math.cos(math.rad(deg)), distance * math.sin(math.rad(deg))
end

-- Of length 1.
function M.unit(x, y)
  local length = math.max(SMALLEST, math.sqrt(x * x + y * y))
  return x / length, y / length
end

-- Direction at the i-th point, forward and up.
function M.direction(strung, i)
  local a, b = math.max(1, i - 1), math.min(#strung.at_mm, i + 1)
  return M.unit(strung.forward_mm[b] - strung.forward_mm[a], strung.up_mm[b] - strung.up_mm[a])
end

-- The point at a place from the butt end, and the direction there: forward, up, forward, up.
function M.at(strung, place)
  local n = #strung.at_mm
  for i = 2, n do
    local a, b = strung.at_mm[i - 1], strung.at_mm[i]
    if (b >= place or i == n) and b > a then
      local share = math.max(0, math.min(1, (place - a) / (b - a)))
      local dx, dy = strung.forward_mm[i] - strung.forward_mm[i - 1], strung.up_mm[i] - strung.up_mm[i - 1]
      return strung.forward_mm[i - 1] + share * dx, strung.up_mm[i - 1] + share * dy, M.unit(dx, dy)
    end
  end
  return strung.forward_mm[n], strung.up_mm[n], 1, 0
end

-- Away from the hollow side of the bend: +1 = to the left of the rod, seen from the butt.
function M.outside(strung)
  local moment = 0
  for _, m in ipairs(strung.moment_n_m) do
    moment = math.abs(m) > math.abs(moment) and m or moment
  end
  return moment > 0 and -1 or 1
end

local SAME = 1 -- mm along the rod

-- The ring that stands at a place, or nil.
function M.ring_at(strung, place)
  return place and list.find(strung.rings, function(ring)
    return ring.from_butt_mm and math.abs(ring.from_butt_mm - place) < SAME
  end)
end

return M
