-- expect: INVALID_ARGUMENT: one line of UTF-8 without control characters
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Speaks to the terminal",
  checks = {
    { code = "attack", severity = "error", summary = "Speaks to the terminal", run = function(ctx)
      ctx:emit { message = "\27]0;title\7\27[2J" }
    end },
  },
}
