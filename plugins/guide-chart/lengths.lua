-- Lengths in the units that are asked for, with what steps a scale takes in them.
local lengths = require "withy.lengths"

local M = {}

local STEPS = { mm = { 10, 20, 50, 100, 200, 250, 500, 1000 }, ["in"] = { 0.5, 1, 2, 5, 10, 12, 20, 24, 36 } }

-- { unit =, mm = of one unit, say(mm, plus_minus), steps in that unit }
function M.words(ctx)
  local asked = lengths.asked(ctx)
  return { unit = asked.unit, mm = asked.mm, say = asked.say, steps = STEPS[asked.unit] }
end

return M
