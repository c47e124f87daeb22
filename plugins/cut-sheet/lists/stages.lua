-- The cuts to come, with a dry fit after each. Every cut is rounded down to what can be marked at the bench, so that no
-- sum of them passes what is to come off; what is left and what to expect are those of the rounded cut.
local things = require "things"

local HAIR = 1e-6 -- of a step: rounding of what is a whole number of steps
local WARRANTY = "Before the first cut: cutting or sanding usually ends the blank's warranty. Read its terms, look the "
  .. "blank over for faults, try the parts on."

local function steps_in(mm, step)
  return math.floor(mm / step + HAIR)
end

-- Length of the rod at a cut, or nil.
local function overall_at(plan, cut)
  local overall
  for _, point in ipairs(plan.lengths) do
    if point.cut_mm > cut + HAIR then
      break
    end
    overall = point.overall_mm - point.shorter_per_mm * (cut - point.cut_mm)
  end
  return overall
end

local function longer_by(plan, cut, exact)
  local at, there = overall_at(plan, cut), overall_at(plan, exact)
  return at and there and at - there or (exact - cut) * (plan.now and plan.now.shorter_per_mm or 1)
end

local function row_of(plan, stage, number, take, total)
  local less, longer = stage.total_mm - total, longer_by(plan, total, stage.total_mm)
  local function moved(mm, by)
    return mm and mm + by
  end
  return {
    item = ("%d"):format(number), take = take, left = moved(stage.leave_mm, less),
    mark = moved(stage.depth_mark_mm, less - longer),
    from = moved(stage.expect_from_mm, longer), to = moved(stage.expect_to_mm, longer),
    rod = moved(stage.overall_mm, longer),
  }
end

-- Cuts in whole steps: none larger than the largest, the last one no more than the last may be. What is then left over
-- waits for the next dry fit.
local function cuts_of(plan, step, largest, last)
  local cuts, taken, done = {}, 0, plan.cut_done_mm or 0
  last = math.max(1, steps_in(last, step))
  for i, stage in ipairs(plan.stages) do
    local take = math.min(steps_in(stage.total_mm - done, step) - taken, steps_in(largest, step))
    if i == #plan.stages then
      take = math.min(take, last)
    end
    if take >= 1 then
      taken = taken + take
      cuts[#cuts + 1] = { stage = stage, take = take }
    end
  end
  local final = cuts[#cuts]
  if final and final.take > last then
    final.take = final.take - last
    cuts[#cuts + 1] = { stage = final.stage, take = last }
  end
  return cuts
end

-- The length as it is cut now, to be read before the first cut; nil where it has been, or nothing is tried on.
local function row_before(plan)
  local last, first = plan.dry_fits[#plan.dry_fits], plan.stages[1]
  local read = last and last.read_mm and math.abs((last.cut_mm or 0) - (plan.cut_done_mm or 0)) < HAIR
  if read or (plan.host or "") == "" then
    return nil
  end
  return { item = "none yet", left = first.leave_mm and first.leave_mm + first.take_mm }
end

local function rows_of(plan, step, largest, last)
  local cuts, done, taken = cuts_of(plan, step, largest, last), plan.cut_done_mm or 0, 0
  local rows = { #cuts > 0 and row_before(plan) or nil }
  for i, cut in ipairs(cuts) do
    taken = taken + cut.take
    rows[#rows + 1] = row_of(plan, cut.stage, i, cut.take * step, done + taken * step)
  end
  return rows
end

local NONE = {
  closed = "None: the blank is glued in.",
  jump = "No cut gives the length ordered: it jumps past.",
  ["too long a target"] = "No cut gives the length ordered: the rod is shorter as it is.",
  ["too short a target"] = "No cut gives the length ordered: more would have to come off than can.",
  reached = "None: what is to come off is off.",
}

local function length(column)
  column.kind, column.step, column.inch = "length", 1, 16
  return column
end

return function(ctx)
  local plan = ctx:get("fit.cut_plan")
  if not plan then
    return {}
  end
  local step = ctx:get("identity.units") == "INCH" and 25.4 / 16 or 1
  local rows = rows_of(plan, step, things.cut_limits(ctx))
  local open = plan.measure and ("Cannot be told yet: %s."):format(plan.measure)
  return {
    {
      title = "Cuts in stages",
      datum = "the handle's own butt end (no cap) to the blank's tip end (no tip-top): that is what a dry fit reads",
      empty = NONE[plan.outcome or ""] or open or "No length is ordered.",
      caution = (plan.cut_done_mm or 0) == 0 and WARRANTY or nil,
      note = "The mark is the new edge, the saw goes on the waste side; its kerf is within what is taken. After each "
        .. "dry fit, plan anew: what was read decides the next cut." .. (open and " " .. open or ""),
      spare_rows = #rows > 0 and ctx.options.spare_lines or 0,
      write = true,
      rows = rows,
      columns = {
        { key = "tick", title = "", kind = "tick" },
        { key = "item", title = "cut", kind = "text" },
        length { key = "take", title = "take", toward = "down", strong = true, optional = true,
          datum = "the butt face" },
        length { key = "left", title = "leave", datum = "end to end" },
        length { key = "mark", title = "depth mark", optional = true, datum = "the new butt face" },
        length { key = "from", title = "dry fit: between", toward = "down", optional = true },
        length { key = "to", title = "and", figure = "dry fit: and", toward = "up", optional = true },
        { key = "read", title = "read", kind = "write" },
      },
    },
  }
end
