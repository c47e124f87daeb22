// Where the figures of `guides` come from.
#include "withy/guides/guides.h"

namespace withy {

std::vector<Figure> GuidesFigures() {
  constexpr std::string_view kAsWritten = "of its model";
  return {
      {"guides.guides[].from_tip_mm",
       "as written; of a guide that the log moved, counted from its new place",
       "custom of the trade: from the tip-top's ring centre to the ring's centre",
       {"guides[=].from_tip", "log[placed.what=].placed.place.from_tip", "log[placed.what=].placed.place.from_butt"}},
      {"guides.guides[].from_butt_mm",
       "tip-top's ring from the butt less the distance from it",
       "plane geometry",
       {"fit.tip_ring_mm", "guides.guides[=].from_tip_mm"}},
      {"guides.guides[].ring_height_mm", kAsWritten, "the model's data", {"guide_models[id=.model].ring_height"}},
      {"guides.guides[].ring_inner_mm", kAsWritten, "the model's data", {"guide_models[id=.model].ring_inner"}},
      {"guides.guides[].blank_diameter_mm",
       "outer diameter of the assembled blank at that place, linear between stations",
       "own definition: piecewise linear",
       {"guides.guides[=].from_butt_mm", "fit.blank_butt_mm", "sections.sections[].outer_mm"}},
      {"guides.guides[].mass_g",
       "as weighed, else of its model",
       "own definition: measured beats catalogue",
       {"guide_models[id=.model].mass", "log[weighed.what=].weighed.mass"}},
  };
}

}  // namespace withy
