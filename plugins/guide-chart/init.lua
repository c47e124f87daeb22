-- Exporter: rod and line under each load, to scale, the line's angle at each ring; where guides were placed, as they
-- are beside what is proposed. A drawing for each load (SVG), and all of them to print with tables (HTML).
local page = require "page"
local picture = require "picture"
local told = require "told"

local MOST_FILES = 60 -- drawings; the page has them all

return {
  api = 1,
  name = "guide-chart",
  version = "1.0.0",
  license = "Apache-2.0",
  summary = "Rod and line under each load, with the line's angle at each guide",
  exporters = {
    {
      name = "guide-chart",
      extension = "html",
      summary = "Rod and line under each load to scale, angles at the guides, now and proposed: HTML, and SVG each",
      wants = { "placement" },
      options = {
        paper = { type = "string", default = "A4", summary = "A4 or Letter, across" },
        units = { type = "string", default = "design", summary = "of lengths along the rod: mm, inch or design" },
        compare = { type = "string", default = "proposed", summary = "beside guides as they are: proposed or none" },
        forces = { type = "boolean", default = false, summary = "the force of the line on each ring beside its angle" },
      },
      run = function(ctx)
        local known = told.collect(ctx)
        local drawings = {}
        for i, load in ipairs(known.loads) do
          drawings[i] = picture.draw(known, load)
          if i <= MOST_FILES then
            ctx:write(("%s-guides-%d.svg"):format(ctx.stem, i), picture.file(drawings[i]))
          end
        end
        ctx:write(ctx.stem .. "-guides.html", page.make(known, drawings))
      end,
    },
  },
}
