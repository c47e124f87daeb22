-- expect: INVALID_ARGUMENT: attempt to index a nil value
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Changes what text is",
  checks = {
    { code = "attack", severity = "error", summary = "Changes what text is", run = function(ctx)
      getmetatable("").__index = function() end
    end },
  },
}
