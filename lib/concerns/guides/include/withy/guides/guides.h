// Guides: where is each guide on the rod, what is under it, and is it what is usual?
#ifndef WITHY_GUIDES_GUIDES_H_
#define WITHY_GUIDES_GUIDES_H_

#include <optional>
#include <vector>

#include "withy/findings/finding.h"
#include "withy/fit/fit.h"
#include "withy/guides/practice.h"
#include "withy/rod/figure.h"
#include "withy/rod/rod.h"

namespace withy {

struct GuideAnswer {
  int guide = 0;                           // in Rod::guides
  std::optional<double> blank_diameter_m;  // under the ring's plane
};

struct GuidesAnswers {
  std::vector<GuideAnswer> guides;  // butt first; those without a place last
  Practice practice;                // of the order's technique: what they are judged by
  std::vector<Unknown> unknowns;
};

// `practices`: of plugins (practice.h).
GuidesAnswers ComputeGuides(const Rod& rod, const std::vector<Practice>& practices = {});

void CheckGuides(const Rod& rod, const FitAnswers& fit, const GuidesAnswers& answers, std::vector<Finding>& findings);
std::vector<Code> GuidesCodes();
std::vector<Figure> GuidesFigures();

}  // namespace withy

#endif  // WITHY_GUIDES_GUIDES_H_
