-- expect: RESOURCE_EXHAUSTED: long-move.lua:6: ran for more than
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Moves what is not there",
  checks = {
    { code = "attack", severity = "error", summary = "Moves what is not there", run = function(ctx)
      table.move({}, 1, 1 << 50, 2)
    end },
  },
}
