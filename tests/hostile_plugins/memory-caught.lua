-- expect: RESOURCE_EXHAUSTED: needs more than
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Catches the end of memory and goes on",
  checks = {
    { code = "attack", severity = "error", summary = "Catches the end of memory and goes on", run = function(ctx)
      local t = {}
      while true do pcall(function() while true do t[#t + 1] = string.rep("x", 1e6) .. #t end end) end
    end },
  },
}
