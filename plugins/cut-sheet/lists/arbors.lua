-- Arbors: where they go and how thick to build them.
local text = require "withy.text"
local things = require "things"

local function build(place, kind)
  if place.turns then
    return ("%s turn%s of tape"):format(text.fixed(place.turns, 0), place.turns == 1 and "" or "s")
  end
  return kind or "arbor"
end

local function row(part_name, arbor, place, start)
  return {
    item = place.id or part_name,
    part = part_name,
    how = build(place, arbor and arbor.kind) .. (place.proposed and ", proposed" or ""),
    why = place.place ~= "given" and place.place or nil,
    start = place.start_mm,
    within = arbor and arbor.at and arbor.at.mm or place.start_mm and start and place.start_mm - start,
    length = place.length_mm,
    blank = place.blank_mm,
    bore = place.bore_mm,
    build = place.outer_mm,
    tape = place.tape_length_mm,
    gap = place.gap_mm,
  }
end

return function(ctx)
  local rows = {}
  for _, fitted in ipairs(things.parts(ctx)) do
    for i, place in ipairs(fitted.place.arbors) do
      local arbor = not place.proposed and fitted.part.arbors[i] or nil
      rows[#rows + 1] = row(fitted.name, arbor, place, fitted.place.start_mm)
    end
  end
  return {
    {
      title = "Arbors",
      datum = "the butt end of the finished rod",
      empty = "No arbors in this design.",
      caution = things.before_cuts(ctx, "How thick they are follows"),
      note = "The gap is what stays free all round for glue. Leave channels along each arbor for it.",
      rows = rows,
      columns = {
        { key = "tick", title = "", kind = "tick" },
        { key = "item", title = "arbor", kind = "text" },
        { key = "part", title = "in", kind = "text" },
        { key = "why", title = "place", kind = "text", optional = true },
        { key = "start", title = "begins at", kind = "length", step = 1, inch = 16, strong = true },
        { key = "within", title = "in its part", kind = "length", step = 1, inch = 16, datum = "the part's butt face" },
        { key = "length", title = "long", kind = "length", step = 1, inch = 16, datum = "end to end" },
        { key = "blank", title = "blank", kind = "diameter" },
        { key = "bore", title = "bore", kind = "diameter" },
        { key = "how", title = "build", kind = "text" },
        { key = "build", title = "to", kind = "diameter", strong = true },
        { key = "tape", title = "tape", kind = "millimetres", optional = true },
        { key = "gap", title = "gap", kind = "diameter", optional = true },
      },
    },
  }
end
