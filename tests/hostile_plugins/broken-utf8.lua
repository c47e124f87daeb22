-- expect: INVALID_ARGUMENT: one line of UTF-8
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Gives bytes that are no text",
  checks = {
    { code = "attack", severity = "error", summary = "Gives bytes that are no text", run = function(ctx)
      ctx:emit { message = "\xff\xfe" }
    end },
  },
}
