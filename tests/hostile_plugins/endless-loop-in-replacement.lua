-- expect: RESOURCE_EXHAUSTED: ran for more than
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Never ends while replacing",
  checks = {
    { code = "attack", severity = "error", summary = "Never ends while replacing", run = function(ctx)
      string.gsub("x", "x", function() while true do end end)
    end },
  },
}
