-- What is not known, and what was assumed instead.

local UNITS = { "mm", "g", "ml", "deg", "hz", "n_m2", "n_m", "kg_m2", "minutes", "celsius" }

-- "fit.overall_length_mm" -> "fit: overall length", "threads[green].material" -> "threads[green]: material".
local function words(path)
  local owner, rest = path:match("^([^.]+)%.(.+)$")
  if not owner then
    return path
  end
  for _, unit in ipairs(UNITS) do
    rest = rest:match("^(.+)_" .. unit .. "$") or rest
  end
  return owner .. ": " .. rest:gsub("[._]", " ")
end

return function(ctx)
  local unknown, assumed = {}, {}
  for i, entry in ipairs(ctx:get("report.unknown") or {}) do
    unknown[i] = { item = words(entry.figure), measure = entry.measure }
  end
  for i, entry in ipairs(ctx:get("report.assumptions") or {}) do
    assumed[i] = {
      item = entry.at and words(entry.at) or "everywhere",
      used = entry.used .. (entry.why and ": " .. entry.why or ""),
    }
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
      fine = true,
      datum = "",
      empty = "Nothing was assumed.",
      rows = assumed,
      columns = {
        { key = "item", title = "where", kind = "text" },
        { key = "used", title = "taken as, and why", kind = "text" },
      },
    },
  }
end
