-- expect: INVALID_ARGUMENT: practices[1]: 'butt_guide_from_reel_mm' is { least, most }
-- A range with nothing in it.
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Practices that are none",
  practices = { { technique = "casting", source = "s", butt_guide_from_reel_mm = { 600, 300 } } },
}
