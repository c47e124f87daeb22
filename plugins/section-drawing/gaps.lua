-- How a gap is drawn: one of g mm as g + min((k - 1) g, extra), so a narrow one k times as wide as it is, a wide one by
-- `extra` wider. `extra` is what the walls around the blank have room for. Where the bore is tighter than the blank, or
-- narrows behind its butt face, the same holds the other way.
local profiles = require "profiles"

local M = {}

local SHARE = 0.7 -- of the thinnest wall that a gap may grow into
local LEAST_WALL = 0.4 -- mm; what is thinner (the rim of a winding check) does not count

-- `handle` is of things.lua. Nothing is drawn wider where the blank's place is not known.
function M.make(handle, factor)
  local thinnest
  for _, part in ipairs(handle.parts) do
    if part.around_blank and part.bore and part.outer then
      for _, place in ipairs(profiles.places(part.bore[1].at_mm, part.bore[#part.bore].at_mm, part.bore, part.outer)) do
        local wall = profiles.at(part.outer, place) - profiles.at(part.bore, place)
        thinnest = math.min(thinnest or wall, math.max(wall, LEAST_WALL))
      end
    end
  end
  local extra = handle.blank and thinnest and factor > 1 and SHARE * thinnest or 0
  return { factor = factor, extra = extra, narrow = extra > 0 and extra / (factor - 1) or 0 }
end

local function widened(gaps, gap)
  return gap + math.max(-gaps.extra, math.min(gaps.extra, (gaps.factor - 1) * gap))
end

-- The radius of the blank that a gap is counted from: its own, behind its butt face that of the face.
local function reference(blank, place, left)
  return profiles.at(blank, math.max(place, blank[1].at_mm), left and place > blank[1].at_mm)
end

-- Places where the gap passes from narrow to wide between two places.
local function bends(gaps, blank, profile, from, to)
  local result = {}
  local function gap(place, left)
    return profiles.at(profile, place, left) - reference(blank, place, left)
  end
  local first, last = gap(from), gap(to, true)
  for _, limit in ipairs { -gaps.narrow, gaps.narrow } do
    if (first - limit) * (last - limit) < 0 then
      result[#result + 1] = from + (limit - first) / (last - first) * (to - from)
    end
  end
  table.sort(result)
  return result
end

-- A profile around the blank as it is drawn.
function M.drawn(gaps, blank, profile)
  if not blank or gaps.extra == 0 then
    return profile
  end
  local result = {}
  local function add(place, left)
    local from = reference(blank, place, left)
    result[#result + 1] = {
      at_mm = place, radius = from + widened(gaps, profiles.at(profile, place, left) - from),
    }
  end
  local places = profiles.places(profile[1].at_mm, profile[#profile].at_mm, profile, blank)
  for i = 2, #places do
    add(places[i - 1])
    for _, place in ipairs(bends(gaps, blank, profile, places[i - 1], places[i])) do
      add(place)
    end
    add(places[i], true)
  end
  return result
end

-- An arbor of an outer radius over [start, stop] as it is drawn: below the bore by its own gap.
function M.drawn_arbor(gaps, blank, bore, radius, start, stop)
  local straight = profiles.straight(radius, start, stop)
  if not bore or gaps.extra == 0 then
    return M.drawn(gaps, blank, straight)
  end
  local result = {}
  for _, row in ipairs(M.drawn(gaps, blank, profiles.over(bore, start, stop))) do
    local gap = profiles.at(bore, row.at_mm) - radius
    result[#result + 1] = { at_mm = row.at_mm, radius = row.radius - widened(gaps, gap) }
  end
  return result
end

return M
