-- expect: INVALID_ARGUMENT: xxxx
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Gives an error of a megabyte",
  checks = {
    { code = "attack", severity = "error", summary = "Gives an error of a megabyte", run = function(ctx)
      error(string.rep("x", 1e6))
    end },
  },
}
