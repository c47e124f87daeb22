-- Bending moment along the blank, and what of it the line beside the blank makes.
local list = require "withy.table"
local strips = require "strip"
local svg = require "withy.svg"
local text = require "withy.text"

local M = {}

local NONE = 5e-4 -- N m; what would be printed as 0.000
local FACTORS = { 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000 }

-- The pattern of a drawing: a page may hold several, each with its own.
function M.hatch(name)
  return svg.element("defs", {}, svg.element("pattern",
    { id = name .. "-hatch", width = 1.4, height = 1.4, patternUnits = "userSpaceOnUse",
      patternTransform = "rotate(45)" },
    svg.line(0, 0, 0, 1.4, { stroke = "#000", ["stroke-width"] = 0.35 })))
end

local function moment_points(strung, values, sign)
  local points = {}
  for i, place in ipairs(strung.at_mm) do
    points[i] = values[i] and { place, sign * values[i] } or nil
  end
  return points
end

local function most_of(points)
  local low, high = 0, 0
  for _, point in ipairs(points) do
    low, high = math.min(low, point[2]), math.max(high, point[2])
  end
  return low, high
end

-- What the line beside the blank adds is small beside the whole: drawn `factor` times as large.
local function enlarged(points, factor)
  local result = {}
  for i, point in ipairs(points) do
    result[i] = { point[1], point[2] * factor }
  end
  return result
end

local function area(strip, points, hatch)
  local corners = { { strip:x(points[1][1]), strip:y(0) } }
  for _, point in ipairs(points) do
    corners[#corners + 1] = { strip:x(point[1]), strip:y(point[2]) }
  end
  corners[#corners + 1] = { strip:x(points[#points][1]), strip:y(0) }
  strip:add(svg.polygon(corners, { fill = ("url(#%s-hatch)"):format(hatch), stroke = "#000", ["stroke-width"] = 0.15 }))
end

-- Nodes of the strip in the box { top, height }, of the layout drawn last; counted positive the way in which it bends
-- at the clamp.
function M.draw(of, layouts, box, hatch)
  local strung = layouts[#layouts].strung
  local sign = (strung.moment_n_m[1] or 0) > 0 and 1 or -1
  local whole = moment_points(strung, strung.moment_n_m, sign)
  local share = moment_points(strung, strung.guides_moment_n_m, sign)
  local low, high = most_of(whole)
  high = math.max(high, 0.01)
  local title = "Bending moment in the blank, N m" .. (layouts[#layouts].name == "proposed" and ", as proposed" or "")
  local least, most = most_of(share)
  local shown
  if #share > 1 and math.max(most, -least) >= NONE then
    local factor = list.at_most(FACTORS, high * 0.45 / math.max(most, -least))
    shown = enlarged(share, factor)
    low, high = math.min(low, least * factor), math.max(high, most * factor)
    title = title .. ("; hatched, drawn x %d: what the line beside the blank adds, %s to %s"):format(factor,
      text.fixed(least, 3), text.fixed(most, 3))
  end
  local strip = strips.new(of, box, title, low, high)
  if shown then
    area(strip, shown, hatch)
  end
  strip:line(whole, { fill = "none", stroke = "#000", ["stroke-width"] = 0.45 })
  return strip.nodes
end

return M
