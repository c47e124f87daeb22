-- The guides, butt first: where they stand, what is computed, boxes to write in.
local columns = require "columns"
local html = require "withy.html"
local list = require "withy.table"
local units = require "withy.units"
local text = require "withy.text"
local words = require "words"

local M = {}

local e = html.element

local ID = 15 -- letters
local MANY = 11 -- rows; more of them stand closer, so that fourteen guides have room on the page
local WIDTHS = { "25mm", "16mm", "19mm", "14mm", "16mm", "23mm", "14mm", "24mm", "auto" }

-- A ring by its id, the tip-top by what it is.
function M.name(strung, id)
  local last = strung.rings[#strung.rings]
  return last and last.id == id and "tip-top" or words.short_id(id or "no id", ID)
end

-- The span in which the line comes nearest to the blank, or nil.
function M.tightest(strung)
  local least
  for _, span in ipairs(strung.spans) do
    if span.clearance_mm and (not least or span.clearance_mm < least.clearance_mm) then
      least = span
    end
  end
  return least
end

-- The rings of a load, as far as they are computed: { id =, from_tip =, turn =, force =, clearance = on to the next };
-- of a load of which nothing is, the guides where they stand.
local function rings_of(known, strung)
  local tip = strung.at_mm[#strung.at_mm]
  local rings = list.map(strung.rings, function(ring)
    local span = ring.id and list.find(strung.spans, function(s) return s.from_ring == ring.id end)
    return { id = ring.id, from_tip = ring.from_butt_mm and tip and tip - ring.from_butt_mm, turn = ring.turn_deg,
      force = ring.force_n, clearance = span and span.clearance_mm }
  end)
  if #rings == 0 and known.rod then
    rings = list.map(known.rod.guides, function(guide) return { id = guide.id, from_tip = guide.from_tip_mm } end)
    rings[#rings + 1] = { from_tip = 0 }
  end
  if #rings > 0 then
    rings[#rings].is_tip = true
  end
  return rings
end

local function cell(shown, class)
  return e("td", { class = class }, shown)
end

local function number(value, decimals, unit)
  return value and text.fixed(value, decimals) .. (unit or "") or "not known"
end

local function row(strung, ring, i)
  local function figure(...)
    return #strung.rings > 0 and number(...) or nil -- of a load of which nothing is computed, nothing
  end
  local bold = ring.id and ring.id == strung.most_turned
  local place = not ring.is_tip and ring.from_tip
  return e("tr", {},
    cell(ring.is_tip and "tip-top" or ring.id and words.short_id(ring.id, ID) or ("no. %d"):format(i), bold and "s"),
    cell(ring.is_tip and "0" or number(ring.from_tip, 0), "n"), cell(place and units.inches(place, 16), "n"),
    cell(figure(ring.turn, 1, "°"), bold and "n s" or "n"), cell(figure(ring.force, 2), "n"),
    cell(not ring.is_tip and figure(ring.clearance, 1), "n"),
    cell(not ring.is_tip and e("span", { class = "box" }), "w"), cell(nil, "w"), cell(nil, "w"))
end

local function th(title, class)
  return e("th", { class = class }, title)
end

local function head()
  return e("thead", {}, e("tr", {}, th("guide"), th("from the tip-top, mm", "n"), th("in", "n"),
    th("turns the line", "n"), th("pressed with, N", "n"), th("line off the blank from here on, mm", "n"),
    th("touched", "w"), th("moved to", "w"), th("note", "w")))
end

local function figures_of(strung)
  if strung.state == "bent" or not strung.reached then
    return "figures of the whole load"
  end
  return ("figures of %s %% of the load"):format(text.fixed(math.floor(100 * strung.reached), 0))
end

function M.draw(known, strung)
  local rings = rings_of(known, strung)
  if #rings < 2 then
    return e("p", { class = "note" }, "No guides are placed in this design.")
  end
  local rows = {}
  for i, ring in ipairs(rings) do
    rows[i] = row(strung, ring, i)
  end
  return {
    e("h2", {}, "Guides", e("span", {}, "butt first; from the tip-top's ring centre to the guide's ring centre; "
      .. figures_of(strung))),
    e("table", { class = #rows > MANY and "many" or "few" }, columns(WIDTHS), head(), e("tbody", {}, rows)),
  }
end

return M
