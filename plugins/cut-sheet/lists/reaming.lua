-- Bores that have to be opened: a table for each, both ends and every inch between.
local things = require "things"

local function row_of(row, number)
  return {
    item = ("%d"):format(number), at = row.at_mm, blank = row.blank_mm, now = row.bore_mm,
    ream = not (row.bore_mm and row.bore_mm >= row.ream_mm) and row.ream_mm,
  }
end

local function list_of(ctx, ream)
  local rows = {}
  for i, row in ipairs(ream.rows) do
    rows[i] = row_of(row, i)
  end
  return {
    title = "Ream " .. (ream.part or "the bore"),
    narrow = true,
    datum = "the part's own butt end",
    empty = "How far it has to be opened is not known.",
    caution = things.before_cuts(ctx, "How wide it is follows"),
    note = "Room for glue is within the diameter. Ream a little, try, ream again.",
    rows = rows,
    columns = {
      { key = "tick", title = "", kind = "tick" },
      { key = "at", title = "at", kind = "length", step = 1, inch = 16 },
      { key = "blank", title = "blank", kind = "diameter" },
      { key = "now", title = "bore now", kind = "diameter", optional = true },
      { key = "ream", title = "ream to", kind = "ream", strong = true },
    },
  }
end

return function(ctx)
  local lists = {}
  for i, ream in ipairs(ctx:get("fit.reaming") or {}) do
    lists[i] = list_of(ctx, ream)
  end
  if #lists == 0 then
    lists[1] = {
      title = "Bores to ream", narrow = true, datum = "", empty = "No bore has to be opened.", rows = {}, columns = {},
    }
  end
  return lists
end
