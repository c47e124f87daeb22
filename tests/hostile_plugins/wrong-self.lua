-- expect: nothing
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Calls methods on what they are not methods of",
  checks = {
    { code = "attack", severity = "error", summary = "Calls methods on what they are not methods of", run = function(ctx)
      for _, name in ipairs { "get", "need", "find", "emit", "refuse" } do
        assert(not pcall(ctx[name]) and not pcall(ctx[name], ctx) and not pcall(ctx[name], ctx.design, {}))
      end
    end },
  },
}
