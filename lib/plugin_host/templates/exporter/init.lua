-- An exporter: writes files from a design. The API is in plugins/api/manual.md of withy.
local text = require "withy.text"

return {
  api = 1,
  name = "PLUGIN-NAME",
  version = "0.1.0",
  license = "Apache-2.0",
  summary = "Our own files",
  exporters = {
    {
      name = "guide-list",
      extension = "csv",
      summary = "Guides by their distance from the tip-top",
      options = {
        separator = { type = "string", default = ",", summary = "What stands between two cells" },
      },
      run = function(ctx)
        local rows = { text.csv_row({ "guide", "from_tip_mm" }, ctx.options.separator) }
        for _, guide in ipairs(ctx.design.guides) do
          -- A guide whose place is not known yet has an empty cell, never a zero.
          local place = guide.from_tip and guide.from_tip.mm
          local cells = { guide.id or "", place and text.fixed(place, 1) or "" }
          rows[#rows + 1] = text.csv_row(cells, ctx.options.separator)
        end
        ctx:write(ctx.stem .. ".csv", table.concat(rows, "\n") .. "\n")
      end,
    },
  },
}
