-- An importer: makes a design from another file. The API is in plugins/api/manual.md of withy.
local text = require "withy.text"
local units = require "withy.units"

return {
  api = 1,
  name = "PLUGIN-NAME",
  version = "0.1.0",
  license = "Apache-2.0",
  summary = "Our own files",
  importers = {
    {
      name = "guide-list",
      extensions = { "csv" },
      summary = "Guides by their distance from the tip-top: a name and a length in each line",
      run = function(ctx)
        local guides = {}
        for number, line in ipairs(text.lines(ctx.input)) do
          local cells, why = text.csv_cells(line)
          if not cells then ctx:refuse(why, { line = number }) end
          local place, why_not = units.length(cells[2] or "")
          if not place then ctx:refuse(why_not, { line = number }) end
          guides[#guides + 1] = { id = text.trim(cells[1]), from_tip = place }
        end
        return { guides = guides }
      end,
    },
  },
}
