-- expect: RESOURCE_EXHAUSTED: long-find.lua:6: ran for more than
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Searches a long text for a long text",
  checks = {
    { code = "attack", severity = "error", summary = "Searches a long text for a long text", run = function(ctx)
      for _ = 1, 1e9 do string.find(string.rep("a", 4e6) .. "b", string.rep("a", 2e6) .. "c", 1, true) end
    end },
  },
}
