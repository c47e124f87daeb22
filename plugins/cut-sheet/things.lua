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

-- The bore of a part of the report: the rod has its parts butt first.
function M.bore(ctx, place)
  for _, part in ipairs(ctx.rod.parts) do
    if part.id == place.id and part.start_mm == place.start_mm and part.length_mm == place.length_mm then
      return part.bore
    end
  end
  return {}
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

return M
