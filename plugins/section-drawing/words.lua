-- What is marked on the drawing and said in its legend: things by number, places from the butt end by letter.
local marks = require "marks"
local text = require "withy.text"
local things = require "things"

local M = {}

local function plain(word)
  return (word:gsub("_", " "))
end

local function joined(...)
  local said = {}
  for _, words in pairs { ... } do
    said[#said + 1] = words ~= "" and words or nil
  end
  return table.concat(said, ", ")
end

local function size_of(part)
  if not part.outer then
    return "outside not known"
  end
  local first, last = part.outer[1].radius * 2, part.outer[#part.outer].radius * 2
  if math.abs(first - last) < 0.05 then
    return text.fixed(first, 1) .. " mm across"
  end
  return ("%s to %s mm across"):format(text.fixed(first, 1), text.fixed(last, 1))
end

local function part_words(part)
  local kind = plain(part.kind or "part")
  return joined(part.id == part.kind and kind or ("%s: %s"):format(part.id, kind), size_of(part),
    part.around_blank and part.outer and part.remark or "")
end

-- "arbor-mid: 2 turns, 10 mm long, to 12.83 mm, gap 0.12 mm".
local function arbor_words(arbor)
  local turns = arbor.turns and ("%s turn%s"):format(text.fixed(arbor.turns, 0), arbor.turns == 1 and "" or "s") or ""
  return (arbor.id or "arbor") .. ": " .. joined(
    turns, text.fixed(arbor.length_mm, 0) .. " mm long",
    arbor.outer_mm and "to " .. marks.diameter(arbor.outer_mm) or "how thick is not known",
    arbor.gap_mm and "gap " .. marks.diameter(arbor.gap_mm) or "",
    arbor.proposed and "proposed" or "")
end

local function weight_words(weights)
  local each = weights.mass_g and (" of %s g"):format(text.fixed(weights.mass_g, 1)) or ""
  local abreast = weights.abreast > 1 and (", %s side by side"):format(text.fixed(weights.abreast, 0)) or ""
  local beyond = weights.drawn < weights.layers
    and (", %s of them drawn: the rest is beyond the part"):format(text.fixed(weights.drawn * weights.abreast, 0)) or ""
  return ("%s counterweight%s%s%s, potted%s"):format(text.fixed(weights.count, 0), weights.count == 1 and "" or "s",
    each, abreast, beyond)
end

local CONTACTS = {
  stop = "touches: butt face at the stop",
  step = "touches: butt face on a step of the bore",
  taper = "touches: blank in the bore",
  arbor = "touches: arbor in the bore",
}

local function touch_words(touch)
  local bore = touch.bore_mm and "bore " .. marks.diameter(touch.bore_mm) or ""
  if touch.gap then
    return joined("narrowest, gap " .. marks.diameter(touch.gap), bore)
  end
  return joined(CONTACTS[touch.kind or ""] or "touches", bore)
end

local function by_place(a, b)
  return a.place < b.place
end

-- Things, from the butt on: { place =, words =, name = "1", fine = also on the detail }.
function M.things(handle, length)
  local result = {}
  local function say(place, words, fine)
    if place and place >= 0 and place <= handle.stop then
      result[#result + 1] = { place = place, words = words, fine = fine }
    end
  end
  for _, part in ipairs(handle.parts) do
    say((part.start + part.stop) / 2, part_words(part))
    for _, arbor in ipairs(part.arbors) do
      say(arbor.length_mm and arbor.start_mm and arbor.start_mm + arbor.length_mm / 2, arbor_words(arbor), true)
    end
  end
  local weights = things.counterweights(handle)
  if weights then
    say(weights.start + weights.length / 2, weight_words(weights))
  end
  say(handle.reel_foot, "middle of the reel's foot")
  for _, touch in ipairs(handle.touches) do
    say(touch.from_mm and (touch.from_mm + (touch.to_mm or touch.from_mm)) / 2, touch_words(touch), true)
  end
  if handle.host and handle.blank then
    local depth = handle.host.stop - handle.blank[1].at_mm
    say(handle.host.stop, ("depth mark on the blank at the mouth, %s from its butt face"):format(length(depth)), true)
  end
  table.sort(result, by_place)
  for i, thing in ipairs(result) do
    thing.name = ("%d"):format(i)
  end
  return result
end

-- What begins or ends at a place stands there once.
local function gathered(said)
  table.sort(said, by_place)
  local result, began = {}, {}
  for _, one in ipairs(said) do
    began[one.shown] = began[one.shown] or not one.ends
  end
  for _, one in ipairs(said) do
    local last, told = result[#result], one.ends and began[one.shown]
    if not told and last and last.shown == one.shown then
      last.words = last.words .. ", " .. one.words
    elseif not told then
      result[#result + 1] = { place = one.place, shown = one.shown, words = one.words }
    end
  end
  return result
end

-- "a" to "z", then "aa".
local function letter(number)
  local alphabet = ("abcdefghijklmnopqrstuvwxyz")
  local round, at = (number - 1) // 26, (number - 1) % 26 + 1
  return alphabet:sub(at, at):rep(round + 1)
end

-- Places from the butt end on: { place =, shown = the length in words, words =, name = "a" }.
function M.places(handle, length)
  local said = {}
  local function say(place, words, ends)
    if place and place >= 0 and place <= handle.stop then
      said[#said + 1] = { place = place, shown = length(place), words = words, ends = ends }
    end
  end
  say(0, "butt end of the rod")
  for _, part in ipairs(handle.parts) do
    say(part.start, part.id .. " begins")
    say(part.stop, part.id .. " ends", true)
    for _, arbor in ipairs(part.arbors) do
      say(arbor.start_mm, (arbor.id or "arbor") .. " begins")
    end
    say(part.cavity and part.cavity.start_mm, "cavity begins")
  end
  if handle.blank then
    say(handle.blank[1].at_mm, "blank's butt face, " .. marks.diameter(handle.blank[1].radius * 2))
  end
  local result = gathered(said)
  for i, place in ipairs(result) do
    place.name = letter(i)
  end
  return result
end

return M
