-- The design's things beside what the report says of them. The report lists them in the design's order, so they are
-- found by their place: an id may be missing, stand twice or belong to a thing of another kind, of which the design's
-- findings tell.
local M = {}

-- A thing's id, else what it is and which: "part 2".
function M.name(thing, kind, number)
  return thing.id or ("%s %d"):format(kind, number)
end

-- Handle parts: { name =, part = of the design, place = of the report }.
function M.parts(ctx)
  local result = {}
  for i, place in ipairs(ctx:get("fit.parts") or {}) do
    local part = ctx.design.handle.parts[i]
    result[i] = { name = M.name(part, "part", i), part = part, place = place }
  end
  return result
end

-- The guide model with that id, or nil.
function M.model(ctx, id)
  for _, model in ipairs(ctx.design.guide_models) do
    if id and model.id == id then
      return model
    end
  end
  return nil
end

-- Whether counterweights are of lead, as they are where nothing else is said: all of them, or those of one part.
function M.lead(ctx, part_id)
  for _, part in ipairs(ctx.design.handle and ctx.design.handle.parts or {}) do
    if part.weights and (not part_id or part.id == part_id) and (part.weights.material or "lead") == "lead" then
      return true
    end
  end
  return false
end

-- Where the shop does not say: 3 in, 1/4 in (common practice, no source), 1 mm.
local LARGEST_CUT_MM, LAST_CUT_MM, KERF_MM = 76.2, 6.35, 1

local function given(length, otherwise)
  return length and length.mm > 0 and length.mm or otherwise
end

-- The most that one cut may take, and the last one: no less than the saw does.
function M.cut_limits(ctx)
  local last = math.max(given(ctx:get("shop.last_cut"), LAST_CUT_MM), given(ctx:get("shop.saw_kerf"), KERF_MM))
  return math.max(given(ctx:get("shop.largest_single_cut"), LARGEST_CUT_MM), last), last
end

local AS_PLANNED_MM = 25.4 / 16 -- cuts that differ by less are one cut to a tape measure

-- What to say of figures that follow from where the blank is cut, or nil: cuts are to come that neither log nor design
-- has.
function M.before_cuts(ctx, what)
  local plan = ctx:get("fit.cut_plan")
  local stages = plan and plan.stages or {}
  if #stages > 0 and stages[#stages].total_mm - (plan.cut_planned_mm or 0) > AS_PLANNED_MM then
    return ("For the blank before the cuts to come. %s after the last cut: print this sheet again then."):format(what)
  end
  return nil
end

return M
