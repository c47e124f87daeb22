-- expect: nothing
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Sorts with a comparison that lies and grows the list",
  checks = {
    { code = "attack", severity = "error", summary = "Sorts with a comparison that lies and grows the list", run = function(ctx)
      local t = {}
      for i = 1, 1000 do t[i] = (i * 7919) % 1000 end
      table.sort(t, function() return true end)
      table.sort(t, function(a, b) t[#t + 1] = a return a > b end)
    end },
  },
}
