-- expect: RESOURCE_EXHAUSTED: ran for more than
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Never ends while sorting",
  checks = {
    { code = "attack", severity = "error", summary = "Never ends while sorting", run = function(ctx)
      table.sort({ 1, 2, 3 }, function() while true do end end)
    end },
  },
}
