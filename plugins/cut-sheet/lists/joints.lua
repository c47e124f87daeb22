-- What is glued, in the order of work, and what is mixed for it.
local text = require "withy.text"
local things = require "things"

local function name_of(joint)
  return (joint.what or joint.at or "joint") .. (joint.potting and ", counterweights" or "")
end

local function joints(ctx)
  local rows = {}
  for i, joint in ipairs(ctx:get("bonding.joints") or {}) do
    rows[i] = {
      item = name_of(joint),
      adhesive = joint.adhesive, gap = joint.gap_mm, area = joint.area_cm2, volume = joint.volume_ml,
      after = joint.volume_after_cuts_ml,
      state = joint.done and "glued" or nil,
    }
  end
  return {
    title = "Joints",
    datum = "",
    empty = "Nothing is glued in this design.",
    note = "In the order of work; gaps all round, the smallest. Roughen and clean both faces, let it cure upright.",
    rows = rows,
    columns = {
      { key = "tick", title = "", kind = "tick" },
      { key = "item", title = "joint", kind = "text" },
      { key = "adhesive", title = "adhesive", kind = "text", optional = true },
      { key = "gap", title = "gap", kind = "diameter", optional = true },
      { key = "area", title = "area", kind = "area", optional = true },
      { key = "volume", title = "takes", kind = "volume" },
      { key = "after", title = "after the cuts", kind = "volume", optional = true },
      { key = "state", title = "", figure = "state", kind = "text", optional = true },
    },
  }
end

local function batch_row(batch, number)
  local names = {}
  for i, id in ipairs(batch.joints) do
    names[i] = name_of { what = id ~= "" and id or nil, at = batch.joint_at[i], potting = batch.potting }
  end
  return {
    item = ("%d"):format(number), adhesive = batch.adhesive, joints = table.concat(names, ", "),
    mix = batch.mix_ml, after = batch.mix_after_cuts_ml, least = batch.smallest_decides and "smallest batch" or nil,
    resin_ml = batch.resin_ml, hardener_ml = batch.hardener_ml, resin_g = batch.resin_g, hardener_g = batch.hardener_g,
    work = batch.working_minutes, pot_life = batch.pot_life_minutes, set = batch.set_minutes,
  }
end

local function note(batches)
  local at = batches[1] and batches[1].at_celsius
  local where = at and (" Times are for %s °C."):format(text.fixed(at, 0)) or ""
  return "By volume or by mass, one or the other: the ratios differ. A changed ratio does not cure. The product's "
    .. "data sheet comes before this table." .. where
end

local function proposed_arbors(ctx)
  local ml = 0
  for _, joint in ipairs(ctx:get("bonding.joints") or {}) do
    ml = ml + (joint.done and 0 or joint.proposed_arbors_ml or 0)
  end
  return ml >= 0.05 and (" The arbors that are proposed would take %s ml of it."):format(text.fixed(ml, 1)) or ""
end

local function mixes(ctx)
  local batches = ctx:get("bonding.batches") or {}
  local rows = {}
  for i, batch in ipairs(batches) do
    rows[i] = batch_row(batch, i)
  end
  return {
    title = "Mixes",
    datum = "",
    empty = "Nothing is to be mixed, or how much cannot be told.",
    caution = things.before_cuts(ctx, "Another amount is mixed"),
    note = note(batches) .. proposed_arbors(ctx),
    rows = rows,
    columns = {
      { key = "tick", title = "", kind = "tick" },
      { key = "item", title = "mix", kind = "text" },
      { key = "adhesive", title = "adhesive", kind = "text" },
      { key = "joints", title = "for", kind = "text" },
      { key = "mix", title = "in all", kind = "volume", strong = true },
      { key = "after", title = "after the cuts", kind = "volume", optional = true },
      { key = "resin_ml", title = "resin", figure = "resin by volume", kind = "volume", optional = true },
      { key = "hardener_ml", title = "hardener", figure = "hardener by volume", kind = "volume", optional = true },
      { key = "resin_g", title = "resin", figure = "resin by mass", kind = "mass", optional = true },
      { key = "hardener_g", title = "hardener", figure = "hardener by mass", kind = "mass", optional = true },
      { key = "work", title = "work", figure = "working time", kind = "minutes", optional = true },
      { key = "pot_life", title = "pot life", kind = "minutes", optional = true },
      { key = "set", title = "let go after", kind = "duration", optional = true },
      { key = "least", title = "", figure = "decided by", kind = "text", optional = true },
    },
  }
end

return function(ctx)
  return { mixes(ctx), joints(ctx) }
end
