-- The load in stages, what is computed at each, and boxes for what is read. Loading in stages is the published practice
-- of the static test; a quarter and a half are this sheet's choice.
local columns = require "columns"
local html = require "withy.html"
local told = require "told"
local words = require "words"

local M = {}

local e = html.element

local STAGES = {
  { share = 0, name = "no load" }, { share = 0.25, name = "a quarter" }, { share = 0.5, name = "a half" },
  { share = 1, name = "the whole" },
}
local WIDTHS = { "20mm", "25mm", "26mm", "25mm", "19mm", "19mm", "15mm", "19mm", "auto" }

local function computed(known, strung, stage)
  local case = stage.share == 1 and strung.state == "bent" and strung
    or stage.share > 0 and stage.share < 1 and told.at_share(known, strung, stage.share) or nil
  if not case then
    return stage.share == 1 and { "not known", "not known", "not known" } or { "", "", "" }
  end
  return {
    words.length(case.tip_drop_mm, case.tip_drop_plus_minus_mm, known.by_inch),
    words.uncertain(case.clearance_mm, nil, 1, " mm"),
    case.tip_angle_deg and words.uncertain(case.tip_angle_deg, case.tip_angle_plus_minus_deg, 0, "°") or "not known",
  }
end

local function beyond(strung, stage)
  return strung.state ~= "bent" and strung.reached and strung.reached < stage.share
end

local function row(known, strung, stage)
  local said = computed(known, strung, stage)
  local weight = stage.share == 0 and "" or beyond(strung, stage) and "folds: do not"
    or words.pull(strung, stage.share, known.by_inch)
  local cells = {
    e("td", {}, e("span", { class = "box" }), stage.name), e("td", { class = "s" }, weight),
    e("td", { class = "w" }),
  }
  for _, figure in ipairs(said) do
    cells[#cells + 1] = e("td", { class = "n" }, figure)
    cells[#cells + 1] = e("td", { class = "w" })
  end
  return e("tr", {}, cells)
end

function M.draw(known, strung)
  local rows = {}
  for i, stage in ipairs(STAGES) do
    rows[i] = row(known, strung, stage)
  end
  local function th(title, class, ...)
    return e("th", { class = class }, title, ...)
  end
  return {
    e("h2", {}, "Load in stages", e("span", {}, "look and measure at each; A, B and C as in the drawing")),
    e("table", {}, columns(WIDTHS),
      e("thead", {}, e("tr", {}, th("stage"), th("on the line"), th("line touches ahead of guide(s)", "w"),
        th("A, tip below line of butt: computed", "n"), th("read", "w"),
        th("B, line off blank: computed", "n"), th("read", "w"),
        th("C, tip above level: computed", "n"), th("read", "w"))),
      e("tbody", {}, rows)),
    e("p", { class = "note" }, "A is at right angles to the straight line of the butt; a string along the butt "
      .. "shows it. Computed of the pull alone: the rod's own weight is not in it (read it at 'no load'). "
      .. "± is about two standard deviations."),
  }
end

return M
