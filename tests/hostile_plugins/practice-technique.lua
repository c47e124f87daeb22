-- expect: INVALID_ARGUMENT: there is no technique 'castng'; did you mean 'casting'?
-- A rule that would never be heard of.
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Practices that are none",
  practices = { { technique = "castng", source = "s", guides = { 8, 9 } } },
}
