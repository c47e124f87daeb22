-- A rule to lay on the picture: mm above, inches below.
local svg = require "withy.svg"

local THIN = { stroke = "#000", ["stroke-width"] = 0.25, fill = "none" }

-- Nodes from (0, 0) at 1 : `scale`, about `most` mm long on paper at most, and the length.
return function(scale, most)
  local mm = most * scale >= 500 and 500 or most * scale >= 200 and 200 or 100
  local inches = math.max(2, math.floor(mm / 25.4 / 2) * 2)
  local length = math.max(mm, inches * 25.4) / scale
  local nodes = { svg.line(0, 0, length, 0, THIN) }
  for _, share in ipairs { 0, 0.5, 1 } do
    local above, below = share * mm / scale, share * inches * 25.4 / scale
    nodes[#nodes + 1] = svg.line(above, -1.4, above, 0, THIN)
    nodes[#nodes + 1] = svg.line(below, 0, below, 1.4, THIN)
  end
  nodes[#nodes + 1] = svg.text(length + 2, -0.4, ("%d mm"):format(mm))
  nodes[#nodes + 1] = svg.text(length + 2, 2.8, ("%d in of the rod, both ways; 1 : %d"):format(inches, scale))
  return nodes, length
end
