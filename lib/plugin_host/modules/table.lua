-- withy.table: new lists from lists. The list that is given is left as it is; it may be a list of the design.
local list = {}

-- A function that reads the key of an item.
local function reader(key)
  if type(key) == "function" then return key end
  if key == nil then return function(item) return item end end
  return function(item) return item[key] end
end

function list.sort_by(items, key)
  local read, keyed, sorted = reader(key), {}, {}
  for i, item in ipairs(items) do keyed[i] = { key = read(item), item = item } end
  table.sort(keyed, function(a, b) return a.key < b.key end)
  for i, entry in ipairs(keyed) do sorted[i] = entry.item end
  return sorted
end

function list.map(items, f)
  local mapped = {}
  for i, item in ipairs(items) do mapped[i] = f(item) end
  return mapped
end

function list.filter(items, f)
  local kept = {}
  for _, item in ipairs(items) do
    if f(item) then kept[#kept + 1] = item end
  end
  return kept
end

function list.find(items, f)
  for _, item in ipairs(items) do
    if f(item) then return item end
  end
  return nil
end

function list.sum(items, key)
  local read, total = reader(key), 0
  for _, item in ipairs(items) do total = total + (read(item) or 0) end
  return total
end

function list.at_most(items, most)
  local found = items[1]
  for _, item in ipairs(items) do found = item <= most and item or found end
  return found
end

function list.at_least(items, least)
  for _, item in ipairs(items) do
    if item >= least then return item end
  end
  return items[#items]
end

return list
