-- What one club holds for usual, in place of withy's own figures: a plugin without a line of code.
--
-- The club is invented, as are its rules: the table where Ines Averill and her friends build rods on Thursdays.
local rule = "the Thursday table's rule, 2026"

return {
  api = 1,
  name = "club-guides",
  version = "1.0.0",
  license = "Apache-2.0",
  summary = "Where the club puts its guides, and how many",
  practices = {
    {
      technique = "casting",
      source = rule,
      butt_guide_from_reel_mm = { 450, 600 },
      butt_ring_mm = { 8, 12 },
      running_ring_mm = { 4.5, 6 },
      guides_per_foot = 1, -- and one or two more
      guides = { 1, 2 },
    },
    -- Of a fly rod only the place of the butt guide: for the rest withy's own figures hold.
    { technique = "fly", source = rule, butt_guide_from_butt_mm = { 760, 900 } },
  },
}
