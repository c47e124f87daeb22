-- The drawing as a whole, from the top: title, the cut with its marks and a scale bar, a detail of where blank and bore
-- meet, the legend, what has to be said about the drawing.
local callouts = require "callouts"
local cut = require "cut"
local legend = require "legend"
local marks = require "marks"
local shapes = require "shapes"
local svg = require "withy.svg"
local text = require "withy.text"
local things = require "things"
local views = require "views"
local words = require "words"

local M = {}

local MARGIN = 4 -- mm on every side
local BAR = 50 -- mm of the rod
local LINE = 3.6 -- mm

-- What the drawing does to the gaps.
local function gap_words(gaps)
  if gaps.extra == 0 then
    return "Lengths, diameters and gaps to scale."
  end
  return ("Gaps around blank and arbors drawn x %g (those wider than %s mm drawn %s mm wider); lengths and outer "
    .. "diameters to scale."):format(gaps.factor, text.fixed(gaps.narrow, 2), text.fixed(gaps.extra, 2))
end

local function measure_of(ctx, figure)
  for _, unknown in ipairs(ctx.report.unknown) do
    if unknown.figure == figure then
      return unknown.measure
    end
  end
  return nil
end

-- Cuts are to come that neither log nor design has; those that differ by less than 1/16 in are one cut.
local function cuts_to_come(ctx)
  local plan = ctx:get("fit.cut_plan")
  local last = plan and plan.stages[#plan.stages]
  return last and last.total_mm - (plan.cut_planned_mm or 0) > 25.4 / 16
end

local function remarks(ctx, handle, view)
  local said = {
    gap_words(view.gaps),
    "Lengths are counted from the butt end of the finished rod (outer end of the butt cap)" .. marks.rounding(ctx)
      .. ". Build from the cut sheet, not from lengths taken off this drawing.",
  }
  if handle.blank and cuts_to_come(ctx) then
    said[#said + 1] = "Drawn before the cuts to come: after them the blank comes to rest elsewhere."
  end
  if not handle.blank then
    local measure = measure_of(ctx, "fit.overall_length_mm")
    said[#said + 1] = "The blank is not drawn: where it comes to rest in the handle is not known."
      .. (measure and " To tell: " .. measure .. "." or "")
  elseif #handle.walls > 0 and not handle.walls[1].inner then
    said[#said + 1] = "The blank's wall is not known: its outside alone is drawn."
  end
  local lines = {}
  for _, remark in ipairs(said) do
    for _, line in ipairs(text.wrap(remark, math.floor((view.width - 2 * MARGIN) / 1.3))) do
      lines[#lines + 1] = line
    end
  end
  return lines
end

local function title(ctx)
  local identity = ctx.design.identity
  local said = { identity and identity.name or ctx.stem, "blank in its handle, cut along the axis" }
  if identity and identity.revision then
    said[#said + 1] = "revision " .. text.fixed(identity.revision, 0)
  end
  said[#said + 1] = "design " .. (ctx.report.design_digest or ""):sub(8, 19)
  return svg.text(MARGIN, MARGIN + 3, table.concat(said, ", "), { ["font-size"] = 3.4, ["font-weight"] = "bold" })
end

local function scale_bar(view, x, y)
  local length = BAR / view.scale
  local line = { stroke = "#000", ["stroke-width"] = 0.25 }
  return {
    svg.line(x, y, x + length, y, line), svg.line(x, y - 1.5, x, y, line),
    svg.line(x + length / 2, y - 0.9, x + length / 2, y, line), svg.line(x + length, y - 1.5, x + length, y, line),
    svg.text(x + length + 2, y, ("%d mm of the rod, %s"):format(BAR, view.words)),
  }
end

local function moved(y, ...)
  return svg.group({ transform = ("translate(0 %.3f)"):format(y) }, ...)
end

-- The whole handle: things above, lengths below. Gives its nodes and height.
local function whole(handle, view, above, below)
  local edge = cut.edge(handle, view)
  local left, right = MARGIN + 3, view.width - MARGIN - 3
  local up = callouts.height_of_numbers() + edge
  local nodes = moved(up,
    callouts.numbers(cut.marked(handle, view, above, -1), -edge, left, right),
    callouts.figures(cut.marked(handle, view, below, 1), edge, left, right),
    cut.draw(handle, view))
  return nodes, up + edge + callouts.height_of_figures(below)
end

-- Where blank and bore meet, larger; nothing where that would not be larger.
local function detail(handle, view, above)
  local near = views.detail(handle, view)
  if not near then
    return nil, 0
  end
  local fine = {}
  for _, thing in ipairs(above) do
    fine[#fine + 1] = thing.fine and thing.place >= near.first and thing.place <= near.last and thing or nil
  end
  local edge = cut.edge(handle, near)
  local up = callouts.height_of_numbers() + edge + 1
  return {
    moved(up, callouts.numbers(cut.marked(handle, near, fine, -1), -edge, MARGIN + 3, view.width - MARGIN - 3),
      cut.draw(handle, near)),
    scale_bar(near, MARGIN, up + edge + 4),
  }, up + edge + 6
end

function M.make(ctx)
  local handle = things.collect(ctx)
  local view = views.whole(ctx, handle, MARGIN)
  local length = marks.length(ctx)
  local above, below = words.things(handle, length), words.places(handle, length)
  local y, nodes = MARGIN + 6, {}
  local function add(part, height)
    nodes[#nodes + 1] = moved(y, part)
    y = y + height
  end
  add(whole(handle, view, above, below))
  add(scale_bar(view, MARGIN, 3), 6)
  local larger, height = detail(handle, view, above)
  if larger then
    add(larger, height)
  end
  local both = table.move(below, 1, #below, #above + 1, table.move(above, 1, #above, 1, {}))
  add(legend.draw(both, MARGIN, view.width - MARGIN, 0))
  y = y + LINE
  for _, line in ipairs(remarks(ctx, handle, view)) do
    add(svg.text(MARGIN, LINE, line), LINE)
  end
  return svg.render(svg.drawing(view.width, y + MARGIN,
    shapes.patterns(), svg.rect(0, 0, view.width, y + MARGIN, { fill = "#fff" }),
    svg.group({ fill = "#000", ["font-family"] = "Liberation Sans, Arimo, Helvetica, Arial, sans-serif",
      ["font-size"] = callouts.SIZE }, title(ctx), nodes)))
end

return M
