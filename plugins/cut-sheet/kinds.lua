-- Kinds of column: how a value is shown on paper (`cells`: class and content of each cell, under `heads`) and written
-- as CSV (`figure`: value, unit, inches). A value that is nil is 'not known' and never gets here.
--
--   length     one place in mm and inches: rounded in the design's own unit (`by_inch`) to `step` mm or 1/`inch` in, so
--              that whichever of the two is read, the same place is marked; 1 and 16 for cuts, 2 and 8 for guides
--   diameter   mm with two decimals
--   ream       a diameter, or false: the bore stays as it is
--   stock      a diameter, or false: none in stock is wide enough
--   tube       sixty-fourths of an inch and mm
--              a column that says `toward` "down" or "up" is rounded so: the ends of a band
--   millimetres  a length that is cut off a roll: whole mm
--   mass       g: one decimal from 10 g on, where the second says nothing, else two; volume (ml) likewise
--   area (cm2), minutes, duration (minutes or hours)
--   given      { words, unit }
--   text, tick, write (a box to write in)
local html = require "withy.html"
local text = require "withy.text"
local units = require "withy.units"

local M = {}

local function bare(inches)
  return (inches:gsub('"$', ""))
end

-- A number as `shown` has it, and its unit.
local function number(unit, shown)
  return {
    heads = { unit },
    cells = function(value)
      return { { "n", shown(value) } }
    end,
    figure = function(value)
      return { shown(value), unit, "" }
    end,
  }
end

local function two_decimals(value)
  return text.fixed(value, 2)
end

local function no_decimals(value)
  return text.fixed(value, 0)
end

local function grams(value)
  return text.fixed(value, value < 10 and 2 or 1)
end

-- A film is a few hundredths.
local function millilitres(value)
  return value < 0.1 and text.fixed(value, 3) or grams(value)
end

-- 36 1/8 with its fraction in a box of its own, so that fractions stand under fractions.
local function inches_cell(value, denominator)
  local shown = bare(units.inches(value, denominator))
  local whole, fraction = shown:match("^(%-?%d*) ?(.*)$")
  if fraction:find("^/") then
    whole, fraction = "", shown
  end
  return { "i", whole, html.element("span", { class = "f" }, fraction) }
end

M.diameter = number("mm", two_decimals)
M.millimetres = number("mm", no_decimals)
M.mass = number("g", grams)
M.volume = number("ml", millilitres)
M.area = number("cm2", grams)
M.minutes = number("min", no_decimals)

-- Hours where minutes say nothing.
M.duration = {
  heads = { "" },
  cells = function(value)
    local hours = text.fixed(value / 60, value < 600 and 1 or 0) .. " h"
    return { { "n", value < 120 and no_decimals(value) .. " min" or hours } }
  end,
  figure = M.minutes.figure,
}

-- A diameter, or these words in its place.
local function diameter_or(words)
  return {
    heads = { "mm" },
    cells = function(value)
      return { { "n", value and two_decimals(value) or words } }
    end,
    figure = function(value)
      return { value and two_decimals(value) or words, value and "mm" or "", "" }
    end,
  }
end

M.ream = diameter_or("stays")
M.stock = diameter_or("none in stock")

local HAIR = 1e-6 -- of a step: rounding of what is a whole number of steps

local function stepped(value, step, toward)
  if toward == "down" then
    return math.floor(value / step + HAIR) * step
  elseif toward == "up" then
    return math.ceil(value / step - HAIR) * step
  end
  return units.round(value, step)
end

-- The place that is marked at the bench, and the other unit's words for it.
local function marked(value, column)
  if column.by_inch then
    return stepped(value, 25.4 / column.inch, column.toward), 1, column.inch
  end
  return stepped(value, column.step, column.toward), 0, 32
end

M.length = {
  heads = { "mm", "in" },
  cells = function(value, column)
    local mm, decimals, denominator = marked(value, column)
    local inches = stepped(mm, 25.4 / denominator, column.toward)
    return { { "n", text.fixed(mm, decimals) }, inches_cell(inches, denominator) }
  end,
  figure = function(value, column)
    local inches = units.inches(stepped(value, 25.4 / column.inch, column.toward), column.inch)
    return { text.fixed(value, 2), "mm", inches }
  end,
}

M.tube = {
  heads = { "in", "mm" },
  cells = function(value)
    return { { "n", bare(units.in64(value)) }, { "n", text.fixed(value, 2) } }
  end,
  figure = function(value)
    return { text.fixed(value, 2), "mm", units.in64(value) }
  end,
}

M.text = {
  heads = { "" },
  cells = function(value)
    return { { "", value } }
  end,
  figure = function(value)
    return { value, "", "" }
  end,
}

M.given = {
  heads = { "" },
  cells = function(value)
    return { { "n", value[1] .. (value[2] ~= "" and " " .. value[2] or "") } }
  end,
  figure = function(value)
    return { value[1], value[2], "" }
  end,
}

M.write = {
  heads = { "" },
  cells = function()
    return { { "w", html.element("span", {}) } }
  end,
}

M.tick = {
  heads = { "" },
  cells = function()
    return { { "t", html.element("span", { class = "box" }) } }
  end,
}

return M
