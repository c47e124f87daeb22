-- Exporter: what the bench needs before anything is cut, as one HTML page to print and as CSV.
--
-- Both are made from the same lists (lists/*.lua), so they can't disagree. A list has columns, rows and a datum: the
-- place that its lengths are counted from. Its lengths are laid out in the unit that the design asks for.
local page = require "page"
local rows = require "rows"

local LISTS = {
  "findings", "closed", "dry_fits", "stages", "cuts", "ways_out", "reaming", "tip_top", "winding_checks", "arbors",
  "joints", "counterweights", "guides", "handle", "stations", "masses", "open",
}

local function all_lists(ctx)
  local result = {}
  local units = ctx:get("identity.units")
  for _, name in ipairs(LISTS) do
    for _, list in ipairs(require("lists." .. name)(ctx)) do
      for _, column in ipairs(list.columns) do
        column.by_inch = units == "INCH"
      end
      result[#result + 1] = list
    end
  end
  return result
end

local function export(ctx)
  if not (ctx.options.spare_lines >= 0 and ctx.options.spare_lines <= 10) then
    ctx:refuse(("option spare_lines: from 0 to 10, not %g"):format(ctx.options.spare_lines))
  end
  local lists = all_lists(ctx)
  ctx:write(ctx.stem .. "-cut-sheet.html", page.make(ctx, lists))
  ctx:write(ctx.stem .. "-cut-sheet.csv", rows.make(lists))
end

return {
  api = 1,
  name = "cut-sheet",
  version = "1.0.0",
  license = "Apache-2.0",
  summary = "The sheet for the bench",
  exporters = {
    {
      name = "cut-sheet",
      extension = "html",
      summary = "Cuts in stages, arbors, bores, mixes, guides and masses on paper to print, and as CSV",
      options = {
        paper = { type = "string", default = "A4", summary = "A4, Letter, A3 or Tabloid" },
        spare_lines = { type = "number", default = 1, summary = "empty lines after the cuts in stages, 0 to 10" },
      },
      run = export,
    },
  },
}
