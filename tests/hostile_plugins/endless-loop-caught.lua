-- expect: RESOURCE_EXHAUSTED: ran for more than
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Catches the end and goes on",
  checks = {
    { code = "attack", severity = "error", summary = "Catches the end and goes on", run = function(ctx)
      while true do pcall(function() while true do end end) end
    end },
  },
}
