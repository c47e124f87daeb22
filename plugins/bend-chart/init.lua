-- Exporter: the rod bent under each load case, to scale, its stiffness and its strain, as a drawing (SVG) and as a page
-- to print with the figures in a table (HTML).
local page = require "page"
local picture = require "picture"
local told = require "told"

return {
  api = 1,
  name = "bend-chart",
  version = "1.0.0",
  license = "Apache-2.0",
  summary = "The rod bent under each load case, with stiffness and strain",
  exporters = {
    {
      name = "bend-chart",
      extension = "svg",
      summary = "The rod under each load case to scale, stiffness and strain along it: SVG, and HTML with a table",
      options = {
        paper = { type = "string", default = "A4", summary = "A4 or Letter, across" },
        units = { type = "string", default = "design", summary = "of lengths along the rod: mm, inch or design" },
      },
      run = function(ctx)
        local known = told.collect(ctx)
        local drawing = picture.draw(known)
        ctx:write(ctx.stem .. "-bend.svg", picture.file(drawing))
        ctx:write(ctx.stem .. "-bend.html", page.make(known, drawing))
      end,
    },
  },
}
