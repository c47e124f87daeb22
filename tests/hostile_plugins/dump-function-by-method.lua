-- expect: INVALID_ARGUMENT: attempt to call a nil value (method 'dump')
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Makes bytecode through a method",
  checks = {
    { code = "attack", severity = "error", summary = "Makes bytecode through a method", run = function(ctx)
      (""):dump()
    end },
  },
}
