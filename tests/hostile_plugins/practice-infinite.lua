-- expect: INVALID_ARGUMENT: practices[1]: 'guides' is { least, most }
-- As many guides as you like.
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Practices that are none",
  practices = { { technique = "casting", source = "s", guides = { 1, math.huge } } },
}
