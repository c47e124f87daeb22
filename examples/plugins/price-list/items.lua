-- Everything in a design that was bought, and how many of it.
local M = {}

-- Calls visit(what, item, count, unit) for each thing that says what it is and cost. `count` is what one rod takes;
-- thread, adhesive and finish are counted as one spool or pack each.
function M.each(design, visit)
  local function one(thing, what)
    if thing and thing.item then
      visit(what or thing.name or thing.id or "unnamed", thing.item, 1, "each")
    end
  end
  local function all(list, unit)
    for _, thing in ipairs(list) do
      if thing.item then
        visit(thing.name or thing.id or "unnamed", thing.item, 1, unit or "each")
      end
    end
  end
  if design.blank then
    one(design.blank)
    all(design.blank.sections)
  end
  if design.handle then
    all(design.handle.parts)
  end
  for _, model in ipairs(design.guide_models) do
    local count = 0
    for _, guide in ipairs(design.guides) do
      count = count + (guide.model == model.id and 1 or 0)
    end
    if model.item and count > 0 then
      visit(model.name or model.id or "unnamed", model.item, count, "each")
    end
  end
  one(design.tip_top)
  all(design.threads, "spool")
  all(design.adhesives, "pack")
  all(design.finishes, "pack")
  all(design.accessories)
end

return M
