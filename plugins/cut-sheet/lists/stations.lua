-- One list for each section: its diameters, after the cuts.
return function(ctx)
  local lists = {}
  for number, section in ipairs(ctx:get("sections.sections") or {}) do
    local rows = {}
    local cut = section.cut_butt_mm or 0
    for i, at in ipairs(section.at_mm) do
      rows[i] = {
        item = ("%d"):format(i),
        at = at,
        from_cut = cut > 0 and at - cut or nil,
        outer = section.outer_mm[i],
        wall = section.wall_mm[i],
      }
    end
    local columns = {
      { key = "at", title = "from the butt", kind = "length", step = 1, inch = 16 },
      { key = "from_cut", title = "from the cut", kind = "length", step = 1, inch = 16, datum = "the new butt face" },
      { key = "outer", title = "outer", kind = "diameter", strong = true },
      { key = "wall", title = "wall", kind = "diameter", optional = true },
    }
    if cut == 0 then
      table.remove(columns, 2)
    end
    lists[#lists + 1] = {
      title = "Section " .. (section.id or number),
      narrow = true,
      datum = "the butt end of the section as supplied",
      empty = "No diameters are known.",
      rows = rows,
      columns = columns,
    }
  end
  return lists
end
