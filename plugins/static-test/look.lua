-- What to look for while the rod is loaded, with what is computed of it.
local html = require "withy.html"
local train = require "train"
local words = require "words"

local e = html.element

local function item(...)
  return e("li", {}, e("span", { class = "box" }), ...)
end

local function most(strung)
  if not (strung.most_turned and strung.most_turn_deg) then
    return "The guide that turns the line far more than its neighbours."
  end
  return { "The guide that turns the line most: computed ", e("b", {}, train.name(strung, strung.most_turned)), ", ",
    words.uncertain(strung.most_turn_deg, strung.most_turn_plus_minus_deg, 1, "°"), "." }
end

-- Where the line comes nearest to the blank: "11" from the tip-top's ring, between g3 and g2".
local function tightest(known, strung)
  local place, span = strung.clearance_at_mm, train.tightest(strung)
  if not (strung.clearance_mm and place and #strung.at_mm > 0) then
    return "Line on the blank: between which rings?"
  end
  local where = words.length(strung.at_mm[#strung.at_mm] - place, nil, known.by_inch) .. " from the tip-top's ring"
    .. (span and (", between %s and %s"):format(span.from_ring and train.name(strung, span.from_ring) or "the reel",
      train.name(strung, span.to_ring)) or "")
  if strung.rings_stand == "below" and strung.clearance_mm >= 0 then
    return "Line and blank: with rings below they draw apart. Even gaps, even angles?"
  elseif strung.clearance_mm < 0 then
    return { "B, line on the blank: computed ", e("b", {}, "it touches"), ", most ", where, "." }
  end
  return { "B, line nearest the blank: ", where, "." }
end

-- A list to tick off.
return function(known, strung)
  return e("ul", { class = "look" },
    item(tightest(known, strung)),
    item(most(strung)),
    item("Flat spots: straight between two that bend; hinges: all in one place."),
    item("A ring that tips or a foot that lifts; a guide that creeps under its tape."),
    item("Line and blank in even steps from guide to guide, no kink at the tip-top."))
end
