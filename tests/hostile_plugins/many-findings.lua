-- expect: RESOURCE_EXHAUSTED: gives out more than
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Gives no end of findings",
  checks = {
    { code = "attack", severity = "error", summary = "Gives no end of findings", run = function(ctx)
      while true do ctx:emit { message = string.rep("x", 1500) } end
    end },
  },
}
