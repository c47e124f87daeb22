-- The drawing as a whole: title, the bent rod with its key, below it stiffness and strain, the datum. Across on A4 and
-- Letter with 12 mm of margin.
local bent = require "bent"
local curves = require "curves"
local key = require "key"
local labels = require "labels"
local sheet = require "withy.sheet"
local svg = require "withy.svg"
local text = require "withy.text"
local words = require "words"

local M = {}

local MARGIN = 12 -- mm of the paper
local TITLE, FOOT, CURVES, KEY = 8, 12, 64, 82 -- mm

-- "10 1/2" from the butt end of the finished rod"; of loads that hold it at several places, that they do.
local function held(known)
  local at = known.cases[1] and known.cases[1].main and known.cases[1].main.clamp_mm or known.main.report.clamp_mm
  for _, case in ipairs(known.cases) do
    if case.main and math.abs(case.main.clamp_mm - at) > 0.05 then
      return "which is not at the same place for all loads"
    end
  end
  return ("%s from %s"):format(known.length.say(at),
    known.finished and "the butt end of the finished rod" or "the butt face of the bare blank")
end

local function datum(known)
  return ("Drawn from the clamp's tip-side edge, %s; forward to the right. 'From the tip' is from %s. Modulus: %s. ")
    :format(held(known), known.end_name, known.bending.modulus_from or "not known") .. words.CAUTION
end

-- For those who do not see it.
local function description(known)
  local said = { known.finished and "The finished rod and the bare blank, bent under each load case, to scale;"
    or "The bare blank, bent under each load case, to scale;", "stiffness and strain along it." }
  for _, case in ipairs(known.cases) do
    said[#said + 1] = ("Load %s, %s: %s"):format(case.id, words.load(case.said), key.says(known, case))
  end
  return table.concat(said, " ")
end

local function foot(known, width, y)
  local nodes = {}
  for i, line in ipairs(text.wrap(datum(known), math.floor(width / (labels.SIZE * 0.45)))) do
    nodes[i] = svg.text(0, y + i * 3.7, line)
  end
  return nodes
end

function M.draw(known)
  local paper = sheet.paper(known.paper)
  local width, height = paper.height_mm - 2 * MARGIN, paper.width_mm - 2 * MARGIN - 1
  local above = height - TITLE - CURVES - FOOT
  local half = (width - 6) / 2
  local top = TITLE + above
  local title = ("%s: how it bends"):format(known.name)
  return svg.element("svg", {
    xmlns = "http://www.w3.org/2000/svg", role = "img", ["aria-labelledby"] = "bend-title bend-description",
    width = ("%.1fmm"):format(width), height = ("%.1fmm"):format(height),
    viewBox = ("0 0 %.1f %.1f"):format(width, height),
  },
    svg.element("title", { id = "bend-title" }, title),
    svg.element("desc", { id = "bend-description" }, description(known)),
    svg.rect(0, 0, width, height, { fill = "#fff" }),
    svg.group({ fill = "#000", ["font-family"] = "Liberation Sans, Arimo, Helvetica, Arial, sans-serif",
      ["font-size"] = labels.SIZE },
      svg.text(0, 5, ("%s, design %s"):format(title, known.digest), { ["font-size"] = 4, ["font-weight"] = "bold" }),
      bent.draw(known, 0, TITLE, width - KEY - 4, above),
      key.draw(known, width - KEY, TITLE + 4, KEY, top),
      curves.stiffness(known, { left = 0, top = top, width = half, height = CURVES }),
      #known.cases > 0 and curves.strain(known, { left = half + 6, top = top, width = half, height = CURVES }) or nil,
      foot(known, width, height - FOOT)))
end

function M.file(drawing)
  return svg.render(drawing)
end

return M
