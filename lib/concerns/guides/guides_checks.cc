#include <algorithm>

#include "places.h"
#include "rules.h"

namespace withy {
namespace guides {

std::vector<const Guide*> AlongTheRod(const View& view) {
  const Places places(view.rod.guides);
  const std::optional<int> misplaced = places.InOrder() ? std::nullopt : places.Culprit();
  std::vector<const Guide*> guides;
  for (std::size_t i = 0; i < view.rod.guides.size(); ++i) {
    if (view.rod.guides[i].from_tip && static_cast<int>(i) != misplaced) guides.push_back(&view.rod.guides[i]);
  }
  std::stable_sort(guides.begin(), guides.end(),
                   [](const Guide* a, const Guide* b) { return a->from_tip->value > b->from_tip->value; });
  return guides;
}

std::optional<Span> FeetOn(Origin origin, const Guide& guide) {
  std::optional<Span> span = SpanOn(origin, guide.ring, 0);
  if (!span || !guide.foot_length) return span;
  const double foot_m = std::max(0.0, guide.foot_length->value.meters());
  const bool both = guide.feet() == 2;
  if (both || guide.foot_towards != End::kTip) span->start -= foot_m;
  if (both || guide.foot_towards == End::kTip) span->end += foot_m;
  return span;
}

Finding AtGuide(const View& view, const Code& code, const Guide& guide, std::string message,
                std::vector<Number> numbers) {
  Finding finding =
      MakeFinding(code, guide.from_tip ? guide.from_tip->at : guide.at, std::move(message), std::move(numbers));
  finding.from_tip_mm = view.rod.FromTipMm(guide.ring);
  // what would stand off the rod is nowhere on it
  const auto on_rod = [&](double mm) { return mm >= 0 && mm <= view.rod.overall_m->value() * 1000; };
  if (finding.from_tip_mm && !on_rod(*finding.from_tip_mm)) finding.from_tip_mm.reset();
  return finding;
}

}  // namespace guides

namespace {

std::vector<Rule<guides::View>> Rules() {
  return Joined({guides::SpacingRules(), guides::PlaceRules(), guides::RingRules(), guides::TipRules(),
                 guides::ConeRules(), guides::PracticeRules()});
}

}  // namespace

void CheckGuides(const Rod& rod, const FitAnswers& fit, const GuidesAnswers& answers, std::vector<Finding>& findings) {
  Judge(Rules(), guides::View{rod, fit, answers}, findings);
}

std::vector<Code> GuidesCodes() {
  return CodesOf(Rules());
}

}  // namespace withy
