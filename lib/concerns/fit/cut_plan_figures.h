// The figures of the plan of the cut: part of FitFigures.
#ifndef WITHY_FIT_CUT_PLAN_FIGURES_H_
#define WITHY_FIT_CUT_PLAN_FIGURES_H_

#include <vector>

#include "withy/rod/figure.h"

namespace withy {

std::vector<Figure> CutPlanFigures();
std::vector<Figure> RestingFigures();  // of its `now` and `planned`

}  // namespace withy

#endif  // WITHY_FIT_CUT_PLAN_FIGURES_H_
