-- The layouts that were looked at where guides were placed, and what the proposal rests on.
local html = require "withy.html"
local proposal = require "proposal"
local text = require "withy.text"

local M = {}

local e = html.element

local NO_BREAK = "\u{a0}"

local STATES = {
  ["not possible"] = "No layout keeps all limits; the least bad one is given.",
  ["cannot tell"] = "Where the guides would best stand cannot be told.",
}

local function places(known, layout)
  local said = {}
  for i, at in ipairs(layout.from_tip_mm) do
    said[#layout.from_tip_mm + 1 - i] = known.length.say(at):gsub(" ", NO_BREAK)
  end
  return table.concat(said, ", ")
end

local function row(known, layout)
  return {
    layout.name or "", layout.turn_deg and text.fixed(layout.turn_deg, 1) or "not known",
    text.clipped(layout.at_guide or "", 20), text.clipped(layout.under or "", 20),
    layout.clearance_mm and text.fixed(layout.clearance_mm, 1) or "not asked for",
    layout.keeps_limits and "yes" or layout.breaks or "no", places(known, layout),
  }
end

local function rows_of(known, placed)
  local rows = {}
  local function add(layout)
    rows[#rows + 1] = layout and row(known, layout) or nil
  end
  add(placed.now)
  add(placed.proposed)
  for _, layout in ipairs(placed.classics) do
    add(layout)
  end
  add(placed.other_rule)
  add(placed.one_fewer)
  add(placed.one_more)
  return rows
end

local function said_of(placed)
  local said = { STATES[placed.state or ""] or nil }
  local function add(s)
    said[#said + 1] = s
  end
  add(placed.why and placed.why:sub(1, 1):upper() .. placed.why:sub(2):gsub("([^.])$", "%1."))
  add(placed.gaps_never_grow and "Gaps may not grow towards the tip." or "Gaps may grow towards the tip.")
  add(placed.one_off_by_3_mm_percent and ("One guide 3 mm off raises the largest angle by %s %% at most%s."):format(
    text.fixed(placed.one_off_by_3_mm_percent, 1),
    placed.most_critical and " (" .. text.clipped(placed.most_critical, 20) .. ")" or ""))
  for _, note in ipairs(placed.notes) do
    add(note)
  end
  return table.concat(said, " ")
end

-- Nodes; nil where no guides were placed.
function M.draw(known)
  local placed = known.placement
  if not placed then
    return nil
  end
  local rows = rows_of(known, placed)
  return {
    e("h2", {}, "Where the guides would stand best, and the layouts that were looked at"),
    e("p", {}, "Largest angle: the most that the line turns at a guide, over all loads, or twice the angle at which it "
      .. "comes to the tip-top. The proposal is the best found from several starts; it is not proven to be the least."),
    e("p", {}, said_of(placed)),
    proposal.draw(known, placed),
    #rows > 0 and html.table {
      head = { "layout", "largest angle, deg", "at", "under", "least clearance, mm", "keeps the limits",
        "from the tip-top's ring, tip first" },
      rows = rows,
    } or nil,
  }
end

return M
