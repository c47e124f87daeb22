-- Exporter: what the bench needs before anything is cut, as one HTML page to print and as CSV.
--
-- Both are made from the same lists (lists/*.lua), so they can't disagree. A list has columns, rows and a datum: the
-- place that its lengths are counted from. Its lengths are laid out in the unit that the design asks for.
local page = require "page"
local rows = require "rows"

local LISTS = { "findings", "cuts", "reaming", "tip_top", "arbors", "guides", "handle", "stations", "masses", "open" }

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
      summary = "Cuts, arbors, bores, guides and masses on one page to print, and as CSV",
      options = {
        paper = { type = "string", default = "A4", summary = "A4, Letter, A3 or Tabloid" },
        glue_gap_mm = {
          type = "number",
          default = 0.05,
          summary = "room for glue all round an arbor (0.05 to 0.13 is what suppliers of adhesive advise)",
        },
        ream_gap_mm = {
          type = "number",
          default = 0.1,
          summary = "room for glue all round a reamed bore (0.1 to 0.2 is common practice, no source)",
        },
      },
      run = export,
    },
  },
}
