-- Exporter: the bench protocol of a static test, a page for each load that pulls through the line (HTML to print): what
-- to hang on the line, in which stages, where to look and to measure, what is computed, and boxes for what is found.
local page = require "page"
local told = require "told"

return {
  api = 1,
  name = "static-test",
  version = "1.0.0",
  license = "Apache-2.0",
  summary = "The protocol of a static test, to fill in at the bench",
  exporters = {
    {
      name = "static-test",
      extension = "html",
      summary = "What to hang on the line, where to look and measure, what is computed, boxes to write in: HTML",
      options = {
        paper = { type = "string", default = "A4", summary = "A4 or Letter" },
        units = { type = "string", default = "design", summary = "of lengths along the rod: mm, inch or design" },
        load = { type = "string", default = "", summary = "id of the one load to test; without it a page for each" },
      },
      run = function(ctx)
        ctx:write(ctx.stem .. "-static-test.html", page.make(told.collect(ctx)))
      end,
    },
  },
}
