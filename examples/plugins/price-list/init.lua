-- Exporter: what the parts of a design cost, as CSV. Currencies are kept apart: there is one total for each. A spool or
-- a pack counts whole, however little of it one rod takes; work is not in it.
local decimal = require "decimal"
local items = require "items"
local text = require "withy.text"

-- Digits behind the point, ISO 4217; two where a currency is not listed.
local MINOR_DIGITS = { BHD = 3, CLP = 0, ISK = 0, JOD = 3, JPY = 0, KRW = 0, KWD = 3, OMR = 3, TND = 3, VND = 0 }

local function shown(amount, currency)
  return decimal.format(amount, MINOR_DIGITS[currency] or 2)
end

local function price_of(ctx, item, what)
  local price = item.price
  if not price then
    return nil
  end
  if not price.currency or not price.amount then
    ctx:refuse(("the price of %s has no %s"):format(what, price.currency and "amount" or "currency"))
  end
  local amount = decimal.parse(price.amount)
  return amount or ctx:refuse(("the price of %s is no decimal number: %s"):format(what, price.amount))
end

local function export(ctx)
  local separator = ctx.options.separator
  local rows = { { "what", "catalogue", "number", "count", "unit", "price", "sum", "currency" } }
  local totals, unpriced = {}, 0
  items.each(ctx.design, function(what, item, count, unit)
    local price = price_of(ctx, item, what)
    local row = { what, item.catalogue or "", item.number or "", tostring(count), unit, "", "", "" }
    if price then
      local currency = item.price.currency
      local sum = decimal.times(price, count)
      totals[currency] = totals[currency] and decimal.add(totals[currency], sum) or sum
      row[6], row[7], row[8] = shown(price, currency), shown(sum, currency), currency
    else
      row[6] = "not known"
      unpriced = unpriced + 1
    end
    rows[#rows + 1] = row
  end)
  for currency, total in pairs(totals) do
    rows[#rows + 1] = { "total", "", "", "", "", "", shown(total, currency), currency }
  end
  if unpriced > 0 then
    rows[#rows + 1] = { ("without a price: %d"):format(unpriced), "", "", "", "", "", "", "" }
  end
  for i, row in ipairs(rows) do
    rows[i] = text.csv_row(row, separator)
  end
  ctx:write(ctx.stem .. "-prices.csv", table.concat(rows, "\r\n") .. "\r\n")
end

return {
  api = 1,
  name = "price-list",
  version = "1.0.0",
  license = "Apache-2.0",
  summary = "What the parts of a design cost",
  exporters = {
    {
      name = "price-list",
      extension = "csv",
      summary = "Parts, counts and prices, with a total for each currency",
      options = { separator = { type = "string", default = ",", summary = "between the columns: , or ;" } },
      run = export,
    },
  },
}
