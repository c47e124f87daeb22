-- The usual cautions. None of them says that a rod is safe; each defers to those who know the product or the place.
local things = require "things"

local LEAD = "Lead: don't melt or sand it, wash your hands; local rules on lead change, ask for them."

local ALWAYS = {
  "These numbers describe geometry and estimates. They do not show that a rod, a joint or a weight is safe.",
  "Epoxy: resin and hardener can sensitise the skin for good. Wear nitrile gloves, change them often, and follow "
    .. "the product's data sheet before this sheet.",
  "A large cup of epoxy heats up, smokes and can burn. Mix little, spread it out.",
  "Carbon and glass dust: cut and sand wet or with extraction, wear a mask and glasses, keep it off the skin and out "
    .. "of anything electric.",
  "Solvents catch fire at room temperature. No flame, no spark, open the window.",
  "Static test: wear eye protection, tie a catch line, stand out of line. Don't load a rod beyond its blank's "
    .. "rating, nor with the butt high and the line behind it.",
  "Carbon conducts. Stay 30 m from overhead lines, and stop at the first thunder.",
}

return function(ctx)
  local cautions = table.move(ALWAYS, 1, #ALWAYS, 1, {})
  if things.lead(ctx) then
    table.insert(cautions, 6, LEAD)
  end
  return cautions
end
