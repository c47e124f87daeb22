-- Loads, lengths and figures in words.
local text = require "withy.text"
local units = require "withy.units"

local M = {}

local GRAVITY = 9.80665 -- m/s2, standard
local LEVEL = 0.5 -- degrees; what would be printed as 0
local OUNCE = 28.349523125 -- g

function M.direction(deg)
  if math.abs(deg) < LEVEL then
    return "level"
  elseif math.abs(deg + 90) < LEVEL then
    return "straight down"
  elseif deg < -90 then
    return ("back, %s° past straight down"):format(text.fixed(-90 - deg, 0))
  end
  return ("%s° %s level"):format(text.fixed(math.abs(deg), 0), deg > 0 and "above" or "below")
end

-- Whether the line beyond the tip-top hangs with a weight at its end.
function M.hangs(strung)
  return math.abs((strung.line_angle_deg or -90) + 90) < LEVEL
end

-- A share of the pull: "450 g (15.9 oz)" of a weight, "14.00 N" of a pull in another direction.
function M.pull(strung, share, by_inch)
  if not strung.tension_n then
    return "not known"
  end
  if not M.hangs(strung) then
    return text.fixed(strung.tension_n * share, 2) .. " N"
  end
  local grams = strung.tension_n * share / GRAVITY * 1000
  local said = text.fixed(grams, 0) .. " g"
  return by_inch and ("%s (%s oz)"):format(said, text.fixed(grams / OUNCE, 1)) or said
end

-- A length with its uncertainty, in the units that are asked for.
function M.length(mm, plus_minus, by_inch)
  if not mm then
    return "not known"
  elseif not by_inch then
    local decimals = plus_minus and plus_minus < 1 and 1 or 0
    return M.uncertain(mm, plus_minus, decimals, " mm")
  elseif plus_minus then
    return ("%s ± %s in"):format(text.fixed(mm / 25.4, 1), text.fixed(plus_minus / 25.4, 1))
  end
  return units.inches(mm, 16)
end

function M.uncertain(value, plus_minus, decimals, unit)
  if not value then
    return "not known"
  end
  return text.uncertain(value, plus_minus, decimals) .. (unit or "")
end

-- An id of at most `most` letters: what is left out is its middle, since ids often differ at their end.
function M.short_id(id, most)
  local count = utf8.len(id)
  if not count or count <= most then
    return id
  end
  local head = (most - 1) // 2
  return id:sub(1, utf8.offset(id, head + 1) - 1) .. "…" .. id:sub(utf8.offset(id, -(most - 1 - head)))
end

return M
