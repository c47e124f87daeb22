-- expect: INVALID_ARGUMENT: attempt to index a nil value
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Changes what a design is",
  checks = {
    { code = "attack", severity = "error", summary = "Changes what a design is", run = function(ctx)
      getmetatable(ctx.design).__index = nil
    end },
  },
}
