-- Lengths in the units that are asked for, with what steps a scale takes in them.
local lengths = require "withy.lengths"

local M = {}

local BARS = { mm = { 100, 200, 500, 1000 }, ["in"] = { 4, 8, 12, 24, 36 } }
local STEPS = { mm = { 100, 200, 250, 500, 1000 }, ["in"] = { 5, 10, 12, 20, 24, 36 } }

-- { unit =, mm = of one unit, say(mm, plus_minus), bars and steps in that unit }
function M.words(ctx)
  local asked = lengths.asked(ctx)
  return { unit = asked.unit, mm = asked.mm, say = asked.say, bars = BARS[asked.unit],
    steps = STEPS[asked.unit] }
end

return M
