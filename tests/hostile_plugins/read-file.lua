-- expect: INVALID_ARGUMENT: there is no 'io' here
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Reads a file",
  checks = {
    { code = "attack", severity = "error", summary = "Reads a file", run = function(ctx)
      ctx:emit { message = io.open("/etc/passwd"):read() }
    end },
  },
}
