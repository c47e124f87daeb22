-- expect: INVALID_ARGUMENT: read-only
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Changes the design",
  checks = {
    { code = "attack", severity = "error", summary = "Changes the design", run = function(ctx)
      ctx.design.identity.name = "mine"
    end },
  },
}
