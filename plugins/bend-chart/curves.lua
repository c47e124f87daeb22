-- Stiffness and strain along the rod, from the tip: the tip stands at the right, as in the picture above them.
local list = require "withy.table"
local bent = require "bent"
local labels = require "labels"
local svg = require "withy.svg"
local text = require "withy.text"
local words = require "words"

local M = {}

local GRID = { stroke = "#000", ["stroke-width"] = 0.07 }
local FRAME = { fill = "none", stroke = "#000", ["stroke-width"] = 0.25 }
local SMALL = 2.7 -- mm
local LEFT, ABOVE, BELOW = 13, 7, 10 -- mm about the frame, for what stands on the axes
-- One for each load case, then from the beginning again; numbers stand on the curves all the same.
local DASHES = { "none", "4 1.2", "4 1 0.6 1", "1.2 1", "6 1 0.6 1 0.6 1" }

-- A frame with the distance from the tip below it; gives its nodes, x(from_tip_mm), y(share of the height).
local function frame(known, box, title, reach)
  local left, top = box.left + LEFT, box.top + ABOVE
  local width, height = box.width - LEFT - 3, box.height - ABOVE - BELOW
  local function x(from_tip)
    return left + width * (1 - from_tip / reach)
  end
  local function y(share)
    return top + height * (1 - share)
  end
  local unit = known.length
  local step = list.at_least(unit.steps, reach / unit.mm / 8)
  local nodes = { svg.rect(left, top, width, height, FRAME),
    svg.text(box.left, box.top + 3.5, title, { ["font-weight"] = "bold" }) }
  for n = 0, reach / unit.mm // step do
    local at = x(n * step * unit.mm)
    nodes[#nodes + 1] = svg.line(at, top, at, top + height, GRID)
    nodes[#nodes + 1] = svg.text(at, top + height + 3.6, ("%g"):format(n * step),
      { ["text-anchor"] = "middle", ["font-size"] = SMALL })
  end
  nodes[#nodes + 1] = svg.text(left + width / 2, top + height + 8, ("from the tip, %s (the tip is at the right)")
    :format(unit.unit), { ["text-anchor"] = "middle", ["font-size"] = SMALL })
  return nodes, x, y, { left = left, right = left + width }
end

local function mark(nodes, sides, at, said)
  nodes[#nodes + 1] = svg.line(sides.left, at, sides.right, at, GRID)
  nodes[#nodes + 1] = svg.text(sides.left - 1.2, at + 0.9, said, { ["text-anchor"] = "end", ["font-size"] = SMALL })
end

local function bounds(values)
  local low, high = math.huge, -math.huge
  for _, value in ipairs(values) do
    low, high = math.min(low, value), math.max(high, value)
  end
  return low, high
end

-- 1, 2 and 5 of each decade about what there is.
local function decades(low, high)
  local marks = {}
  for power = math.floor(math.log(low, 10)), math.ceil(math.log(high, 10)) do
    for _, digit in ipairs { 1, 2, 5 } do
      marks[#marks + 1] = digit * 10.0 ^ power
    end
  end
  while marks[2] and marks[2] <= low do
    table.remove(marks, 1)
  end
  while marks[2] and marks[#marks - 1] >= high do
    table.remove(marks)
  end
  return marks
end

local function stiffness_points(of)
  local points = {}
  for i, at in ipairs(of.report.at_mm) do
    points[i] = { of.tip - at, of.report.ei_n_m2[i] }
  end
  return points
end

-- Flexural stiffness on a logarithmic axis.
function M.stiffness(known, box)
  local of = known.main
  local nodes, x, y, sides = frame(known, box, "Stiffness of the blank EI, N m², logarithmic axis",
    of.report.free_length_mm)
  local marks = decades(bounds(of.report.ei_n_m2))
  local first, span = math.log(marks[1]), math.log(marks[#marks] / marks[1])
  local function height(ei)
    return y((math.log(ei) - first) / span)
  end
  for _, value in ipairs(marks) do
    mark(nodes, sides, height(value), ("%g"):format(value))
  end
  local line = {}
  for i, point in ipairs(stiffness_points(of)) do
    line[i] = { x(point[1]), height(point[2]) }
  end
  nodes[#nodes + 1] = svg.polyline(line, bent.FINISHED)
  return nodes
end

local function strain_line(shape, x, height)
  local points = {}
  for i, at in ipairs(shape.at_mm) do
    points[i] = { x(shape.at_mm[#shape.at_mm] - at), height(shape.strain_millistrain[i]) }
  end
  return points
end

local function most_strain(known)
  local most = 0
  for _, case in ipairs(known.cases) do
    for _, shape in ipairs { case.finished, case.bare } do
      most = math.max(most, shape.peak_strain_millistrain or 0)
    end
  end
  return most
end

local function longest(known)
  local most = known.main.report.free_length_mm
  for _, case in ipairs(known.cases) do
    local shape = case.main
    most = shape and math.max(most, shape.at_mm[#shape.at_mm] - shape.at_mm[1]) or most
  end
  return most
end

local function curve(case, i, x, height, label)
  local dashes = DASHES[(i - 1) % #DASHES + 1]
  local main = case.main
  local from_tip = words.hardest(main)
  return {
    case.bare and case.finished and svg.polyline(strain_line(case.bare, x, height),
      { fill = "none", stroke = "#000", ["stroke-width"] = 0.2, ["stroke-dasharray"] = "0.7 0.7" }) or nil,
    svg.polyline(strain_line(main, x, height),
      { fill = "none", stroke = "#000", ["stroke-width"] = 0.5, ["stroke-dasharray"] = dashes }),
    from_tip and bent.ring(x(from_tip), height(main.peak_strain_millistrain)) or nil,
    from_tip and label(x(from_tip) - 1.2 - labels.width(case.number), height(main.peak_strain_millistrain) - 1.2,
      case.number, { ["font-weight"] = "bold" }) or nil,
  }
end

-- Strain of the outermost fibre under each load case.
function M.strain(known, box)
  local nodes, x, y, sides = frame(known, box, "Strain of the outermost fibre, thousandths"
    .. (known.finished and known.bare and " (fine dots: bare blank)" or ""), longest(known))
  local most = most_strain(known)
  local steps = { 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000 }
  local step = most < 5e-4 and 1 or list.at_least(steps, most / 5)
  local top = step * math.max(1, math.ceil(most * 1.1 / step))
  local function height(strain)
    return y(strain / top)
  end
  for n = 0, math.tointeger(top // step) or 0 do
    mark(nodes, sides, height(n * step), ("%g"):format(tonumber(text.fixed(n * step, 2))))
  end
  local label = labels.layer(sides.right)
  for i, case in ipairs(known.cases) do
    nodes[#nodes + 1] = case.main and curve(case, i, x, height, label) or nil
  end
  return nodes
end

return M
