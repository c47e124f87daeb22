-- The drawing of one load: title, what it comes to in words, the train as it is and as proposed, the strips, the datum.
-- Across on A4 and Letter with 12 mm of margin.
local arrange = require "arrange"
local moments = require "moments"
local says = require "says"
local sheet = require "withy.sheet"
local svg = require "withy.svg"
local text = require "withy.text"

local M = {}

local MARGIN = 12 -- mm of the paper
local SIZE, LINE = 2.7, 3.5 -- mm, of letters and from line to line
local TITLE = 6 -- mm
local NO_BREAK = "\u{a0}"

-- Lines of text; what belongs to a figure stays with it.
local function lines_of(said, width)
  said = said:gsub(" ± ", NO_BREAK .. "±" .. NO_BREAK):gsub("(%d) (%a)", "%1" .. NO_BREAK .. "%2")
    :gsub("N m", "N" .. NO_BREAK .. "m")
  return text.wrap(said, math.floor(width / (SIZE * 0.46)))
end

local function head_of(known, load, width)
  local lines = {}
  for _, said in ipairs(says.head(known, load)) do
    local more = lines_of(said, width)
    table.move(more, 1, #more, #lines + 1, lines)
  end
  return lines
end

local function write(lines, y)
  local nodes = {}
  for i, line in ipairs(lines) do
    nodes[i] = svg.text(0, y + (i - 1) * LINE, line)
  end
  return nodes
end

function M.draw(known, load)
  local paper = sheet.paper(known.paper)
  local width, height = paper.height_mm - 2 * MARGIN, paper.width_mm - 2 * MARGIN - 1
  local head = head_of(known, load, width)
  local foot = lines_of(says.datum(known, load), width)
  local top = TITLE + #head * LINE + 1
  local foot_top = height - #foot * LINE + LINE - 1
  local id = "guides-" .. load.number
  local box = { left = 0, top = top, width = width, height = foot_top - LINE - top }
  local title = ("%s: the line through its guides"):format(text.clipped(known.name, 60))
  return svg.element("svg", {
    xmlns = "http://www.w3.org/2000/svg", role = "img", ["aria-labelledby"] = id .. "-title " .. id .. "-description",
    width = ("%.1fmm"):format(width), height = ("%.1fmm"):format(height),
    viewBox = ("0 0 %.1f %.1f"):format(width, height),
  },
    svg.element("title", { id = id .. "-title" }, title),
    svg.element("desc", { id = id .. "-description" }, table.concat(says.head(known, load), " ")),
    moments.hatch(id),
    svg.rect(0, 0, width, height, { fill = "#fff" }),
    svg.group({ fill = "#000", ["font-family"] = "Liberation Sans, Arimo, Helvetica, Arial, sans-serif",
      ["font-size"] = SIZE },
      svg.text(0, 4, ("%s, design %s"):format(title, known.digest), { ["font-size"] = 4, ["font-weight"] = "bold" }),
      write(head, TITLE + LINE), arrange.draw(known, load, box, id), write(foot, foot_top)))
end

function M.file(drawing)
  return svg.render(drawing)
end

return M
