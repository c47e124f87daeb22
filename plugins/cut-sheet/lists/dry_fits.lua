-- Dry fits so far against what was expected of them.
return function(ctx)
  local rows = {}
  for i, seen in ipairs(ctx:get("fit.cut_plan.dry_fits") or {}) do
    rows[i] = {
      item = ("%d"):format(i), cut = seen.cut_mm, read = seen.read_mm, expected = seen.expected_mm,
      tighter = seen.tighter_mm,
    }
  end
  if #rows == 0 then
    return {}
  end
  return {
    {
      title = "Dry fits so far",
      narrow = true,
      datum = "the handle's own butt end to the blank's tip end",
      note = "Tighter: what the diameters must be off by, blank thicker or bore narrower than read.",
      rows = rows,
      columns = {
        { key = "item", title = "", kind = "text" },
        { key = "cut", title = "cut off", kind = "length", step = 1, inch = 16, datum = "the butt end as supplied" },
        { key = "read", title = "read", kind = "length", step = 1, inch = 16, strong = true },
        { key = "expected", title = "expected", kind = "length", step = 1, inch = 16, optional = true },
        { key = "tighter", title = "tighter", kind = "diameter", optional = true },
      },
    },
  }
end
