-- expect: INVALID_ARGUMENT: there is no module '../../../etc/passwd'
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Loads a file from elsewhere",
  checks = {
    { code = "attack", severity = "error", summary = "Loads a file from elsewhere", run = function(ctx)
      require "../../../etc/passwd"
    end },
  },
}
