-- Beside the picture: what the lines mean, and each load case in words.
local bent = require "bent"
local labels = require "labels"
local svg = require "withy.svg"
local text = require "withy.text"
local words = require "words"

local M = {}

local LINE = 3.9 -- mm
local NO_BREAK = "\u{a0}"

local function says(known, case)
  local said = { case.said.load_n and ("Butt %s."):format(words.direction(case.said.butt_angle_deg or 0)) or nil }
  local function add(s)
    said[#said + 1] = s
  end
  add(words.folds(case.said))
  local shape = case.main
  if not shape then
    return said
  end
  if shape.tip_drop_mm then
    add(("Tip drops %s, points %s."):format(known.length.say(shape.tip_drop_mm, shape.tip_drop_plus_minus_mm),
      words.tip(shape.tip_angle_deg or 0)))
  end
  add(("At the clamp %s N m."):format(
    text.uncertain(shape.clamp_moment_n_m, shape.clamp_moment_plus_minus_n_m, 2)))
  local from_tip = words.hardest(shape)
  add(from_tip and ("Works hardest %s from the tip: strain %s thousandths."):format(known.length.say(from_tip),
    words.strain(shape)) or "It stays straight.")
  return said
end

local function sample(x, y, attributes, said)
  return { svg.line(x, y - 1, x + 10, y - 1, attributes), svg.text(x + 12, y, said) }
end

local function lines_of(known, x, y)
  local nodes = {}
  local drawn = #known.cases > 0
  if drawn and known.finished then
    nodes[1] = sample(x, y, bent.FINISHED, "finished rod")
    y = y + LINE
  end
  if drawn and known.bare then
    nodes[#nodes + 1] = sample(x, y, bent.BARE, "bare blank (unseen where it lies on the rod)")
    y = y + LINE
  end
  nodes[#nodes + 1] = sample(x, y, bent.STRAIGHT, "without load and weight")
  if drawn then
    y = y + LINE
    nodes[#nodes + 1] = { bent.ring(x + 5, y - 1), svg.text(x + 12, y, "works hardest here") }
  end
  return nodes, y + 1.6 * LINE
end

-- Nodes in the column from (x, y), `width` wide and down to `bottom`; cases that have no room are left to the table.
function M.draw(known, x, y, width, bottom)
  local nodes
  nodes, y = lines_of(known, x, y)
  local letters = math.floor(width / (labels.SIZE * 0.5))
  local function whole(s) -- keeps what belongs to a figure on its line
    return (s:gsub(" ± ", NO_BREAK .. "±" .. NO_BREAK):gsub(" N m", NO_BREAK .. "N" .. NO_BREAK .. "m"))
  end
  local function write(s, attributes)
    for _, line in ipairs(text.wrap(s, letters)) do
      nodes[#nodes + 1] = svg.text(x, y, line, attributes)
      y = y + LINE
    end
  end
  if #known.cases == 0 then
    write("No load is asked for: name one in load_cases, and it is drawn bent.")
  end
  for i, case in ipairs(known.cases) do
    local said = whole(table.concat(says(known, case), " "))
    local rows = 1 + #text.wrap(said, letters)
    if y + rows * LINE > bottom then
      write(("%d more in the table of the HTML page."):format(#known.cases - i + 1))
      break
    end
    write(("%s: %s, %s"):format(case.number, case.id, words.load(case.said)), { ["font-weight"] = "bold" })
    write(said)
    y = y + 1
  end
  return nodes
end

function M.says(known, case)
  return table.concat(says(known, case), " ")
end

return M
