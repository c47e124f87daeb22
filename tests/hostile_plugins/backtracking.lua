-- expect: RESOURCE_EXHAUSTED: backtracking.lua:6: ran for more than
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Never ends inside one match",
  checks = {
    { code = "attack", severity = "error", summary = "Never ends inside one match", run = function(ctx)
      string.find(string.rep("a", 100), string.rep("a*", 30) .. "b")
    end },
  },
}
