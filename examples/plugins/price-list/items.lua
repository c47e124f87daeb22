-- Everything in a design that was bought, and how many of it.
local M = {}

-- How many guides are of a kind.
local function guides_of(design, model)
  local count = 0
  for _, guide in ipairs(design.guides) do
    count = count + (guide.model == model.id and 1 or 0)
  end
  return count
end

-- Calls visit(what, item, count, unit) for each thing that says what it is and cost. `count` is what one rod takes;
-- thread, adhesive and finish are counted as one spool or pack each.
function M.each(design, visit)
  local function one(thing, what, count, unit)
    if thing and thing.item and count ~= 0 then
      visit(what or "unnamed", thing.item, count or 1, unit or "each")
    end
  end
  local blank, tip_top = design.blank, design.tip_top
  one(blank, blank and blank.name or "blank")
  for _, section in ipairs(blank and blank.sections or {}) do
    one(section, section.id)
  end
  for _, part in ipairs(design.handle and design.handle.parts or {}) do
    one(part, part.name or part.id)
  end
  for _, model in ipairs(design.guide_models) do
    one(model, model.name or model.id, guides_of(design, model))
  end
  one(tip_top, tip_top and tip_top.name or "tip-top")
  for _, thread in ipairs(design.threads) do
    one(thread, thread.id, 1, "spool")
  end
  for _, adhesive in ipairs(design.adhesives) do
    one(adhesive, adhesive.name or adhesive.id, 1, "pack")
  end
  for _, finish in ipairs(design.finishes) do
    one(finish, finish.name or finish.id, 1, "pack")
  end
  for _, accessory in ipairs(design.accessories) do
    one(accessory, accessory.name)
  end
end

return M
