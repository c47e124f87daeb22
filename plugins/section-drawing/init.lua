-- Exporter: the blank in its handle, cut along the axis, as a drawing to scale (SVG).
--
-- Lengths and outer diameters are to scale. The gap between bore and blank, often a tenth of a millimetre, is drawn
-- wider than it is, by a factor that stands on it (gaps.lua). Places are from the butt end of the finished rod.
local picture = require "picture"

return {
  api = 1,
  name = "section-drawing",
  version = "1.0.0",
  license = "Apache-2.0",
  summary = "The blank in its handle, cut along the axis",
  exporters = {
    {
      name = "section-drawing",
      extension = "svg",
      summary = "Handle, bore, blank, arbors and counterweights as a drawing to scale, gaps drawn wider",
      options = {
        gaps = { type = "number", default = 5, summary = "how many times as wide a narrow gap is drawn, 1 to 20" },
        scale = {
          type = "number",
          default = 0,
          summary = "mm of the rod for one mm on paper, 1 to 20; 0 = the largest drawing that A4 and Letter hold",
        },
        width_mm = { type = "number", default = 255, summary = "of the drawing on paper, 150 to 800" },
      },
      run = function(ctx)
        ctx:write(ctx.stem .. "-section.svg", picture.make(ctx))
      end,
    },
  },
}
