-- expect: INVALID_ARGUMENT: there is no 'package' here
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Loads a library",
  checks = {
    { code = "attack", severity = "error", summary = "Loads a library", run = function(ctx)
      package.loadlib("libc.so.6", "system")
    end },
  },
}
