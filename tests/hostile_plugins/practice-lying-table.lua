-- expect: INVALID_ARGUMENT: practices[1]: 'guides' is { least, most }
-- Other numbers each time they are asked for.
local asked = 0
local guides = setmetatable({}, { __index = function() asked = asked + 1 return asked end, __len = function() return 2 end })
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Practices that are none",
  practices = { { technique = "casting", source = "s", guides = guides } },
}
