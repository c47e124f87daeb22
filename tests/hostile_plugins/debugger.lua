-- expect: INVALID_ARGUMENT: there is no 'debug' here
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Reaches for the registry",
  checks = {
    { code = "attack", severity = "error", summary = "Reaches for the registry", run = function(ctx)
      debug.getregistry()
    end },
  },
}
