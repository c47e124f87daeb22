-- Counterweights: how many, where to stop, what potting adds.
local text = require "withy.text"
local things = require "things"
local units = require "withy.units"

local LEAD = " Lead: wash your hands, don't melt or sand it."

local STATUS = {
  ["room limited"] = "No more fit; the rod stays tip-heavy.",
  ["no room"] = "None fits.",
  ["butt-heavy already"] = "The rod is butt-heavy without any.",
}

local CONFIDENCE = {
  sure = "The count is sure within the uncertainty of the masses.",
  ["one more or less"] = "It may be one more or one less: tape them in and try.",
  ["cannot tell"] = "How many cannot be told yet: tape them in and try.",
}

local function remarks(plan)
  local said = {}
  for _, words in ipairs { STATUS[plan.status or ""] or "", CONFIDENCE[plan.confidence or ""] or "" } do
    said[#said + 1] = words ~= "" and words or nil
  end
  if plan.potted then
    said[#said + 1] = "Potted " .. plan.potted .. (plan.potted:find("[.]$") and "" or ".")
  end
  return table.concat(said, " ")
end

local function counted(count)
  return count and { text.fixed(count, 0), "" }
end

-- A place in the design's own unit.
local function placed(ctx, mm)
  if not mm then
    return nil
  elseif ctx:get("identity.units") == "INCH" then
    return { units.inches(mm, 16), "" }
  end
  return { text.fixed(mm, 0), "mm" }
end

local function measured(value, decimals, unit)
  return value and { text.fixed(value, decimals), unit }
end

return function(ctx)
  local plan = ctx:get("balance.counterweights")
  if not plan then
    return {}
  end
  local aim = ctx:get("balance.aim")
  local rows = {
    { item = "the rod rests, reel on, at " .. (aim or "its aim"), strong = true,
      value = placed(ctx, ctx:get("balance.aim_from_butt_mm")) },
    { item = "put in", value = counted(plan.count), strong = true, always = true },
    { item = "as designed, or potted", value = counted(plan.count_planned) },
    { item = "most that fit", value = counted(plan.fit) },
    { item = "side by side", value = counted(plan.side_by_side) },
    { item = "one of them", value = measured(plan.unit_mass_g, 2, "g") },
    { item = "together", value = measured(plan.mass_g, 2, "g") },
    { item = "stop when the rod just lifts this much, hung at the tip-top's ring", strong = true,
      value = measured(plan.stop_short_at_tip_g, 1, "g") },
    { item = "potting", value = measured(plan.potting_ml, 2, "ml") },
    { item = "its mass", value = measured(plan.potting_g, 2, "g") },
    { item = "balances after potting, reel on, at", value = placed(ctx, plan.balance_after_mm) },
    { item = "added to the rod", value = measured(plan.added_mass_g, 1, "g") },
  }
  local shown = {}
  for _, row in ipairs(rows) do
    shown[#shown + 1] = (row.value or row.always) and row or nil
  end
  return {
    {
      title = "Counterweights" .. (plan.part and " in " .. plan.part or ""),
      datum = "the butt end of the finished rod",
      note = remarks(plan) .. (things.lead(ctx, plan.part) and LEAD or ""),
      rows = shown,
      columns = {
        { key = "tick", title = "", kind = "tick" },
        { key = "item", title = "", kind = "text" },
        { key = "value", title = "", figure = "value", kind = "given", strong = true },
        { key = "read", title = "read", kind = "write" },
      },
    },
  }
end
