-- What the report tells of the loads to be tested, and what is asked of the protocol; a refusal where it tells of none.
local list = require "withy.table"

local M = {}

local PAPERS = { a4 = "A4", letter = "Letter" }

local function measure_of(ctx)
  for _, unknown in ipairs(ctx.report.unknown) do
    if unknown.figure and unknown.figure:find("^line_load") then
      return unknown.measure
    end
  end
  return nil
end

local function by_inch(ctx)
  local asked = ctx.options.units
  if asked ~= "design" and asked ~= "mm" and asked ~= "inch" then
    ctx:refuse(('units is "mm", "inch" or "design", not "%s"'):format(asked))
  end
  return asked == "inch" or asked == "design" and ctx:get("identity.units") == "INCH"
end

local function asked_for(ctx, cases)
  local id = ctx.options.load
  if id == "" then
    return cases
  end
  local chosen = list.filter(cases, function(case) return case.id == id end)
  if #chosen == 0 then
    ctx:refuse(('no load "%s" pulls through the line; there are: %s'):format(id,
      table.concat(list.map(cases, function(case) return case.id or "one without id" end), ", ")))
  end
  return chosen
end

local GRAVITY = 9.80665 -- m/s2, standard

-- What the design says of a load of which nothing was computed, by the names of the report: the protocol is of use all
-- the same.
local function as_written(ctx, load)
  local butt = load.butt_angle and load.butt_angle.deg or 0
  local clamp = load.clamp_from_butt or ctx:get("design.intent.holding_point_from_butt")
  return {
    id = load.id,
    tension_n = load.lifted and load.lifted.g * GRAVITY / 1000 or load.tension and load.tension.n or nil,
    butt_angle_deg = butt,
    line_angle_deg = load.line_angle and butt - load.line_angle.deg or -90,
    clamp_mm = clamp and clamp.mm,
    at_mm = {}, forward_mm = {}, up_mm = {}, rings = {}, spans = {},
  }
end

-- The design's loads that pull through the line, as computed where they are.
local function loads_of(ctx)
  local report = ctx.report.line_load
  local loads = {}
  for _, load in ipairs(ctx.design.load_cases) do
    if not load.at_tip then
      local computed = report and load.id and list.find(report.cases, function(case) return case.id == load.id end)
      loads[#loads + 1] = computed and #computed.at_mm > 0 and computed or as_written(ctx, load)
    end
  end
  return loads
end

-- Of the same set-up with less pull, where the design asks for it too: a case for a share of a load, or nil.
local NEAR = { share = 0.02, degrees = 0.5, mm = 1 }

function M.at_share(known, strung, share)
  return list.find(known.all, function(case)
    return case.state == "bent" and case.tension_n and strung.tension_n
      and math.abs(case.tension_n / strung.tension_n - share) < NEAR.share * share
      and math.abs((case.line_angle_deg or -90) - (strung.line_angle_deg or -90)) < NEAR.degrees
      and math.abs((case.butt_angle_deg or 0) - (strung.butt_angle_deg or 0)) < NEAR.degrees
      and math.abs((case.clamp_mm or 0) - (strung.clamp_mm or 0)) < NEAR.mm
  end)
end

-- { name =, revision =, serial =, digest =, stem =, paper =, by_inch =, measure =, findings =,
-- loads =, rod =, all = }
function M.collect(ctx)
  local paper = PAPERS[ctx.options.paper:lower()]
  if not paper then
    ctx:refuse(('paper is "A4" or "Letter", not "%s"'):format(ctx.options.paper))
  end
  local inch = by_inch(ctx)
  local cases = loads_of(ctx)
  if #cases == 0 then
    ctx:refuse('no load pulls through the line: write the one to test, such as load_cases { id: "lift" '
      .. "lifted { g: 300 } butt_angle { deg: 45 } }")
  end
  local identity = ctx.design.identity
  return {
    name = identity and identity.name or ctx.stem,
    revision = identity and identity.revision,
    serial = identity and identity.serial,
    digest = (ctx.report.design_digest or ""):sub(8, 19),
    stem = ctx.stem,
    paper = paper,
    by_inch = inch,
    measure = measure_of(ctx),
    findings = ctx.report.findings,
    loads = asked_for(ctx, cases),
    rod = ctx.rod,
    all = cases,
  }
end

return M
