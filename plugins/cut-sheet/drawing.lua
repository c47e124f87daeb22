-- The rod as a strip across the page: handle, blank, guides at their places. Lengths are in proportion; diameters and
-- ring heights are drawn larger, so the strip says where things are and not how thick.
local svg = require "withy.svg"
local text = require "withy.text"

local M = {}

local WIDTH = 182 -- mm on paper
local ACROSS = 0.18 -- mm on paper for each mm of diameter or height
local LABELS = 4.6 -- mm on paper that the guides' names take on the far side of the blank

local function scale_of(overall)
  return function(at)
    return tonumber(text.fixed(at / overall * WIDTH, 3))
  end
end

-- Upper and lower edge of a profile, as one outline. The axis of the rod is y = 0.
local function outline(profile, x)
  local points = {}
  for _, row in ipairs(profile) do
    points[#points + 1] = { x(row.at_mm), -row.diameter_mm / 2 * ACROSS }
  end
  for i = #profile, 1, -1 do
    points[#points + 1] = { x(profile[i].at_mm), profile[i].diameter_mm / 2 * ACROSS }
  end
  return points
end

-- Ring centre and radius of a guide, on paper.
local function ring(guide)
  local radius = math.max(0.5, (guide.ring_outer_mm or guide.ring_inner_mm or 6) / 2 * ACROSS)
  return (guide.ring_height_mm or 8) * ACROSS + 0.4, radius
end

-- How far the drawing reaches on the side of the rings.
local function reach(rod)
  local most = LABELS
  for _, guide in ipairs(rod.guides) do
    local center, radius = ring(guide)
    most = math.max(most, center + radius + 0.3)
  end
  return most
end

-- The outer profile of a part up to its tip face, which its rows may not reach.
local function full_profile(part)
  local profile = {}
  for i, row in ipairs(part.outer) do
    profile[i] = { at_mm = row.at_mm, diameter_mm = row.diameter_mm }
  end
  profile[#profile + 1] = { at_mm = part.start_mm + part.length_mm, diameter_mm = profile[#profile].diameter_mm }
  return profile
end

local function parts(rod, x, nodes)
  for _, part in ipairs(rod.parts) do
    if part.start_mm and part.length_mm and #part.outer > 0 then
      nodes[#nodes + 1] = svg.polygon(outline(full_profile(part), x),
        { fill = "#fff", stroke = "#000", ["stroke-width"] = 0.2 })
    end
  end
end

local function guides(rod, x, side, nodes)
  for _, guide in ipairs(rod.guides) do
    if guide.from_butt_mm then
      local at = x(guide.from_butt_mm)
      local center, radius = ring(guide)
      nodes[#nodes + 1] = svg.line(at, 0, at, side * center, { stroke = "#000", ["stroke-width"] = 0.25 })
      nodes[#nodes + 1] = svg.circle(at, side * center, radius,
        { fill = "#fff", stroke = "#000", ["stroke-width"] = 0.25 })
      nodes[#nodes + 1] = svg.text(at, -side * 2.4 + (side < 0 and 1.6 or 0), guide.id or "",
        { ["font-size"] = 2.3, ["text-anchor"] = "middle" })
    end
  end
end

-- A drawing, or nil where the rod's length is not known. `side` is 1 with the rings below the blank, -1 above.
function M.strip(rod, side)
  if not rod.overall_length_mm or not rod.blank_butt_mm then
    return nil
  end
  local x = scale_of(rod.overall_length_mm)
  local nodes = {}
  if #rod.blank > 0 then
    nodes[1] = svg.polygon(outline(rod.blank, x), { fill = "#000" })
  end
  parts(rod, x, nodes)
  guides(rod, x, side, nodes)
  local rings = reach(rod)
  local axis = side > 0 and LABELS or rings
  local down = { transform = "translate(0 " .. text.fixed(axis, 3) .. ")" }
  return svg.drawing(WIDTH, LABELS + rings, svg.group(down, nodes))
end

return M
