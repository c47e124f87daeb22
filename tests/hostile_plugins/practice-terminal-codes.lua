-- expect: INVALID_ARGUMENT: one line of UTF-8 without control characters
-- A source that every finding would quote.
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Practices that are none",
  practices = { { technique = "casting", source = "\27]0;owned\7", guides = { 8, 9 } } },
}
