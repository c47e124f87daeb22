-- expect: RESOURCE_EXHAUSTED: ran for more than
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Never ends in a message handler",
  checks = {
    { code = "attack", severity = "error", summary = "Never ends in a message handler", run = function(ctx)
      xpcall(error, function() while true do end end)
    end },
  },
}
