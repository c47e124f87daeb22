-- expect: INVALID_ARGUMENT: there is no 'load' here
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Loads bytecode",
  checks = {
    { code = "attack", severity = "error", summary = "Loads bytecode", run = function(ctx)
      load("\27Lua")()
    end },
  },
}
