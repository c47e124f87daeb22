#include <algorithm>

#include "rules.h"

namespace withy {
namespace fit {

bool BlankRestsIn(const Rod& rod, const Part& part) {
  if (part.kind != "one_piece_handle" || !part.on.empty()) return false;
  if (rod.rest_basis != RestBasis::kDryFit && rod.rest_basis != RestBasis::kGiven) return false;
  if (!rod.blank_butt_m || !part.start.from_butt_m || !part.length) return false;
  const double own_m = rod.blank_butt_m->value() - part.start.from_butt_m->value();
  return own_m > 0 && own_m < part.length->value.meters();
}

double BlankPlusMinus(const Rod& rod) {
  double most = 0;
  for (const Section& section : rod.blank.sections) {
    most = std::max(most, section.taper.diameter_plus_minus_m.value_or(0));
  }
  return most;
}

}  // namespace fit

namespace {

std::vector<Rule<fit::View>> Rules() {
  return Joined({fit::LengthRules(), fit::RestRules(), fit::SawRules(), fit::CutRules(), fit::StackRules(), fit::BoreRules(),
                 fit::SlideRules(), fit::ReadingRules(), fit::ArborRules(), fit::ArborWayRules(), fit::HoldRules(),
                 fit::JointRules()});
}

}  // namespace

void CheckFit(const Rod& rod, const SectionsAnswers& sections, const FitAnswers& answers,
              std::vector<Finding>& findings) {
  Judge(Rules(), fit::View{rod, sections, answers}, findings);
}

std::vector<Code> FitCodes() {
  return CodesOf(Rules());
}

}  // namespace withy
