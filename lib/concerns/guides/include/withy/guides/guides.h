// Guides: where is each guide on the rod, and what is under it?
#ifndef WITHY_GUIDES_GUIDES_H_
#define WITHY_GUIDES_GUIDES_H_

#include <optional>
#include <vector>

#include "withy/findings/finding.h"
#include "withy/fit/fit.h"
#include "withy/rod/figure.h"
#include "withy/rod/rod.h"

namespace withy {

struct GuideAnswer {
  int guide = 0;                           // in Rod::guides
  std::optional<double> blank_diameter_m;  // under the ring's plane
};

struct GuidesAnswers {
  std::vector<GuideAnswer> guides;  // butt first; those without a place last
  std::vector<Unknown> unknowns;
};

GuidesAnswers ComputeGuides(const Rod& rod);

void CheckGuides(const Rod& rod, const FitAnswers& fit, const GuidesAnswers& answers, std::vector<Finding>& findings);
std::vector<Code> GuidesCodes();
std::vector<Figure> GuidesFigures();

}  // namespace withy

#endif  // WITHY_GUIDES_GUIDES_H_
