-- expect: INVALID_ARGUMENT: \x1b[2J
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Speaks to the terminal through an error",
  checks = {
    { code = "attack", severity = "error", summary = "Speaks to the terminal through an error", run = function(ctx)
      error("\27[2J")
    end },
  },
}
