-- withy.svg: drawings in millimetres at true scale. Nodes are those of withy.html, so a drawing can stand in a page.
local html = require "withy.html"
local svg = { element = html.element }

-- The attributes that are given, with those that a shape sets itself.
local function with(own, attributes)
  local all = {}
  for key, value in pairs(attributes or {}) do all[key] = value end
  for key, value in pairs(own) do all[key] = value end
  return all
end

local function points_text(points)
  local parts = {}
  for i, point in ipairs(points) do parts[i] = string.format("%.3f,%.3f", point[1], point[2]) end
  return table.concat(parts, " ")
end

function svg.drawing(width, height, ...)
  local own = {
    xmlns = "http://www.w3.org/2000/svg",
    width = string.format("%.3fmm", width),
    height = string.format("%.3fmm", height),
    viewBox = string.format("0 0 %.3f %.3f", width, height),
  }
  return html.element("svg", own, ...)
end

function svg.line(x1, y1, x2, y2, attributes)
  return html.element("line", with({ x1 = x1, y1 = y1, x2 = x2, y2 = y2 }, attributes))
end

function svg.rect(x, y, width, height, attributes)
  return html.element("rect", with({ x = x, y = y, width = width, height = height }, attributes))
end

function svg.circle(x, y, radius, attributes)
  return html.element("circle", with({ cx = x, cy = y, r = radius }, attributes))
end

function svg.polyline(points, attributes)
  return html.element("polyline", with({ points = points_text(points) }, attributes))
end

function svg.polygon(points, attributes)
  return html.element("polygon", with({ points = points_text(points) }, attributes))
end

function svg.path(d, attributes)
  return html.element("path", with({ d = d }, attributes))
end

function svg.text(x, y, s, attributes)
  return html.element("text", with({ x = x, y = y }, attributes), s)
end

function svg.group(attributes, ...)
  return html.element("g", attributes, ...)
end

function svg.render(drawing)
  return '<?xml version="1.0" encoding="UTF-8"?>\n' .. html.render(drawing) .. "\n"
end

return svg
