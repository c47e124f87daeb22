-- What comes off each section: planned, done, still to go.
local things = require "things"

-- Ids of log entries that a later one corrects: what they said no longer counts.
local function corrected(design)
  local ids = {}
  for _, entry in ipairs(design.log) do
    if entry.correction and entry.correction.entry then
      ids[entry.correction.entry] = true
    end
  end
  return ids
end

-- Amounts in mm by section and end: { blank = { BUTT = 171.45 } }.
local function sums(cuts)
  local result = {}
  for _, cut in ipairs(cuts) do
    if cut.section and cut.amount then
      local ends = result[cut.section] or {}
      local at_end = cut.at_end or "BUTT"
      ends[at_end] = (ends[at_end] or 0) + cut.amount.mm
      result[cut.section] = ends
    end
  end
  return result
end

local function done_cuts(design)
  local gone, cuts = corrected(design), {}
  for _, entry in ipairs(design.log) do
    if entry.cut and not gone[entry.id or ""] then
      cuts[#cuts + 1] = entry.cut
    end
  end
  return cuts
end

local function last(list)
  return list[#list]
end

return function(ctx)
  local design = ctx.design
  local planned = sums(design.blank and design.blank.cuts or {})
  local done = sums(done_cuts(design))
  local rows, to_go = {}, 0
  for i, section in ipairs(ctx:get("sections.sections") or {}) do
    for _, at_end in ipairs { "BUTT", "TIP" } do
      local plan = planned[section.id] and planned[section.id][at_end]
      local did = done[section.id] and done[section.id][at_end]
      if plan or did then
        local rest = math.max(0, (plan or 0) - (did or 0))
        to_go = to_go + rest
        rows[#rows + 1] = {
          item = things.name(section, "section", i),
          at_end = at_end:lower(), planned = plan or 0, done = did or 0, rest = rest,
          left = section.length_mm, face = at_end == "BUTT" and section.outer_mm[1] or last(section.outer_mm),
        }
      end
    end
  end
  local staged = #(ctx:get("fit.cut_plan.stages") or {}) > 0
  local columns = {
    { key = "tick", title = "", kind = "tick" },
    { key = "item", title = "section", kind = "text" },
    { key = "at_end", title = "end", kind = "text" },
    { key = "planned", title = "comes off", kind = "length", step = 1, inch = 16, strong = not staged },
    { key = "done", title = "done", kind = "length", step = 1, inch = 16 },
    { key = "rest", title = "still to cut", kind = "length", step = 1, inch = 16, strong = not staged },
    { key = "left", title = "is left", kind = "length", step = 1, inch = 16, datum = "end to end" },
    { key = "face", title = "blank at the new face", kind = "diameter" },
  }
  if staged and #rows == 0 then
    return {}
  elseif staged then
    table.remove(columns, 1)
  end
  return {
    {
      title = staged and "Cuts in all, as planned" or "Cuts",
      datum = "the face that is being cut; the saw's kerf is within the amount",
      empty = "Nothing is planned to come off the blank.",
      limit_mm = to_go > 0 and not staged and things.cut_limits(ctx) or nil,
      rows = rows,
      columns = columns,
    },
  }
end
