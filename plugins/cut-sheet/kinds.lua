-- Kinds of column: how a value is shown on paper (`cells`: class and content of each cell, under `heads`) and written
-- as CSV (`figure`: value, unit, inches). A value that is nil is 'not known' and never gets here.
--
--   length     mm and inches; `step` in mm and `inch`, the denominator: 1 and 16 for cuts, 2 and 8 for guides
--   diameter   mm with two decimals
--   tube       sixty-fourths of an inch and mm
--   mass       g with two decimals
--   text, tick
local html = require "withy.html"
local text = require "withy.text"
local units = require "withy.units"

local M = {}

local function bare(inches)
  return (inches:gsub('"$', ""))
end

-- A number with two decimals and its unit.
local function decimals(unit)
  return {
    heads = { unit },
    cells = function(value)
      return { { "n", text.fixed(value, 2) } }
    end,
    figure = function(value)
      return { text.fixed(value, 2), unit, "" }
    end,
  }
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

M.diameter = decimals("mm")
M.mass = decimals("g")

M.length = {
  heads = { "mm", "in" },
  cells = function(value, column)
    return {
      { "n", text.fixed(units.round(value, column.step), 0) },
      inches_cell(value, column.inch),
    }
  end,
  figure = function(value, column)
    return { text.fixed(value, 2), "mm", units.inches(value, column.inch) }
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

M.tick = {
  heads = { "" },
  cells = function()
    return { { "t", html.element("span", { class = "box" }) } }
  end,
}

return M
