-- expect: INVALID_ARGUMENT: there is no 'os' here
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Runs a program",
  checks = {
    { code = "attack", severity = "error", summary = "Runs a program", run = function(ctx)
      os.execute("true")
    end },
  },
}
