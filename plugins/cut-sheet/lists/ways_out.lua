-- Where the length ordered cannot be had: what can be done instead, cheapest first.
return function(ctx)
  local rows = {}
  for i, remedy in ipairs(ctx:get("fit.cut_plan.remedies") or {}) do
    rows[i] = { item = remedy.kind or "way", what = remedy.text, overall = remedy.overall_mm }
  end
  if #rows == 0 then
    return {}
  end
  return {
    {
      title = "If it has to be another length",
      datum = "the butt end of the finished rod to its tip end",
      rows = rows,
      columns = {
        { key = "item", title = "", kind = "text" },
        { key = "what", title = "what to do", kind = "text" },
        { key = "overall", title = "rod then", kind = "length", step = 1, inch = 16, optional = true },
      },
    },
  }
end
