-- The page to print: the drawing, and on the next sheet its figures in tables.
local html = require "withy.html"
local sheet = require "withy.sheet"
local text = require "withy.text"
local words = require "words"

local M = {}

local e = html.element

local STYLE = [[
svg { display: block; max-width: 100%; break-after: page; }
td, th { font-variant-numeric: tabular-nums; }
]]

local function row(known, case, what, shape)
  local from_tip = words.hardest(shape)
  return {
    case.number .. ": " .. case.id, what, words.load(shape), words.direction(shape.butt_angle_deg or 0),
    shape.tip_drop_mm and known.length.say(shape.tip_drop_mm, shape.tip_drop_plus_minus_mm) or "not known",
    words.tip(shape.tip_angle_deg or 0),
    text.uncertain(shape.clamp_moment_n_m, shape.clamp_moment_plus_minus_n_m, 2),
    words.strain(shape), from_tip and known.length.say(from_tip) or "straight",
    text.uncertain(shape.strain_energy_j, nil, 2),
  }
end

local function loads(known)
  local rows = {}
  for _, case in ipairs(known.cases) do
    rows[#rows + 1] = case.bare and row(known, case, "bare", case.bare) or nil
    rows[#rows + 1] = case.finished and row(known, case, "finished", case.finished) or nil
  end
  if #rows == 0 then
    return nil
  end
  return html.table {
    head = { "load", "of", "at the tip", "butt", "tip drops", "tip points", "moment at clamp, N m",
      "most strain, thousandths", "that is, from the tip", "energy, J" },
    rows = rows,
  }
end

local function remarks(known)
  local nodes = {}
  for _, case in ipairs(known.cases) do
    local folds = words.folds(case.said)
    nodes[#nodes + 1] = folds and e("p", {}, e("strong", {}, case.number .. ": " .. case.id .. ". "), folds) or nil
  end
  return nodes
end

local function figures(title, of)
  local power, hz = of.report.power, of.report.frequency_hz
  local rung = {}
  for i in ipairs(hz) do
    rung[i] = text.uncertain(hz[i], i == 1 and of.report.frequency_plus_minus_hz or nil, 2)
  end
  return {
    title,
    power and text.uncertain(power.load_g, power.load_plus_minus_g, 0) or "not known",
    power and text.uncertain(power.coins, nil, 0) or "not known",
    power and text.uncertain(power.tip_angle_deg, nil, 0) or "not known",
    power and power.action or "not known",
    power and power.line_number and text.fixed(power.line_number, 1) or "-",
    #rung > 0 and table.concat(rung, "; ") or "not known",
  }
end

local function power(known)
  local rows = {}
  rows[1] = known.bare and figures("bare blank", known.bare) or nil
  rows[#rows + 1] = known.finished and figures("finished rod", known.finished) or nil
  return html.table {
    head = { "held level", "weight for a third drop, g", "in coins of 2.50 g", "tip then points down, deg", "action",
      "line number, by a straight line through 20 published points", "natural frequencies, Hz" },
    rows = rows,
  }
end

local function costs(known)
  local hz = known.bending.train_costs_hz
  if not hz or #known.bending.losses == 0 then
    return nil
  end
  local said = {}
  for i, loss in ipairs(known.bending.losses) do
    said[i] = ("%s %s"):format(loss.id or "?", text.fixed(loss.hz or 0, 2))
  end
  return e("p", {}, ("Guides, wraps and tip-top cost %s Hz of the first frequency; each by itself: %s Hz.")
    :format(text.fixed(hz, 2), table.concat(said, ", ")))
end

function M.make(known, drawing)
  return html.page {
    title = known.name .. ": how it bends",
    style = sheet.style { paper = known.paper, landscape = true } .. STYLE,
    body = {
      drawing,
      e("h1", {}, known.name .. ": how it bends and rings"),
      loads(known), remarks(known),
      e("h2", {}, "What it is told apart by"), power(known), costs(known),
      e("p", {}, "'From the tip' is from ", known.end_name,
        "; of the bare blank, from its tip. ± is about two standard deviations."),
      e("p", {}, words.CAUTION),
    },
  }
end

return M
