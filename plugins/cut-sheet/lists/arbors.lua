-- Arbors: where they go and how thick to build them.
local text = require "withy.text"
local things = require "things"

-- Whole turns of tape that leave `gap` all round, and the diameter they make. The 1e-9 keeps a turn that fits exactly.
local function turns_of(blank, bore, tape, gap)
  local turns = math.max(0, math.floor((bore - blank - 2 * gap) / (2 * tape) + 1e-9))
  return turns, blank + 2 * turns * tape
end

local function build(arbor, place, gap)
  if arbor.outer then
    return nil, arbor.outer.mm
  elseif not place.blank_mm or not place.bore_mm then
    return nil, nil
  elseif arbor.tape_thickness and arbor.tape_thickness.mm > 0 then
    return turns_of(place.blank_mm, place.bore_mm, arbor.tape_thickness.mm, gap)
  end
  return nil, place.bore_mm - 2 * gap
end

local function row(part_name, arbor, place, gap)
  local turns, diameter = build(arbor, place, gap)
  return {
    item = arbor.id or part_name,
    part = part_name,
    how = turns and ("%s turn%s of tape"):format(text.fixed(turns, 0), turns == 1 and "" or "s") or arbor.kind,
    start = place.start_mm,
    within = arbor.at and arbor.at.mm,
    length = place.length_mm,
    blank = place.blank_mm,
    bore = place.bore_mm,
    build = diameter,
  }
end

return function(ctx)
  local rows = {}
  for _, fitted in ipairs(things.parts(ctx)) do
    for i, place in ipairs(fitted.place.arbors) do
      rows[#rows + 1] = row(fitted.name, fitted.part.arbors[i], place, ctx.options.glue_gap_mm)
    end
  end
  return {
    {
      title = "Arbors",
      datum = "the butt end of the finished rod",
      empty = "No arbors in this design.",
      note = ("Built so that %.2f mm stays free all round for glue. Leave channels for it."):format(
        ctx.options.glue_gap_mm),
      rows = rows,
      columns = {
        { key = "tick", title = "", kind = "tick" },
        { key = "item", title = "arbor", kind = "text" },
        { key = "part", title = "in", kind = "text" },
        { key = "start", title = "begins at", kind = "length", step = 1, inch = 16, strong = true },
        { key = "within", title = "in its part", kind = "length", step = 1, inch = 16, datum = "the part's butt face" },
        { key = "length", title = "long", kind = "length", step = 1, inch = 16, datum = "end to end" },
        { key = "blank", title = "blank", kind = "diameter" },
        { key = "bore", title = "bore", kind = "diameter" },
        { key = "how", title = "build", kind = "text" },
        { key = "build", title = "to", kind = "diameter", strong = true },
      },
    },
  }
end
