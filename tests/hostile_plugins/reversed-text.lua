-- expect: INVALID_ARGUMENT: one line of UTF-8 without control characters
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Turns the reading direction around",
  checks = {
    { code = "attack", severity = "error", summary = "Turns the reading direction around", run = function(ctx)
      ctx:emit { message = "\u{202e}txt.exe" }
    end },
  },
}
