-- What is to be drawn, in mm of the rod, as profiles of radii. Unset = not known.
local profiles = require "profiles"

local M = {}

local AHEAD = 45 -- mm of bare blank shown ahead of the handle

local SOLID = { butt_cap = true, gimbal = true }

-- What the fit says of a part. Both list the parts by id; of two with one id the place tells.
local function fitted_of(ctx, part)
  for _, fitted in ipairs(ctx:get("fit.parts") or {}) do
    if fitted.id == part.id and fitted.start_mm == part.start_mm then
      return fitted
    end
  end
  return nil
end

local function reaming_of(ctx, part)
  for _, ream in ipairs(ctx:get("fit.reaming") or {}) do
    if ream.part == part.id then
      return ream
    end
  end
  return nil
end

-- A bore that is to be opened, as it will be.
local function reamed(part, ream)
  local result = {}
  for i, row in ipairs(ream.rows) do
    result[i] = { at_mm = part.start_mm + row.at_mm, radius = math.max(row.ream_mm, row.bore_mm or 0) / 2 }
  end
  return result
end

-- What is drawn of a bore, and what has to be said about it.
local function bore_of(ctx, part, stop, blank)
  local ream = reaming_of(ctx, part)
  if part.fitting ~= "rigid" and blank then
    local start = math.max(part.start_mm, blank[1].at_mm)
    return start < stop and profiles.over(blank, start, stop) or nil, part.fitting .. " onto the blank"
  elseif ream and #ream.rows > 1 then
    return reamed(part, ream), "as it is after reaming"
  elseif #part.bore > 1 and part.bore_known == "plugs" then
    return profiles.from_rows(part.bore), "bore known where plugs were put in"
  elseif #part.bore > 0 and part.bore_known == "profile" then
    return profiles.from_rows(part.bore, part.start_mm, stop)
  end
  return nil, part.bore_known == "mouth" and "of the bore the mouth alone is known" or "bore not known"
end

local function part_of(ctx, part, blank)
  local stop = part.start_mm + part.length_mm
  local solid = SOLID[part.kind] and #part.bore == 0
  local bore, remark
  if not solid then
    bore, remark = bore_of(ctx, part, stop, blank)
  end
  local fitted = fitted_of(ctx, part)
  return {
    id = part.id or part.kind or "part", kind = part.kind, on = part.on, solid = solid,
    start = part.start_mm, stop = stop, bore = bore, remark = remark,
    outer = #part.outer > 0 and profiles.from_rows(part.outer, part.start_mm, stop) or nil,
    around_blank = not part.on and not solid,
    arbors = fitted and fitted.arbors or {},
    cavity = part.cavity, weights = part.weights,
  }
end

local function by_start(a, b)
  return a.start < b.start
end

-- Walls of the sections within [start, stop]: { outer =, inner = or nil }.
local function walls(rod, blank, start, stop)
  local result = {}
  for _, section in ipairs(rod.sections) do
    if section.start_mm and section.length_mm then
      local from, to = math.max(start, section.start_mm), math.min(stop, section.start_mm + section.length_mm)
      if from < to then
        local inner = #section.inner > 1 and profiles.over(profiles.from_rows(section.inner), from, to) or nil
        result[#result + 1] = { outer = profiles.over(blank, from, to), inner = inner }
      end
    end
  end
  return result
end

-- The bore that the blank is in, over the stretch that both take, and the blank there; or nil.
local function stretch(host, blank)
  if not (host and host.bore) then
    return nil
  end
  local start = math.max(blank[1].at_mm, host.bore[1].at_mm)
  local stop = math.min(blank[#blank].at_mm, host.bore[#host.bore].at_mm)
  return start < stop and start or nil, stop
end

-- Where the gap is narrowest: that is where blank and bore touch, or would.
local function narrowest(host, blank)
  local start, stop = stretch(host, blank)
  local least
  for _, place in ipairs(start and profiles.places(start, stop, host.bore, blank) or {}) do
    local gap = profiles.at(host.bore, place, place == stop) - profiles.at(blank, place, place == stop)
    if not least or gap < least.gap then
      least = { from_mm = place, gap = gap, bore_mm = 2 * profiles.at(host.bore, place, place == stop) }
    end
  end
  return least and { least } or {}
end

local function told(contacts)
  local result = {}
  for i, contact in ipairs(contacts) do
    result[i] = { from_mm = contact.from_mm, to_mm = contact.to_mm, bore_mm = contact.bore_mm, kind = contact.kind }
  end
  return result
end

-- All of the rod as planned, which `ctx.rod` is: never of the rod as it is cut now. Where the report has no contact for
-- it, the place where the gap is narrowest.
local function touches(plan, host, blank)
  if not (plan and blank) then
    return {}
  end
  local contacts = plan.planned and plan.planned.contacts or {}
  return #contacts > 0 and told(contacts) or narrowest(host, blank)
end

local function host_of(parts, plan)
  for _, part in ipairs(parts) do
    if plan and part.id == plan.host then
      return part
    end
  end
  return nil
end

-- Refuses where no part has a place: there is nothing to draw.
function M.collect(ctx)
  local rod = ctx.rod
  local blank = #rod.blank > 1 and rod.blank_butt_mm and profiles.from_rows(rod.blank) or nil
  local parts, front = {}, 0
  for _, part in ipairs(rod.parts) do
    if part.start_mm and part.length_mm and part.length_mm > 0 then
      parts[#parts + 1] = part_of(ctx, part, blank)
      front = math.max(front, part.start_mm + part.length_mm)
    end
  end
  if #parts == 0 then
    ctx:refuse("no part of the handle has a place and a length, so there is nothing to draw; give handle.parts their "
      .. "length, butt first")
  end
  table.sort(parts, by_start)
  local tip = blank and blank[#blank].at_mm or front
  local stop = blank and math.min(tip, front + AHEAD) or front
  local plan = ctx:get("fit.cut_plan")
  local host = host_of(parts, plan)
  return {
    parts = parts,
    host = host,
    touches = touches(plan, host, blank),
    front = front,
    stop = math.max(stop, front),
    blank = blank,
    ends_here = blank and stop >= tip,
    walls = blank and walls(rod, blank, blank[1].at_mm, stop) or {},
    counterweights = ctx:get("balance.counterweights"),
    reel_foot = rod.reel_foot_mm,
  }
end

local MOST_LAYERS = 200 -- more are a grey block on paper

-- Layers that lie within the part: a count can be anything.
local function layers_within(part, cavity, unit_mm)
  local room = math.max(0, part.stop - cavity.start_mm)
  return room < MOST_LAYERS * unit_mm and math.floor(room / unit_mm + 1e-6) or MOST_LAYERS
end

-- Counterweights as planned: how many, and what one is. Nil where none go in or their size is not known.
function M.counterweights(handle)
  for _, part in ipairs(handle.parts) do
    local weights, cavity = part.weights, part.cavity
    local plan = handle.counterweights
    if plan and plan.part ~= part.id then
      plan = nil
    end
    local count = weights and (weights.count or plan and plan.count)
    if count and count > 0 and cavity and cavity.start_mm and weights.unit_length_mm and weights.unit_diameter_mm then
      local abreast = math.max(1, plan and plan.side_by_side or 1)
      local layers = (count + abreast - 1) // abreast
      return {
        part = part, count = count, abreast = abreast, layers = layers,
        drawn = math.min(layers, layers_within(part, cavity, weights.unit_length_mm)),
        mass_g = weights.unit_mass_g or plan and plan.unit_mass_g,
        start = cavity.start_mm, length = weights.unit_length_mm, diameter = weights.unit_diameter_mm,
        cover = weights.cover_mm or 3, -- 3 mm: the schema's default (Weights.cover)
      }
    end
  end
  return nil
end

return M
