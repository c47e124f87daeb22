-- expect: INVALID_ARGUMENT: '__gc' is not part of
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Never ends in a finalizer",
  checks = {
    { code = "attack", severity = "error", summary = "Never ends in a finalizer", run = function(ctx)
      setmetatable({}, { __gc = function() while true do end end })
    end },
  },
}
