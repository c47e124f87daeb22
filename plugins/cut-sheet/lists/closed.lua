-- What the log has closed: facts that no plan alters.
local text = require "withy.text"

local function words(fact)
  if fact.kind == "cut" and fact.at_end then
    return "cut, " .. fact.at_end .. " end"
  elseif fact.count then
    return ("%s, %s"):format(fact.kind, text.fixed(fact.count, 0))
  end
  return fact.kind or "done"
end

return function(ctx)
  local rows = {}
  for i, fact in ipairs(ctx.report.closed) do
    rows[i] = { item = fact.what or fact.at or "unnamed", kind = words(fact), amount = fact.amount_mm }
  end
  if #rows == 0 then
    return {}
  end
  return {
    {
      title = "Done already",
      narrow = true,
      datum = "the section's end as supplied",
      note = "By the log. No plan changes it; a wrong entry is mended by a correction.",
      rows = rows,
      columns = {
        { key = "item", title = "what", kind = "text" },
        { key = "kind", title = "done", kind = "text" },
        { key = "amount", title = "came off", kind = "length", step = 1, inch = 16, optional = true },
      },
    },
  }
end
