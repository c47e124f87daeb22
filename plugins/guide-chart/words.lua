-- Loads, states and angles in words.
local text = require "withy.text"

local M = {}

local GRAVITY = 9.80665 -- m/s2, standard
local LEVEL = 0.5 -- degrees; what would be printed as 0

function M.direction(deg)
  if math.abs(deg) < LEVEL then
    return "level"
  elseif math.abs(deg + 90) < LEVEL then
    return "straight down"
  elseif deg < -90 then
    return ("back, %s deg past straight down"):format(text.fixed(-90 - deg, 0))
  end
  return ("%s deg %s level"):format(text.fixed(math.abs(deg), 0), deg > 0 and "above" or "below")
end

-- "450 g" of a weight that hangs, else "4.41 N"; of a load that folds, the part that is drawn.
function M.pull(strung)
  if not strung.tension_n then
    return "pull not known"
  end
  local part = strung.state ~= "bent" and strung.reached
    and ("%s %% of "):format(text.fixed(math.floor(100 * strung.reached), 0)) or ""
  if math.abs((strung.line_angle_deg or -90) + 90) < LEVEL then
    return part .. text.fixed(strung.tension_n / GRAVITY * 1000, 0) .. " g"
  end
  return part .. text.fixed(strung.tension_n, 2) .. " N"
end

-- "450 g = 4.41 N", or the pull alone where it is no weight.
function M.whole_pull(strung)
  local newtons = text.fixed(strung.tension_n, 2) .. " N"
  if math.abs((strung.line_angle_deg or -90) + 90) < LEVEL then
    return ("%s g = %s"):format(text.fixed(strung.tension_n / GRAVITY * 1000, 0), newtons)
  end
  return newtons
end

-- Why the shape is not that of the whole load; nil where it is.
function M.folds(strung)
  if strung.state == "bent" then
    return nil
  elseif not strung.reached or #strung.at_mm == 0 then
    return "How rod and line stand under this load cannot be told."
  end
  local part = text.fixed(math.floor(100 * strung.reached), 0) .. " % of this load"
  if strung.state == "several" then
    return "FOLDS: beyond " .. part .. " more than one shape holds it. Drawn at that part."
  elseif strung.state == "none" then
    return "FOLDS: beyond " .. part .. " no shape near by holds it. Drawn at that part."
  end
  return "How rod and line stand under this load cannot be told. Drawn at " .. part .. "."
end

M.CAUTION = "A blank lifted at a high angle breaks without warning: stay within its rating, keep the angle of rod and "
  .. "line low, and wear eye protection when load testing. None of this says what the rod may carry."

return M
