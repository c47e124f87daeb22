-- Profiles: lists of { at_mm, radius }, at_mm never falling, straight in between; two rows at one place are a step.
local M = {}

-- From rows of the rod (diameters); constant on to `start` and `stop`, where these are given.
function M.from_rows(rows, start, stop)
  local result = {}
  for i, row in ipairs(rows) do
    result[i] = { at_mm = row.at_mm, radius = row.diameter_mm / 2 }
  end
  if #result > 0 and start and result[1].at_mm > start then
    table.insert(result, 1, { at_mm = start, radius = result[1].radius })
  end
  if #result > 0 and stop and result[#result].at_mm < stop then
    result[#result + 1] = { at_mm = stop, radius = result[#result].radius }
  end
  return result
end

function M.straight(radius, start, stop)
  return { { at_mm = start, radius = radius }, { at_mm = stop, radius = radius } }
end

-- Radius at a place, constant beyond the ends. At a step the limit from the tip's side, or with `left` from the butt's.
function M.at(profile, place, left)
  local before
  for _, row in ipairs(profile) do
    if row.at_mm > place or (left and row.at_mm == place) then
      if not before then
        return row.radius
      end
      local share = (place - before.at_mm) / (row.at_mm - before.at_mm)
      return before.radius + share * (row.radius - before.radius)
    end
    before = row
  end
  return before.radius
end

-- Places of the rows of several profiles within [start, stop], both ends among them, rising, each once.
function M.places(start, stop, ...)
  local all = { start, stop }
  for _, profile in ipairs { ... } do
    for _, row in ipairs(profile) do
      if start < row.at_mm and row.at_mm < stop then
        all[#all + 1] = row.at_mm
      end
    end
  end
  table.sort(all)
  local once = {}
  for _, place in ipairs(all) do
    if place ~= once[#once] then
      once[#once + 1] = place
    end
  end
  return once
end

-- The part of a profile over [start, stop].
function M.over(profile, start, stop)
  local result = {}
  for _, place in ipairs(M.places(start, stop, profile)) do
    local left, right = M.at(profile, place, true), M.at(profile, place)
    if place > start then
      result[#result + 1] = { at_mm = place, radius = left }
    end
    if place < stop and (place == start or right ~= left) then
      result[#result + 1] = { at_mm = place, radius = right }
    end
  end
  return result
end

return M
