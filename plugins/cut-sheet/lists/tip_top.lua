-- The tip-top: tube in sixty-fourths against the tip.
return function(ctx)
  local tip_top = ctx.design.tip_top
  return {
    {
      title = "Tip-top",
      narrow = true,
      datum = "",
      empty = "No tip-top in this design.",
      note = "Hot melt lets it come off again (common practice).",
      rows = tip_top and {
        {
          item = tip_top.id or "tip-top",
          tube = tip_top.tube_bore and tip_top.tube_bore.mm,
          tip = ctx:get("sections.tip_diameter_mm"),
          clearance = ctx:get("fit.tip_tube_clearance_mm"),
        },
      } or {},
      columns = {
        { key = "tick", title = "", kind = "tick" },
        { key = "item", title = "", kind = "text" },
        { key = "tube", title = "tube", kind = "tube", strong = true },
        { key = "tip", title = "tip of the blank", kind = "diameter" },
        { key = "clearance", title = "clearance", kind = "diameter" },
      },
    },
  }
end
