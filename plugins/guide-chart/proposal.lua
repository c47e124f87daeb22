-- Each guide as proposed: where it stood, where it goes, what it costs to be off there, what keeps it from going on.
local html = require "withy.html"
local list = require "withy.table"
local text = require "withy.text"

local M = {}

local ID = 30 -- letters

local function figure(value, decimals)
  return value and text.fixed(value, decimals) or "not known"
end

local function model_of(guide)
  local model = text.clipped(guide.model or "", ID)
  return guide.model_was and ("%s (was %s)"):format(model, text.clipped(guide.model_was, ID)) or model
end

local function row(known, guide)
  local was, now = guide.from_tip_was_mm, guide.from_tip_mm
  return {
    text.clipped(guide.id or "no id", ID), model_of(guide),
    was and known.length.say(was) or "not placed", now and known.length.say(now) or "not known",
    guide.locked and "locked" or guide.bound_by or "",
    figure(guide.turn_deg, 1), text.clipped(guide.under or "", ID),
    figure(guide.off_by_3_mm_percent, 1),
  }
end

-- A table; nil where nothing is proposed.
function M.draw(known, placed)
  if #placed.guides == 0 then
    return nil
  end
  return html.table {
    head = { "guide, butt first", "model", "from the tip-top's ring, now", "proposed", "bound by",
      "most turn of the line, deg", "under", "3 mm off raises the largest angle by, %" },
    rows = list.map(placed.guides, function(guide) return row(known, guide) end),
  }
end

return M
