#include <algorithm>

#include "absl/strings/str_cat.h"
#include "rules.h"

namespace withy {
namespace line_load {

std::string RingName(const View& view, int ring) {
  const std::vector<int>& guides = view.answers.train->guides;
  if (ring < 0) return "the reel";
  if (ring >= static_cast<int>(guides.size())) return "the tip-top";
  return absl::StrCat("'", view.rod.guides[guides[ring]].id, "'");
}

FieldPath RingPath(const View& view, int ring) {
  const std::vector<int>& guides = view.answers.train->guides;
  if (ring < 0) return FieldPath().Field("intent").Field("reel");
  return ring < static_cast<int>(guides.size()) ? view.rod.guides[guides[ring]].at : view.rod.tip_top->at;
}

std::optional<double> FromTipMm(const View& view, const StrungRod& strung, double s_m) {
  if (!view.rod.overall_m) return std::nullopt;
  return (view.rod.overall_m->value() - strung.clamp_m - s_m) * 1000;
}

double TouchesBelowM(const StrungRod& strung) {
  constexpr double kRoundingM = 1e-7;
  return -std::max(strung.bent.error, kRoundingM);
}

bool CanTouch(const StrungRod& strung, std::size_t span) {
  const auto in_plane = [&](std::size_t ring) { return strung.rings[ring].turned == 0; };
  return strung.load.side * strung.sense < 0 && in_plane(span) && (span == 0 || in_plane(span - 1));
}

namespace {

std::vector<Rule<View>> Rules() {
  return Joined({ShapeRules(), LoadRules(), TestRules()});
}

}  // namespace
}  // namespace line_load

void CheckLineLoad(const Rod& rod, const LineLoadAnswers& answers, std::vector<Finding>& findings) {
  Judge(line_load::Rules(), line_load::View{rod, answers}, findings);
}

std::vector<Code> LineLoadCodes() {
  return CodesOf(line_load::Rules());
}

}  // namespace withy
