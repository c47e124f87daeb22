-- What a load does and what the drawing is, in sentences: above and below it, and for those who do not see it.
local axis = require "axis"
local text = require "withy.text"
local words = require "words"

local M = {}

local ID = 40 -- letters of a load's id

local function named(known, strung, id)
  for i, ring in ipairs(strung.rings) do
    if id and ring.id == id then
      return i == #strung.rings and "the tip-top" or known.ring_name(strung.rings, i)
    end
  end
  return id and text.clipped(id, ID) or "the reel"
end

local function turns_most(known, strung)
  if not (strung.most_turned and strung.most_turn_deg) then
    return nil
  end
  return ("the line turns most at %s, %s deg"):format(named(known, strung, strung.most_turned),
    text.uncertain(strung.most_turn_deg, strung.most_turn_plus_minus_deg, 1))
end

local function tightest_span(strung)
  local least
  for _, span in ipairs(strung.spans) do
    if span.clearance_mm and (not least or span.clearance_mm < least.clearance_mm) then
      least = span
    end
  end
  return least
end

-- "it clears the blank by 0.8 mm at least, 279 mm from the tip-top's ring, between g3 and g2".
local function clears(known, strung)
  if not strung.clearance_mm then
    return nil
  end
  local tip, at, span = strung.at_mm[#strung.at_mm], strung.clearance_at_mm, tightest_span(strung)
  local ring = axis.ring_at(strung, at)
  local where = ring and ", in the ring of " .. named(known, strung, ring.id)
    or (tip and at and (", %s from the tip-top's ring"):format(known.length.say(tip - at)) or "")
    .. (span and (", between %s and %s"):format(named(known, strung, span.from_ring),
      named(known, strung, span.to_ring)) or "")
  if strung.clearance_mm < 0 then
    return ("kept straight it would cut %s mm into the blank%s"):format(text.fixed(-strung.clearance_mm, 1), where)
  end
  return ("it clears the blank by %s mm at least%s"):format(text.fixed(strung.clearance_mm, 1), where)
end

local function bends(known, strung)
  local said = {}
  local function add(s, ...)
    said[#said + 1] = s:format(...)
  end
  if strung.tip_drop_mm then
    add("the tip is %s %s the line straight on from the butt",
      known.length.say(math.abs(strung.tip_drop_mm), strung.tip_drop_plus_minus_mm),
      strung.tip_drop_mm < 0 and "above" or "below")
  end
  if strung.clamp_moment_n_m then
    add("%s N m at the clamp", text.uncertain(strung.clamp_moment_n_m, strung.clamp_moment_plus_minus_n_m, 2))
  end
  if strung.peak_strain_millistrain then
    add("strain at most %s thousandths", text.fixed(strung.peak_strain_millistrain, 2))
  end
  if (strung.friction_loss_percent or 0) >= 0.05 then
    add("the rings take %s %% of the pull by friction", text.fixed(strung.friction_loss_percent, 1))
  end
  return #said > 0 and table.concat(said, "; ") or nil
end

-- "Now: one thing; another."; nil where there is nothing to say.
local function sentence(name, ...)
  local said = {}
  for i = 1, select("#", ...) do
    said[#said + 1] = (select(i, ...))
  end
  if #said == 0 then
    return nil
  end
  local all = (name and name .. ": " or "") .. table.concat(said, "; ") .. "."
  return all:sub(1, 1):upper() .. all:sub(2)
end

-- What pulls, without a full stop.
function M.title(load)
  local strung = load.said
  if not strung.tension_n then
    return ("Load %s, %s"):format(load.number, text.clipped(load.id, ID))
  end
  return ("Load %s, %s%s: %s on the line, which runs %s; butt %s"):format(load.number,
    text.clipped(load.id, ID), load.added and " (added, to place the guides by)" or "", words.whole_pull(strung),
    words.direction(strung.line_angle_deg or -90), words.direction(strung.butt_angle_deg or 0))
end

-- One paragraph each.
function M.head(known, load)
  local strung = load.said
  local said = { M.title(load) .. "." }
  local function add(s)
    said[#said + 1] = s
  end
  add(words.folds(strung))
  if #strung.at_mm == 0 and known.measure then
    add("To tell: " .. known.measure .. ".")
  end
  if load.proposed and load.now then
    add(sentence("Now", turns_most(known, load.now), clears(known, load.now)))
  end
  add(sentence(load.proposed and "Proposed" or nil, turns_most(known, strung), clears(known, strung),
    bends(known, strung)))
  return said
end

local STAND = {
  below = "Rings below: bent, the blank draws away from the line.",
  around = "Some guides are turned about the blank: drawn as seen from the side, so how far a ring stands aside is not "
    .. "seen (the table says it), and the roll of the blank, which such a train is built to cure, is not in it.",
}

local function held(known, strung)
  return strung.clamp_mm and known.length.say(strung.clamp_mm) .. " from the butt end of the finished rod"
    or "not known where"
end

function M.datum(known, load)
  local strung = load.said
  local said = {
    ("Drawn from the clamp's tip-side edge, %s; forward to the right. Blank, line and places of rings to scale; "
      .. "rings and reel are marks."):format(held(known, strung)),
    "Beside a ring: by how many degrees it turns the line; bold: the most, the tip-top left out.",
  }
  if load.now and load.proposed then
    said[#said + 1] = "Now: dashed line, squares; proposed: solid line, dots."
  end
  if not known.short_names then
    said[#said + 1] = "Guides are numbered from the butt; the table has their ids."
  end
  said[#said + 1] = STAND[strung.rings_stand or ""]
  said[#said + 1] = "The rod's own weight is not in it. ± is about two standard deviations. " .. words.CAUTION
  return table.concat(said, " ")
end

return M
