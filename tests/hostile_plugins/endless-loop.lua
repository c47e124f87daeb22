-- expect: RESOURCE_EXHAUSTED: endless-loop.lua:6: ran for more than
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Never ends",
  checks = {
    { code = "attack", severity = "error", summary = "Never ends", run = function(ctx)
      while true do end
    end },
  },
}
