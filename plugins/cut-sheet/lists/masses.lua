-- Everything that was counted, with its mass and how that is known.
local table_of = require "withy.table"

-- One row for all things of one id (the wraps of many feet), in the order met.
local function gathered(parts)
  local rows, by_item = {}, {}
  for _, part in ipairs(parts) do
    local row = by_item[part.id]
    if not row then
      row = { item = part.id, count = 0, mass = 0, moment = 0, from = part.mass_from }
      by_item[part.id] = row
      rows[#rows + 1] = row
    end
    row.count = row.count + 1
    row.mass = row.mass and part.mass_g and row.mass + part.mass_g
    row.moment = row.moment and part.mass_g and part.center_mm and row.moment + part.mass_g * part.center_mm
  end
  for _, row in ipairs(rows) do
    row.center = row.mass and row.moment and row.mass > 0 and row.moment / row.mass or nil
    row.count = row.count > 1 and ("%d pieces"):format(row.count) or nil
  end
  return rows
end

return function(ctx)
  local rows = table_of.filter(gathered(ctx:get("balance.parts") or {}), function(row)
    return row.mass ~= 0
  end)
  local total = {
    item = "rod without reel", strong = true,
    mass = ctx:get("balance.mass_g"), center = ctx:get("balance.balance_from_butt_mm"), from = "all together",
  }
  local with_reel = ctx:get("balance.mass_with_reel_g")
  if #rows > 0 then
    rows[#rows + 1] = total
    rows[#rows + 1] = with_reel and {
      item = "rod with reel", strong = true,
      mass = with_reel, center = ctx:get("balance.balance_with_reel_mm"), from = "all together",
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
        { key = "count", title = "", figure = "pieces", kind = "text", optional = true },
        { key = "mass", title = "mass", kind = "mass", strong = true },
        { key = "center", title = "balances at", kind = "length", step = 1, inch = 16 },
        { key = "from", title = "known how", kind = "text", optional = true },
      },
    },
  }
end
