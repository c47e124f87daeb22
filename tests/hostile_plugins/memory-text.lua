-- expect: RESOURCE_EXHAUSTED: memory-text.lua:7: needs more than
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Fills memory with text",
  checks = {
    { code = "attack", severity = "error", summary = "Fills memory with text", run = function(ctx)
      local s = "x"
      while true do s = s .. s end
    end },
  },
}
