-- expect: nothing
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Uses a design as what it is not",
  checks = {
    { code = "attack", severity = "error", summary = "Uses a design as what it is not", run = function(ctx)
      local d = ctx.design
      assert(not pcall(function() return #d end) and not pcall(function() return d() end) and not pcall(function() return d + 1 end))
      assert(not pcall(function() return d < d end) and not pcall(function() return d .. "" end))
      assert(not pcall(next, d) and not pcall(rawget, d, "x") and not pcall(table.insert, d.guides, 1))
      assert(not pcall(function() return d[1.5] end) and not pcall(function() return d[0 / 0] end))
      assert(d.guides[0 / 0] == nil and d.guides[1 << 62] == nil and d.guides[-1] == nil)
    end },
  },
}
