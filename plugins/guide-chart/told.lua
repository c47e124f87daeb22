-- What the report tells of line and rod, and what is asked of the chart; a refusal where it tells nothing.
local lengths = require "lengths"
local list = require "withy.table"

local M = {}

local PAPERS = { a4 = "A4", letter = "Letter" }
local SHORT = 5 -- letters of a guide's id that have room in a drawing; longer ones are numbered from the butt

local function measure_of(ctx)
  for _, unknown in ipairs(ctx.report.unknown) do
    if unknown.figure and unknown.figure:find("^line_load") then
      return unknown.measure
    end
  end
  return nil
end

-- How a strung rod is drawn: nil where it has no shape.
local function shape(strung)
  if strung and #strung.at_mm > 1 and #strung.forward_mm == #strung.at_mm and #strung.up_mm == #strung.at_mm then
    return strung
  end
  return nil
end

local function by_id(cases, id)
  return id and list.find(cases, function(case) return case.id == id end)
end

-- The design's loads, then those to place the guides by that are not among them, each as the guides are and as
-- proposed; `added` = the design does not name it.
local function loads_of(cases, placed)
  local result = {}
  local of_now, of_proposed = placed and placed.now and placed.now.cases or {},
    placed and placed.proposed and placed.proposed.cases or {}
  local function add(as_is, proposed, added)
    local said = proposed or as_is
    result[#result + 1] = { number = ("%d"):format(#result + 1), id = said.id or ("load %d"):format(#result + 1),
      said = said, now = shape(as_is), proposed = shape(proposed), added = added }
  end
  for _, case in ipairs(cases) do
    add(case, by_id(of_proposed, case.id), false)
  end
  for _, of_design in ipairs { true, false } do
    for _, case in ipairs(of_proposed) do
      local load = by_id(placed.loads, case.id)
      if not by_id(cases, case.id) and (load ~= nil and load.at ~= nil) == of_design then
        add(by_id(of_now, case.id), case, not of_design)
      end
    end
  end
  return result
end

-- Names that have room beside a ring: the ids where all are short, else numbers from the butt; the tip-top by its kind.
local function namer(loads)
  local short = true
  for _, load in ipairs(loads) do
    for _, ring in ipairs(load.said.rings) do
      local last = ring == load.said.rings[#load.said.rings]
      short = short and (last or ring.id ~= nil and (utf8.len(ring.id) or SHORT + 1) <= SHORT)
    end
  end
  return function(rings, i)
    if i == #rings then
      return "tip-top"
    end
    return short and rings[i].id or ("no. %d"):format(i)
  end, short
end

-- Half the blank's diameter at a place from the butt end; nil where that is not known.
local function radius_of(rod)
  local rows = rod and rod.blank or {}
  local at = 2
  return function(place)
    if #rows < 2 then
      return nil
    end
    while at > 2 and rows[at - 1].at_mm > place do
      at = at - 1
    end
    while at < #rows and rows[at].at_mm < place do
      at = at + 1
    end
    local a, b = rows[at - 1], rows[at]
    local share = b.at_mm > a.at_mm and math.max(0, math.min(1, (place - a.at_mm) / (b.at_mm - a.at_mm))) or 1
    return (a.diameter_mm + share * (b.diameter_mm - a.diameter_mm)) / 2
  end
end

local function refuse(ctx)
  local measure = measure_of(ctx)
  if list.find(ctx.design.load_cases, function(load) return not load.at_tip end) then
    ctx:refuse("how rod and line stand is not known" .. (measure and ("; to tell: " .. measure) or ""))
  end
  ctx:refuse('no load pulls through the line: write one, such as load_cases { id: "lift" lifted { g: 300 } '
    .. "butt_angle { deg: 45 } }")
end

local function placement_of(ctx)
  local asked = ctx.options.compare
  if asked ~= "proposed" and asked ~= "none" then
    ctx:refuse(('compare is "proposed" or "none", not "%s"'):format(asked))
  end
  return asked == "proposed" and ctx.report.placement or nil
end

-- { name =, digest =, paper =, length =, measure =, forces =, loads =, placement =, ring_name =, short_names =,
-- radius = }
function M.collect(ctx)
  local paper = PAPERS[ctx.options.paper:lower()]
  if not paper then
    ctx:refuse(('paper is "A4" or "Letter", not "%s"'):format(ctx.options.paper))
  end
  local length = lengths.words(ctx)
  local placed = placement_of(ctx)
  local report = ctx.report.line_load
  local loads = loads_of(report and report.cases or {}, placed)
  if #loads == 0 then
    refuse(ctx)
  end
  local identity = ctx.design.identity
  local ring_name, short_names = namer(loads)
  return {
    name = identity and identity.name or ctx.stem,
    digest = (ctx.report.design_digest or ""):sub(8, 19),
    paper = paper,
    length = length,
    measure = measure_of(ctx),
    forces = ctx.options.forces,
    loads = loads,
    placement = placed,
    ring_name = ring_name,
    short_names = short_names,
    radius = radius_of(ctx.rod),
  }
end

return M
