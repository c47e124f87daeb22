-- withy.lengths: lengths along the rod in the units that are asked for.
local text = require "withy.text"
local units = require "withy.units"

local lengths = {}

local MM = { unit = "mm", mm = 1 }
local INCH = { unit = "in", mm = 25.4 }

function MM.say(mm, plus_minus)
  return text.uncertain(mm, plus_minus, plus_minus and plus_minus < 1 and 1 or 0) .. " mm"
end

function INCH.say(mm, plus_minus)
  return plus_minus and text.uncertain(mm / 25.4, plus_minus / 25.4, 1) .. " in" or units.inches(mm, 16)
end

function lengths.asked(ctx)
  local asked = ctx.options.units
  if asked ~= "design" and asked ~= "mm" and asked ~= "inch" then
    ctx:refuse(('units is "mm", "inch" or "design", not "%s"'):format(asked))
  end
  return (asked == "inch" or asked == "design" and ctx:get("identity.units") == "INCH") and INCH or MM
end

return lengths
