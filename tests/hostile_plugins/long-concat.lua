-- expect: RESOURCE_EXHAUSTED: ran for more than
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Joins what is not there",
  checks = {
    { code = "attack", severity = "error", summary = "Joins what is not there", run = function(ctx)
      table.concat(setmetatable({}, { __index = function() return "" end }), "", 1, 1 << 50)
    end },
  },
}
