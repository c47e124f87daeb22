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

local LARGEST_SINGLE_CUT_MM = 76.2 -- 3 in (common practice, no source), where the shop does not say

-- The most that one cut may take.
function M.largest_cut(ctx)
  local largest = ctx:get("shop.largest_single_cut")
  return largest and largest.mm > 0 and largest.mm or LARGEST_SINGLE_CUT_MM
end

return M
