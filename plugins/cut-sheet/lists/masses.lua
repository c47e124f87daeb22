-- Everything that was counted, with its mass and how that is known.
local table_of = require "withy.table"

-- "module", or "module, weights" for what is inside it; without an id the place in the design, "guides[0]".
local function name_of(part)
  local place, inside = (part.at or ""):match("^(.-%])%.([%w_]+)$")
  return (part.id or place or part.at or "unnamed") .. (inside and ", " .. inside or "")
end

-- One row for all things of one name (the wraps of many feet), in the order met.
local function gathered(parts)
  local rows, by_item = {}, {}
  for _, part in ipairs(parts) do
    local name = name_of(part)
    local row = by_item[name]
    if not row then
      row = { item = name, count = 0, mass = 0, moment = 0, from = part.mass_from }
      by_item[name] = row
      rows[#rows + 1] = row
    end
    row.count = row.count + 1
    row.mass = row.mass and part.mass_g and row.mass + part.mass_g
    row.moment = row.moment and part.mass_g and part.center_mm and row.moment + part.mass_g * part.center_mm
  end
  for _, row in ipairs(rows) do
    row.center = row.mass and row.moment and row.mass > 0 and row.moment / row.mass or nil
    row.item = row.count > 1 and ("%s, %d pieces"):format(row.item, row.count) or row.item
  end
  return rows
end

return function(ctx)
  local rows = table_of.filter(gathered(ctx:get("balance.parts") or {}), function(row)
    return row.mass ~= 0
  end)
  local total = {
    item = "rod without reel", strong = true,
    mass = ctx:get("balance.mass_g"), center = ctx:get("balance.balance_from_butt_mm"),
  }
  local with_reel = ctx:get("balance.mass_with_reel_g")
  if #rows > 0 then
    rows[#rows + 1] = total
    rows[#rows + 1] = with_reel and {
      item = "rod with reel", strong = true,
      mass = with_reel, center = ctx:get("balance.balance_with_reel_mm"),
    }
  end
  return {
    {
      title = "Masses",
      narrow = true,
      datum = "the butt end of the finished rod to the balance point",
      empty = "No masses are known.",
      rows = rows,
      columns = {
        { key = "item", title = "part", kind = "text" },
        { key = "mass", title = "mass", kind = "mass", strong = true },
        { key = "center", title = "balances at", kind = "length", step = 1, inch = 16 },
        { key = "from", title = "known how", kind = "text", optional = true },
      },
    },
  }
end
