-- Loads, states and shapes in words.
local text = require "withy.text"

local M = {}

local GRAVITY = 9.80665 -- m/s2, standard
local LEVEL = 0.5 -- degrees; what would be printed as 0

function M.direction(deg)
  if math.abs(deg) < LEVEL then
    return "level"
  end
  return ("%s deg %s level"):format(text.fixed(math.abs(deg), 0), deg > 0 and "above" or "below")
end

function M.tip(deg)
  if deg < -90 - LEVEL then
    return ("back, %s deg past straight down"):format(text.fixed(-90 - deg, 0))
  end
  return M.direction(deg)
end

-- "450 g", or "4.41 N" where it does not pull as a weight.
function M.load(bent)
  if not bent.load_n then
    return "load not known"
  end
  if math.abs((bent.load_angle_deg or 0) + 90) < LEVEL then
    return text.fixed(bent.load_n / GRAVITY * 1000, 0) .. " g"
  end
  return text.fixed(bent.load_n, 2) .. " N"
end

-- Why the shape is not that of the whole load; nil where it is.
function M.folds(bent)
  if bent.state == "bent" then
    return nil
  elseif not bent.reached or #bent.at_mm == 0 then
    return "How it bends under this load cannot be told."
  end
  local part = text.fixed(math.floor(100 * bent.reached), 0) .. " % of this load"
  if bent.state == "several" then
    return "FOLDS: beyond " .. part .. " more than one shape holds it. Drawn at that part."
  elseif bent.state == "none" then
    return "FOLDS: beyond " .. part .. " no shape near by holds it. Drawn at that part."
  end
  return "How it bends under this load cannot be told. Drawn at " .. part .. "."
end

function M.strain(bent)
  return text.uncertain(bent.peak_strain_millistrain, bent.peak_strain_plus_minus_millistrain, 2)
end

-- Where the strain peaks, from the end that is bent; nil where the rod stays straight.
function M.hardest(bent)
  if not bent.peak_at_mm or (bent.peak_strain_millistrain or 0) < 5e-4 then
    return nil
  end
  return bent.at_mm[#bent.at_mm] - bent.peak_at_mm
end

M.CAUTION = "A blank lifted at a high angle breaks without warning: stay within its rating, keep the angle of rod and "
  .. "line low, and wear eye protection when load testing. None of this says what the rod may carry."

return M
