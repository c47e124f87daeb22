// The explicit list of all figures, in the order in which the floors and concerns run.
#include <vector>

#include "withy/balance/balance.h"
#include "withy/bending/bending.h"
#include "withy/bonding/bonding.h"
#include "withy/fit/fit.h"
#include "withy/guides/guides.h"
#include "withy/guides/train_plan.h"
#include "withy/line_load/line_load.h"
#include "withy/review/why.h"
#include "withy/sections/sections.h"
#include "withy/wraps/wraps.h"

namespace withy {
namespace {

std::vector<Figure> AllFigures() {
  std::vector<Figure> all;
  for (const auto& figures : {SectionsFigures(), BendingFigures(), LineLoadFigures(), FitFigures(), BondingFigures(), GuidesFigures(), PlacementFigures(), WrapsFigures(),
                              BalanceFigures(), RodFigures()}) {
    all.insert(all.end(), figures.begin(), figures.end());
  }
  return all;
}

}  // namespace

const std::vector<Figure>& Figures() {
  static const std::vector<Figure>* const all = new std::vector<Figure>(AllFigures());
  return *all;
}

}  // namespace withy
