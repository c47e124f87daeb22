-- What stands beside the rings of a picture: their angles, and where line and blank are nearest.
local axis = require "axis"
local svg = require "withy.svg"
local text = require "withy.text"

local M = {}

local BOLD = { ["font-weight"] = "bold" }

local function ring_words(known, rings, i)
  local ring = rings[i]
  local said = (known.short_names or i == #rings) and known.ring_name(rings, i) or ("%d:"):format(i)
  if ring.turn_deg then
    said = said .. " " .. text.fixed(ring.turn_deg, 1) .. "°"
  end
  if known.forces and ring.force_n then
    said = said .. " " .. text.fixed(ring.force_n, 2) .. " N"
  end
  return said
end

-- Of each ring, from the tip-top on, beginning at whichever lies outside: the ring, or the blank above it.
function M.rings(known, strung, at, room)
  local nodes, side = {}, axis.outside(strung)
  for i = #strung.rings, 1, -1 do
    local ring = strung.rings[i]
    if ring.forward_mm and ring.up_mm and ring.from_butt_mm then
      local forward, up, tx, ty = axis.at(strung, ring.from_butt_mm)
      local dx, dy = -side * ty, side * tx -- outwards; upwards is up
      local beyond = (ring.forward_mm - forward) * dx + (ring.up_mm - up) * dy > 0
      local x, y = at(beyond and ring.forward_mm or forward, beyond and ring.up_mm or up)
      nodes[#nodes + 1] = room:label(x, y, dx, -dy, ring_words(known, strung.rings, i),
        ring.id and ring.id == strung.most_turned and BOLD or nil)
    end
  end
  return nodes
end

-- Where the line is nearest to the blank in a ring, as it is under a rod bent away from it, the ring's height says all.
function M.nearest(strung, at, room)
  if not (strung.clearance_mm and strung.clearance_at_mm) or axis.ring_at(strung, strung.clearance_at_mm) then
    return nil
  end
  local forward, up, tx, ty = axis.at(strung, strung.clearance_at_mm)
  local x, y = at(forward, up)
  local side = axis.outside(strung)
  local gap = text.fixed(strung.clearance_mm, 1)
  return {
    svg.circle(x, y, 1.3, { fill = "none", stroke = "#000", ["stroke-width"] = 0.35 }),
    room:label(x, y, side * ty, side * tx, -- into the hollow of the bend
      strung.clearance_mm < 0 and ("line on the blank (%s mm)"):format(gap) or ("least clearance %s mm"):format(gap)),
  }
end

return M
