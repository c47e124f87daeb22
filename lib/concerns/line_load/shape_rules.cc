#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <string>

#include "absl/strings/str_format.h"
#include "rules.h"

namespace withy::line_load {
namespace {

constexpr double kDeg = 180 / std::numbers::pi;

constexpr Code kLineOnBlank = {
    .name = "line_load/line-on-blank",
    .severity = Severity::kWarning,
    .summary = "Under a load the line lies on the blank",
    .why =
        "With the rings above, the line cuts the corner of the bend from ring to ring. Where it lies on the blank it "
        "rubs, "
        "and a cast loses to it.",
    .action =
        "Move the guides on both sides of it closer together, take a higher ring, or add a guide; then load the rod on "
        "the "
        "bench and look.",
};

// The worst span of each load. Rings below: the line lifts off the blank as it bends.
void JudgeLineOnBlank(const View& view, std::vector<Finding>& findings) {
  for (const StrungRod& strung : view.answers.cases) {
    if (!strung.solved()) continue;
    int worst = -1, spans = 0;
    for (std::size_t k = 0; k < strung.clearances.size(); ++k) {
      if (!CanTouch(strung, k) || strung.clearances[k].least >= TouchesBelowM(strung)) continue;
      ++spans;
      if (worst < 0 || strung.clearances[k].least < strung.clearances[worst].least) worst = static_cast<int>(k);
    }
    if (worst < 0) continue;
    const Clearance& least = strung.clearances[worst];
    const double mm = least.least * 1000;
    findings.push_back(
        MakeFinding(kLineOnBlank, RingPath(view, worst - 1),
                    absl::StrFormat("under load '%s' a straight line from %s to %s would be %.2f mm inside the blank%s",
                                    strung.id, RingName(view, worst - 1), RingName(view, worst), -mm,
                                    spans > 1 ? absl::StrFormat(", the worst of %d spans", spans) : std::string()),
                    {{"clearance_mm", mm}, {"spans", static_cast<double>(spans)}}));
    findings.back().related = {RingPath(view, worst), strung.at};
    findings.back().from_tip_mm = FromTipMm(view, strung, least.s);
  }
}

constexpr Code kTurnUneven = {
    .name = "line_load/turn-uneven",
    .severity = Severity::kAdvice,
    .summary = "One guide turns the line far more than its neighbours",
    .why =
        "It takes the load, the wear and the friction of several, and the blank under it a force that the others do "
        "not "
        "share.",
    .action =
        "Move its neighbours towards it, or look at the height of its ring; `withy guides` proposes places that share "
        "the "
        "turn.",
};

// Common practice, no source: by eye a builder sees a kink of some degrees, and moves a guide that turns the line half
// as much again as the next ones.
constexpr double kUnevenFactor = 1.5;
constexpr double kUnevenMoreDeg = 5;

double TurnDeg(const StrungRod& strung, std::size_t ring) {
  return std::abs(strung.bent.rings[ring].turn) * kDeg;
}

// Of the guides next to it, the tip-top left out: what it turns is up to the direction of the pull.
double NeighboursDeg(const StrungRod& strung, std::size_t ring, std::size_t guides) {
  double sum = 0;
  int count = 0;
  for (const std::size_t other : {ring - 1, ring + 1}) {
    if (other >= guides) continue;  // before the first: wraps around
    sum += TurnDeg(strung, other);
    ++count;
  }
  return sum / count;
}

// Each guide under the load that shows it most.
void JudgeTurnUneven(const View& view, std::vector<Finding>& findings) {
  std::map<std::size_t, Finding> worst;
  for (const StrungRod& strung : view.answers.cases) {
    const std::size_t guides = strung.rings.empty() ? 0 : strung.rings.size() - 1;
    if (!strung.solved() || guides < 2) continue;
    for (std::size_t k = 0; k < guides; ++k) {
      const double turn = TurnDeg(strung, k), others = NeighboursDeg(strung, k, guides);
      if (turn < kUnevenFactor * others || turn < others + kUnevenMoreDeg) continue;
      const auto before = worst.find(k);
      if (before != worst.end() && before->second.numbers[0].value >= turn) continue;
      const int ring = static_cast<int>(k);
      Finding finding = MakeFinding(
          kTurnUneven, RingPath(view, ring),
          absl::StrFormat("under load '%s' %s turns the line by %.1f degrees, the guides next to it by %.1f", strung.id,
                          RingName(view, ring), turn, others),
          {{"turn_deg", turn}, {"neighbours_deg", others}});
      finding.related = {strung.at};
      finding.from_tip_mm = FromTipMm(view, strung, strung.rings[k].s);
      worst.insert_or_assign(k, std::move(finding));
    }
  }
  for (auto& [ring, finding] : worst) findings.push_back(std::move(finding));
}

constexpr Code kFlatSpot = {
    .name = "line_load/flat-spot",
    .severity = Severity::kAdvice,
    .summary = "Between two guides the blank bends far less, or far more, than on both sides of it",
    .why =
        "A bend that runs evenly into the butt spreads the load. A flat spot leaves its share to what is next to it, "
        "and a "
        "hinge is where a blank breaks.",
    .action =
        "Where walls or diameters of the blank were measured there, measure them again; a ferrule is stiff and needs "
        "no "
        "cure. Else move a guide into it and load the rod on the bench.",
};

// The measure is the turn of the blank between two rings over their distance. Common practice, no source: a bend that
// halves, or doubles, between neighbours and comes back is seen by eye.
constexpr double kFlatShare = 0.5, kHingeFactor = 2;
// A rod that is nearly straight has no shape to judge.
constexpr double kBentDeg = 20;

// Degrees per metre, span by span; the first one from the clamp.
std::vector<double> BendOfSpans(const StrungRod& strung) {
  std::vector<double> bend;
  double angle = strung.load.clamp_angle, s = 0;
  for (std::size_t k = 0; k < strung.rings.size(); ++k) {
    const double next = strung.bent.rings[k].angle;
    bend.push_back(std::abs(next - angle) * kDeg / (strung.rings[k].s - s));
    angle = next;
    s = strung.rings[k].s;
  }
  return bend;
}

// The last span is left out: whatever the rod, its bend runs out to nothing at the tip.
void JudgeFlatSpot(const View& view, std::vector<Finding>& findings) {
  std::map<std::size_t, Finding> worst;
  for (const StrungRod& strung : view.answers.cases) {
    if (!strung.solved() || std::abs(strung.tip_angle->value()) * kDeg < kBentDeg) continue;
    const std::vector<double> bend = BendOfSpans(strung);
    for (std::size_t k = 1; k + 2 < bend.size(); ++k) {
      const double least = std::min(bend[k - 1], bend[k + 1]), most = std::max(bend[k - 1], bend[k + 1]);
      const bool flat = bend[k] < kFlatShare * least;
      if ((!flat && bend[k] < kHingeFactor * most) || worst.contains(k)) continue;
      const int ring = static_cast<int>(k);
      Finding finding = MakeFinding(
          kFlatSpot, RingPath(view, ring - 1),
          absl::StrFormat(
              "under load '%s' the blank bends by %.1f degrees a metre between %s and %s, and by %.1f and %.1f "
              "on its two sides",
              strung.id, bend[k], RingName(view, ring - 1), RingName(view, ring), bend[k - 1], bend[k + 1]),
          {{"bend_deg_m", bend[k]}, {"behind_deg_m", bend[k - 1]}, {"ahead_deg_m", bend[k + 1]}});
      finding.related = {RingPath(view, ring), strung.at};
      finding.from_tip_mm = FromTipMm(view, strung, (strung.rings[k - 1].s + strung.rings[k].s) / 2);
      worst.emplace(k, std::move(finding));
    }
  }
  for (auto& [span, finding] : worst) findings.push_back(std::move(finding));
}

constexpr Code kTipTopOverloaded = {
    .name = "line_load/tip-top-overloaded",
    .severity = Severity::kAdvice,
    .summary = "The tip-top does work that the guide behind it should do",
    .why =
        "The line comes to it at an angle to the blank's tip: the thinnest part of the rod is bent sharply over its "
        "last "
        "span, and the tip-top's ring wears.",
    .action = "Move the last guide towards the tip, or put one more in between.",
};

// The last span is closed by the tip-top on one side only, and asks half a guide's turn of it. Common practice, no
// source: half as much again as any guide turns is seen by eye.
constexpr double kOverloadFactor = 1.5;
constexpr double kOverloadDeg = 5;

void JudgeTipTopOverloaded(const View& view, std::vector<Finding>& findings) {
  const StrungRod* worst = nullptr;
  double worst_deg = 0;
  for (const StrungRod& strung : view.answers.cases) {
    if (!strung.solved() || strung.most_turned < 0) continue;
    const RingUnderLine& tip = strung.bent.rings.back();
    const double deg = std::abs(std::remainder(tip.angle - tip.line_in, 2 * std::numbers::pi)) * kDeg;
    const double most = TurnDeg(strung, strung.most_turned);
    if (deg < kOverloadDeg || 2 * deg < kOverloadFactor * most || deg <= worst_deg) continue;
    worst = &strung;
    worst_deg = deg;
  }
  if (worst == nullptr) return;
  const double most = TurnDeg(*worst, worst->most_turned);
  findings.push_back(MakeFinding(
      kTipTopOverloaded, view.rod.tip_top->at,
      absl::StrFormat(
          "under load '%s' the line comes to the tip-top at %.1f degrees to the blank's tip, and no guide turns it "
          "by more than %.1f",
          worst->id, worst_deg, most),
      {{"to_tip_deg", worst_deg}, {"most_turn_deg", most}}));
  findings.back().related = {RingPath(view, static_cast<int>(worst->rings.size()) - 2), worst->at};
  findings.back().from_tip_mm = FromTipMm(view, *worst, worst->rings.back().s);
}

}  // namespace

std::vector<Rule<View>> ShapeRules() {
  return {{&kLineOnBlank, JudgeLineOnBlank},
          {&kTurnUneven, JudgeTurnUneven},
          {&kFlatSpot, JudgeFlatSpot},
          {&kTipTopOverloaded, JudgeTipTopOverloaded}};
}

}  // namespace withy::line_load
