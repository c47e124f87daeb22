-- expect: RESOURCE_EXHAUSTED: memory-tables.lua:7: needs more than
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Fills memory with tables",
  checks = {
    { code = "attack", severity = "error", summary = "Fills memory with tables", run = function(ctx)
      local t = {}
      for i = 1, math.huge do t[i] = {} end
    end },
  },
}
