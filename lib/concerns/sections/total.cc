#include "withy/sections/total.h"

namespace withy {

TotalFit FitTotal(const std::vector<Weighed>& things, const Uncertain& total_kg) {
  TotalFit fit;
  Uncertain sum;
  double variance = 0;
  for (const Weighed& thing : things) {
    sum = sum + thing.mass_kg;
    if (!thing.measured) variance += thing.mass_kg.plus_minus() * thing.mass_kg.plus_minus();
  }
  fit.misfit = total_kg - sum;
  if (!(variance > 0)) return fit;
  std::vector<Uncertain> ratios;
  for (const Weighed& thing : things) {
    if (thing.measured) {
      ratios.push_back(Uncertain(1));
      continue;
    }
    const double pm = thing.mass_kg.plus_minus();
    const Uncertain fitted = thing.mass_kg + fit.misfit * Uncertain(pm * pm / variance);
    if (!(fitted.value() > 0) || !(thing.mass_kg.value() > 0)) return fit;
    ratios.push_back(fitted / thing.mass_kg);
  }
  fit.ratios = ratios;
  fit.gave_way = true;
  return fit;
}

}  // namespace withy
