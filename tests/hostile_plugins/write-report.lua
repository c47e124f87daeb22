-- expect: INVALID_ARGUMENT: table expected
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Changes the report",
  checks = {
    { code = "attack", severity = "error", summary = "Changes the report", run = function(ctx)
      rawset(ctx.report, "fit", {})
    end },
  },
}
