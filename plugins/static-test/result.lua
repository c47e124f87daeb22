-- What the log takes of a static test, and how it gets there.
local html = require "withy.html"
local text = require "withy.text"
local words = require "words"

local M = {}

local e = html.element

local GRAVITY = 9.80665 -- m/s2, standard

-- The command with what is known filled in and blanks for what is read.
local function command(known, strung)
  local grams = strung.tension_n and text.fixed(strung.tension_n / GRAVITY * 1000, 0) or "____"
  local butt = strung.butt_angle_deg or 0
  local said = { "withy guides FILE", ("--lifted '%s g'"):format(grams), ("--butt-angle '%g deg'"):format(butt) }
  if not words.hangs(strung) then
    said[#said + 1] = ("--line-angle '%g deg'"):format(butt - strung.line_angle_deg)
  end
  said[#said + 1] = ("--tip-drop '____ %s'"):format(known.by_inch and "in" or "mm")
  said[#said + 1] = "--touched ____ --saw '____'"
  return table.concat(said, " ")
end

local function blank(title, short)
  return { e("span", {}, title), e("i", { class = short and "short" or nil }) }
end

local function line(...)
  return e("div", { class = "line" }, ...)
end

function M.draw(known, strung)
  return e("section", { class = "result" },
    e("h2", {}, "Result, for the log"),
    line(blank("date"), blank("by"), blank("weight lifted, g", true), blank("butt angle", true)),
    line(e("span", {}, e("span", { class = "box" }), "line touched, ahead of guide(s)"), e("i", {}),
      blank("A, tip drop at the whole load", true)),
    line(blank("seen")),
    e("p", { class = "note" }, "Recorded by: ", e("code", {}, command(known, strung)), e("br", {}),
      "FILE is the design of this sheet (", text.clipped(known.stem, 40), "); --touched none where the line never "
      .. "touched, else the guides ahead of which it did; --lifted as it really was."))
end

return M
