// Where the figures of `wraps` come from.
#include "withy/wraps/wraps.h"

namespace withy {

std::vector<Figure> WrapsFigures() {
  constexpr std::string_view kSpiral = "own derivation: helix on the mean centre-line diameter of each layer";
  return {
      {"wraps.wraps[].start_mm",
       "its place as written; else from the foot or the thing it is on: a foot's outer end plus what goes beyond it",
       "plane geometry",
       {"wraps[=].place", "wraps[=].beyond_foot", "guides.guides[id=.on].from_butt_mm", "fit.parts[id=.on].start_mm",
        "log[placed.what=].placed.place"}},
      {"wraps.wraps[].length_mm",
       "as written; else turns x thread; else over the foot from beyond its end to before the ring",
       "plane geometry",
       {"wraps[=].length", "wraps[=].turns", "wraps[=].beyond_foot", "wraps[=].before_ring",
        "threads[id=.thread].diameter", "threads[id=.thread].turns_per_10_mm"}},
      {"wraps.wraps[].turns",
       "length / thread diameter in each layer; of a ramp in the mean number of layers",
       kSpiral,
       {"wraps.wraps[=].length_mm", "wraps[=].layers", "wraps[=].turns", "wraps[=].ramp.high",
        "threads[id=.thread].diameter", "threads[id=.thread].turns_per_10_mm", "threads[id=.thread].tex"}},
      {"wraps.wraps[].thread_length_mm",
       "turns x sqrt((pi D)^2 + d^2), D of the thread's centre line on the bare blank, layer by layer",
       kSpiral,
       {"wraps.wraps[=].turns", "wraps.wraps[=].start_mm", "fit.blank_butt_mm", "sections.sections[].outer_mm",
        "threads[id=.thread].diameter", "threads[id=.thread].turns_per_10_mm"}},
      {"wraps.wraps[].mass_g",
       "thread length x its mass per length + density x pi f (D + f) (length + what goes past the thread) per finish",
       "own derivation: annulus of a film",
       {"wraps.wraps[=].thread_length_mm", "wraps.wraps[=].length_mm", "threads[id=.thread].tex", "finishes[].film",
        "finishes[].coats", "finishes[].beyond_thread", "finishes[].mix.density"}},
      {"wraps.threads[].length_mm",
       "sum over the wraps of this thread, no waste",
       "plane geometry",
       {"wraps.wraps[thread=].thread_length_mm"}},
  };
}

}  // namespace withy
