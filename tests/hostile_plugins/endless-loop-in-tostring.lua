-- expect: RESOURCE_EXHAUSTED: ran for more than
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Never ends while its error is shown",
  checks = {
    { code = "attack", severity = "error", summary = "Never ends while its error is shown", run = function(ctx)
      error(setmetatable({}, { __tostring = function() while true do end end }))
    end },
  },
}
