-- The protocol: for each load a page to fill in.
local cautions = require "cautions"
local html = require "withy.html"
local judged = require "judged"
local list = require "withy.table"
local look = require "look"
local result = require "result"
local sheet = require "withy.sheet"
local sketch = require "sketch"
local stages = require "stages"
local style = require "style"
local text = require "withy.text"
local train = require "train"
local words = require "words"

local M = {}

local e = html.element

local function heading(known, strung, number)
  local marks = {}
  marks[1] = known.revision and "revision " .. text.fixed(known.revision, 0) or nil
  marks[#marks + 1] = known.serial and "serial " .. text.clipped(known.serial, 20) or nil
  marks[#marks + 1] = "design " .. known.digest
  local which = #known.loads > 1 and ("load %d of %d: "):format(number, #known.loads) or "load "
  return e("header", {},
    e("div", {}, e("p", { class = "label" }, "Static test"), e("h1", {}, text.clipped(known.name, 60))),
    e("div", { class = "who" }, which, text.clipped(strung.id or "without id", 30), e("br", {}),
      table.concat(marks, ", ")))
end

-- What speaks against this load; where nothing is computed of it, what would settle that.
local function warnings(known, strung)
  local said = judged.against(known, strung)
  if #strung.at_mm == 0 then
    said[#said + 1] = "How rod and line stand under this load is not known."
      .. (known.measure and " To tell: " .. known.measure .. "." or "")
  end
  return #said > 0 and e("div", { class = "stop" }, list.map(said, function(s) return e("p", {}, s) end)) or nil
end

local function caution_box()
  return e("section", { class = "cautions" },
    e("ul", {}, list.map(cautions, function(s) return e("li", {}, s) end)))
end

local function item(title, shown, small)
  return { e("dt", {}, title), e("dd", {}, shown, small and e("small", {}, " ", small)) }
end

local SIDES = {
  above = "above the blank, on the outside of the bend",
  below = "below the blank, on the inside of the bend",
  around = "turned about the blank: look at how the blank rolls, which is not computed",
}

local function set_up(known, strung)
  local line = words.hangs(strung) and "hangs straight down"
    or "pulled " .. words.direction(strung.line_angle_deg or -90) .. ", with a spring balance"
  return e("dl", {},
    item("on the line", words.pull(strung, 1, known.by_inch), line),
    item("butt", words.direction(strung.butt_angle_deg or 0), "clamped so that it cannot turn or slip"),
    item("held at", words.length(strung.clamp_mm, nil, known.by_inch),
      "tip-side edge of the clamp, from the butt end of the finished rod"),
    item("line", "through all rings", "from the reel in its reel seat, drag locked"),
    item("guides", "taped, not wrapped", SIDES[strung.rings_stand or ""]))
end

-- The drawing, and below it what the rules say of this load.
local function picture_of(known, strung)
  local picture, said = sketch.draw(strung), judged.to_look_at(known, strung)
  if not picture then
    return nil
  end
  return e("div", { class = "picture" }, picture,
    #said > 0 and e("p", {}, e("b", {}, "Computed, look at: "), table.concat(said, " ")) or nil)
end

local function one(known, strung, number)
  return e("section", { class = "load" },
    heading(known, strung, number), warnings(known, strung), caution_box(),
    e("div", { class = "beside" },
      e("div", {}, e("h2", {}, "Set up"), set_up(known, strung),
        e("h2", {}, "Look for"), look(known, strung)),
      picture_of(known, strung)),
    stages.draw(known, strung), train.draw(known, strung), result.draw(known, strung))
end

function M.make(known)
  local loads = {}
  for i, strung in ipairs(known.loads) do
    loads[i] = one(known, strung, i)
  end
  return html.page {
    title = known.name .. ": static test",
    style = style.make(sheet.paper(known.paper), text.clipped(known.name, 60) .. ", design " .. known.digest),
    body = loads,
  }
end

return M
