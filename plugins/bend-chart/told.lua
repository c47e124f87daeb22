-- What the report tells of bending, and what is asked of the chart; a refusal where it tells nothing.
local lengths = require "lengths"
local list = require "withy.table"

local M = {}

local PAPERS = { A4 = true, Letter = true }

local function measure_of(ctx)
  for _, unknown in ipairs(ctx.report.unknown) do
    if unknown.figure and unknown.figure:find("^bending") then
      return unknown.measure
    end
  end
  return nil
end

local function one(of)
  if not of then
    return nil
  end
  return { report = of, tip = of.clamp_mm and of.free_length_mm and of.clamp_mm + of.free_length_mm }
end

local function by_id(of, id)
  return of and list.find(of.report.cases, function(bent) return bent.id == id and #bent.at_mm > 1 end)
end

-- Each load case: { number =, id =, finished =, bare = } with the shapes that there are; `main` is the one told of.
local function cases_of(finished, bare)
  local result = {}
  for i, bent in ipairs((finished or bare).report.cases) do
    local id = bent.id
    local shown = { finished = by_id(finished, id), bare = by_id(bare, id) }
    result[i] = { number = ("%d"):format(i), id = id or ("load case " .. i), said = bent,
      finished = shown.finished, bare = shown.bare, main = shown.finished or shown.bare }
  end
  return result
end

-- { title =, paper =, length =, finished =, bare =, main =, cases = }
function M.collect(ctx)
  if not PAPERS[ctx.options.paper] then
    ctx:refuse(('paper is "A4" or "Letter", not "%s"'):format(ctx.options.paper))
  end
  local bending = ctx:get("report.bending")
  local finished, bare = one(bending and bending.finished), one(bending and bending.bare)
  local main = finished or bare
  if not (main and main.tip) then
    local measure = measure_of(ctx)
    ctx:refuse("how the blank bends is not known"
      .. (measure and ("; to tell: " .. measure) or ": describe the blank, its walls and its material"))
  end
  local identity = ctx.design.identity
  return {
    name = identity and identity.name or ctx.stem,
    digest = (ctx.report.design_digest or ""):sub(8, 19),
    paper = ctx.options.paper,
    length = lengths.words(ctx),
    bending = bending,
    end_name = finished and ctx:get("design.tip_top") and "the tip-top's ring" or "the blank's tip",
    finished = finished,
    bare = bare,
    main = main,
    cases = cases_of(finished, bare),
  }
end

return M
