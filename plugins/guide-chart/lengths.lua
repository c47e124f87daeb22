-- Lengths along the rod in the units that are asked for.
local text = require "withy.text"
local units = require "withy.units"

local M = {}

local MM = { unit = "mm", mm = 1, steps = { 10, 20, 50, 100, 200, 250, 500, 1000 } }
local INCH = { unit = "in", mm = 25.4, steps = { 0.5, 1, 2, 5, 10, 12, 20, 24, 36 } }

function MM.say(mm, plus_minus)
  return text.fixed(mm, 0) .. (plus_minus and " ± " .. text.fixed(plus_minus, plus_minus < 1 and 1 or 0) or "") .. " mm"
end

function INCH.say(mm, plus_minus)
  return plus_minus and ("%s ± %s in"):format(text.fixed(mm / 25.4, 1), text.fixed(plus_minus / 25.4, 1))
    or units.inches(mm, 16)
end

-- { unit =, mm = of one unit, steps in that unit, say(mm, plus_minus) }
function M.words(ctx)
  local asked = ctx.options.units
  if asked == "design" then
    return ctx:get("identity.units") == "INCH" and INCH or MM
  elseif asked ~= "mm" and asked ~= "inch" then
    ctx:refuse(('units is "mm", "inch" or "design", not "%s"'):format(asked))
  end
  return asked == "inch" and INCH or MM
end

-- The largest of `choices` (ascending) that is not above `most`, else the first.
function M.largest(choices, most)
  local found = choices[1]
  for _, choice in ipairs(choices) do
    found = choice <= most and choice or found
  end
  return found
end

-- The smallest of `choices` (ascending) that is not below `least`, else the last.
function M.smallest(choices, least)
  for _, choice in ipairs(choices) do
    if choice >= least then
      return choice
    end
  end
  return choices[#choices]
end

return M
