-- expect: INVALID_ARGUMENT: practices[1]: 'butt_ring_mm' is { least, most }
-- A limit that nothing is within, and nothing beyond.
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Practices that are none",
  practices = { { technique = "casting", source = "s", butt_ring_mm = { 0 / 0, 12 } } },
}
