-- Words beside points of a drawing, moved down until none lies on another, white where they lie on a line.
local svg = require "withy.svg"

local M = {}

M.SIZE = 3 -- mm, height of the letters
local WIDE = 0.56 -- width of a letter against its height, at most

function M.width(s, size)
  return utf8.len(s) * (size or M.SIZE) * WIDE
end

local function meets(a, b)
  return a.x < b.x + b.w and b.x < a.x + a.w and a.y < b.y + b.h and b.y < a.y + a.h
end

-- A layer of labels: layer(x, y, words, attributes) gives a node whose letters begin at x and stand on y. Words that
-- would go beyond `right` end there.
function M.layer(right)
  local taken = {}
  return function(x, y, words, attributes)
    local w = M.width(words)
    local box = { x = math.min(x, right - w), y = y - M.SIZE, w = w, h = M.SIZE * 1.15 }
    local clear
    repeat
      clear = true
      for _, other in ipairs(taken) do
        if meets(box, other) then
          box.y, clear = other.y + other.h + 0.01, false
        end
      end
    until clear
    taken[#taken + 1] = box
    local all = { stroke = "#fff", ["stroke-width"] = 0.9, ["stroke-linejoin"] = "round", ["paint-order"] = "stroke" }
    for key, value in pairs(attributes or {}) do
      all[key] = value
    end
    return svg.text(box.x, box.y + M.SIZE, words, all)
  end
end

return M
