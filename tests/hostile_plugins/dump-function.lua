-- expect: INVALID_ARGUMENT: attempt to call a nil value (field 'dump')
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Makes bytecode",
  checks = {
    { code = "attack", severity = "error", summary = "Makes bytecode", run = function(ctx)
      string.dump(function() end)
    end },
  },
}
