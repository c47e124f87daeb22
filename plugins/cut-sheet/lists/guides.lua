-- Guides from the tip-top's ring centre, and the space to the next one towards the tip.
local table_of = require "withy.table"
local things = require "things"

local function words(word)
  return word and word:gsub("_", " ")
end

-- "double foot, ring 10 mm".
local function description(model)
  if not model then
    return "kind not known"
  end
  local ring = model.ring_outer or model.ring_inner
  local size = ring and (model.ring_outer and "ring %g mm" or "%g mm inside"):format(ring.mm)
  return table.concat({ model.name or words(model.form) or model.id, size }, ", ")
end

return function(ctx)
  local rows, before = {}, 0
  local all, placed = ctx:get("guides.guides") or {}, {}
  for i, guide in ipairs(all) do
    if guide.from_tip_mm then
      placed[#placed + 1] = { guide = guide, name = things.name(guide, "guide", i), from_tip = guide.from_tip_mm }
    end
  end
  for _, entry in ipairs(table_of.sort_by(placed, "from_tip")) do
    local guide = entry.guide
    rows[#rows + 1] = {
      item = entry.name,
      kind = description(things.model(ctx, guide.model)),
      from_tip = guide.from_tip_mm,
      gap = guide.from_tip_mm - before,
      blank = guide.blank_diameter_mm,
      height = guide.ring_height_mm,
    }
    before = guide.from_tip_mm
  end
  for i, guide in ipairs(all) do
    if not guide.from_tip_mm then
      rows[#rows + 1] = { item = things.name(guide, "guide", i), kind = description(things.model(ctx, guide.model)) }
    end
  end
  return {
    {
      title = "Guides",
      datum = "the tip-top's ring centre to the guide's ring centre",
      empty = "No guides in this design.",
      note = "Tip first. Confirm in a static test before wrapping.",
      rows = rows,
      columns = {
        { key = "tick", title = "", kind = "tick" },
        { key = "item", title = "guide", kind = "text" },
        { key = "kind", title = "kind", kind = "text" },
        { key = "from_tip", title = "from the tip-top's ring", kind = "length", step = 2, inch = 8, strong = true },
        { key = "gap", title = "space", kind = "length", step = 2, inch = 8, datum = "the ring before it, tip side" },
        { key = "blank", title = "blank under it", kind = "diameter" },
        { key = "height", title = "ring above blank", kind = "diameter" },
      },
    },
  }
end
