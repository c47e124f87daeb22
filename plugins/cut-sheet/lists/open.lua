-- What is not known, and what was assumed instead.

-- "fit.overall_length_mm" -> "fit: overall length".
local function words(figure)
  local concern, rest = figure:match("^([%w_]+)%.(.+)$")
  if not concern then
    return figure
  end
  rest = rest:gsub("%f[_]_mm$", ""):gsub("%f[_]_g$", ""):gsub("%f[_]_ml$", ""):gsub("%f[_]_deg$", "")
  return concern .. ": " .. rest:gsub("[._]", " ")
end

return function(ctx)
  local unknown, assumed = {}, {}
  for i, entry in ipairs(ctx:get("report.unknown") or {}) do
    unknown[i] = { item = words(entry.figure), measure = entry.measure }
  end
  for i, entry in ipairs(ctx:get("report.assumptions") or {}) do
    assumed[i] = { item = entry.at, used = entry.used, why = entry.why }
  end
  return {
    {
      title = "Not known",
      datum = "",
      empty = "Nothing that this sheet needs is missing.",
      rows = unknown,
      columns = {
        { key = "tick", title = "", kind = "tick" },
        { key = "item", title = "what cannot be told", kind = "text" },
        { key = "measure", title = "what would settle it", kind = "text", optional = true },
      },
    },
    {
      title = "Assumed",
      datum = "",
      empty = "Nothing was assumed.",
      rows = assumed,
      columns = {
        { key = "item", title = "where", kind = "text" },
        { key = "used", title = "taken as", kind = "text" },
        { key = "why", title = "because", kind = "text", optional = true },
      },
    },
  }
end
