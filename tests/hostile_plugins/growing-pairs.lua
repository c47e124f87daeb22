-- expect: nothing
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Adds to a table while going through it",
  checks = {
    { code = "attack", severity = "error", summary = "Adds to a table while going through it", run = function(ctx)
      local t = { a = 1 }
      for key in pairs(t) do t[key .. "x"] = 1 end
    end },
  },
}
