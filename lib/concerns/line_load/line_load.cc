#include "withy/line_load/line_load.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "by_tension.h"
#include "withy/units/quantity.h"

namespace withy {
namespace line_load {
namespace {

constexpr double kDegree = std::numbers::pi / 180;
constexpr double kNothingLeftM = 1e-6;  // of blank ahead of the clamp

bool PullsThroughTheLine(const LoadCase& load) {
  return !load.at_tip && load.load_n && load.load_n->value > 0;
}

// One load after another on the same rod and train.
class Bench {
 public:
  Bench(const Rod& rod, const BendingAnswers& bending, const LineTrain& train, Inputs& inputs, LineLoadAnswers& answers)
      : rod_(rod), bending_(bending), train_(train), inputs_(inputs), answers_(answers) {}

  // `figure` is its place in the report, for what cannot be told; empty = none is missed.
  StrungRod Hang(const LoadCase& load, std::size_t index, const std::string& figure) {
    StrungRod strung;
    strung.id = load.id;
    strung.at = load.at;
    strung.load_case = index;
    strung.bent.state = ElasticaState::kBadInput;
    strung.tension_n = inputs_.Add(load.load_n->value, load.load_n->plus_minus.value_or(0), load.load_n->at.ToString());
    std::string missing = SetUp(load, strung);
    if (missing.empty()) {
      Solve(strung);
      if (!strung.told()) missing = absl::StrCat("look again at rings, reel and load: ", strung.bent.why);
    }
    if (!missing.empty() && !figure.empty()) answers_.unknowns.push_back({figure, std::move(missing)});
    return strung;
  }

 private:
  // What keeps the load from being hung, as what to do; empty where nothing does.
  std::string SetUp(const LoadCase& load, StrungRod& strung) const {
    if (std::string wrong = WhatIsWrongWithDirection(load); !wrong.empty()) return wrong;
    if (const auto& friction = rod_.order.friction; friction && !(friction->value >= 0 && friction->value <= 1)) {
      return absl::StrFormat("correct %s: %g is outside 0 to 1", friction->at.ToString(), friction->value);
    }
    const StiffBlank& stiff = *bending_.stiff;
    strung.clamp_m = std::max(load.clamp ? load.clamp->value.meters() : *bending_.held_m, stiff.butt_m);
    if (strung.clamp_m > stiff.butt_m + stiff.beam.length() - kNothingLeftM)
      return "hold the rod on its blank, behind the tip";
    const double first_m = train_.ring_m.front() - strung.clamp_m;
    if (first_m < kNothingLeftM) {
      return train_.guides.empty()
                 ? "hold the rod behind its tip-top"
                 : absl::StrCat("hold the rod behind '", rod_.guides[train_.guides.front()].id, "', its butt guide");
    }
    strung.blank = StiffAheadOf(stiff, strung.clamp_m);
    for (std::size_t k = 0; k < train_.ring_m.size(); ++k) {
      strung.rings.push_back({train_.ring_m[k] - strung.clamp_m, train_.offset_m[k], train_.turned[k]});
    }
    strung.rings.back().s = strung.blank.beam.length();
    strung.load.side = train_.side;
    strung.load.reel_s = train_.reel_m - strung.clamp_m;
    strung.load.reel_offset = train_.reel_height_m;
    strung.load.tension = strung.tension_n->value();
    strung.load.far_angle = load.LineAngleDeg() * kDegree;
    if (rod_.order.friction && rod_.order.friction->value > 0) {
      strung.load.friction = rod_.order.friction->value;
      strung.load.slip = LineSlip::kOut;
    }
    if (strung.load.reel_s < first_m - kNothingLeftM) return "";
    return "measure reel foot and butt guide again: the line would leave the reel ahead of its first ring";
  }

  void Solve(StrungRod& strung) const {
    const Beam& beam = strung.blank.beam;
    strung.bent = SolveStrungBeam(beam, strung.rings, strung.load);
    if (!strung.told()) return;
    if (strung.bent.nodes.front().moment > 0) strung.sense = 1;
    for (std::size_t k = 0; k + 1 < strung.rings.size(); ++k) {
      const auto turn = [&](std::size_t i) { return std::abs(strung.bent.rings[i].turn); };
      if (strung.most_turned < 0 || turn(k) > turn(strung.most_turned)) strung.most_turned = static_cast<int>(k);
    }
    // What stands of a load that folds the rod is a load of its own.
    StrungLoad held = strung.load;
    held.tension *= strung.bent.reached;
    strung.peaks = PeaksOf(beam, strung.blank.outer_m, strung.rings, held, strung.bent);
    strung.clearances = ClearancesOf(beam, strung.blank.outer_m, strung.rings, held, strung.bent);
    if (strung.solved()) SayWithUncertainty(strung);
  }

  const Rod& rod_;
  const BendingAnswers& bending_;
  const LineTrain& train_;
  Inputs& inputs_;
  LineLoadAnswers& answers_;
};

void SayAssumptions(const Rod& rod, LineLoadAnswers& answers) {
  if (rod.order.friction && rod.order.friction->value > 0) {
    answers.assumptions.push_back({rod.order.friction->at, "the line runs out over the rings",
                                   "a fish takes line: each ring then takes off a part of the pull, towards the reel"});
  }
}

// By the weight of rod and all that is on it, held where bending holds it; unset elsewhere.
std::optional<double> OwnDrop(const BendingAnswers& bending, double clamp_m, double butt_deg) {
  constexpr double kSamePlaceM = 1e-6;
  if (!bending.finished || std::abs(bending.finished->clamp_m - clamp_m) > kSamePlaceM) return std::nullopt;
  ElasticaLoad weight;
  weight.gravity_x = -kStandardGravity * std::sin(butt_deg * kDegree);
  weight.gravity_y = -kStandardGravity * std::cos(butt_deg * kDegree);
  const Elastica own = SolveElastica(bending.finished->beam, weight);
  if (own.state != ElasticaState::kSolved) return std::nullopt;
  return -own.tip().y;
}

// The train with every guide in it, and a blank to stand on; empty where both are there.
std::string MissingOf(const Rod& rod, const BendingAnswers& bending, const LineTrain& train) {
  for (std::size_t i = 0; i < rod.guides.size(); ++i) {
    if (std::find(train.guides.begin(), train.guides.end(), static_cast<int>(i)) != train.guides.end()) continue;
    return absl::StrCat("give guide '", rod.guides[i].id, "' a place (guides[].from_tip)");
  }
  if (bending.stiff && bending.held_m) return "";
  return bending.unknowns.empty() ? "describe the blank" : bending.unknowns.front().measure;
}

}  // namespace
}  // namespace line_load

std::string WhatIsWrongWithPulls(const Rod& rod) {
  for (const LoadCase& load : rod.load_cases) {
    if (load.at_tip || line_load::PullsThroughTheLine(load)) continue;
    return absl::StrCat("correct the pull of ", load.at.ToString(), ": lifted or tension, 0.01 to 500 N");
  }
  return "";
}

std::string WhatIsWrongWithDirection(const LoadCase& load) {
  constexpr double kHalfTurnDeg = 180;
  if (!load.line_angle_deg || std::abs(load.line_angle_deg->value) <= kHalfTurnDeg) return "";
  return absl::StrFormat("correct %s: %g degrees are more than half a turn", load.line_angle_deg->at.ToString(),
                         load.line_angle_deg->value);
}

LineLoadAnswers ComputeLineLoad(const Rod& rod, const BendingAnswers& bending, Inputs& inputs) {
  LineLoadAnswers answers;
  const bool asked = std::any_of(rod.load_cases.begin(), rod.load_cases.end(), line_load::PullsThroughTheLine);
  const bool tested = std::any_of(rod.static_tests.begin(), rod.static_tests.end(),
                                  [](const StaticTest& test) { return line_load::PullsThroughTheLine(test.load); });
  if (std::string wrong = WhatIsWrongWithPulls(rod); !wrong.empty()) {
    answers.unknowns.push_back({"line_load", std::move(wrong)});
  }
  if (!asked && !tested) return answers;
  auto* const unknowns = asked ? &answers.unknowns : nullptr;
  answers.train = TrainOf(rod, nullptr, &answers.assumptions, unknowns);
  if (!answers.train) return answers;
  if (std::string missing = line_load::MissingOf(rod, bending, *answers.train); !missing.empty()) {
    if (unknowns != nullptr) unknowns->push_back({"line_load", std::move(missing)});
    answers.train.reset();
    return answers;
  }
  line_load::SayAssumptions(rod, answers);
  line_load::Bench bench(rod, bending, *answers.train, inputs, answers);
  for (std::size_t i = 0; i < rod.load_cases.size(); ++i) {
    const LoadCase& load = rod.load_cases[i];
    if (!line_load::PullsThroughTheLine(load)) continue;
    answers.cases.push_back(bench.Hang(load, i, absl::StrCat("line_load.cases[", load.id, "]")));
  }
  for (std::size_t i = 0; i < rod.static_tests.size(); ++i) {
    const StaticTest& test = rod.static_tests[i];
    if (test.outdated || !line_load::PullsThroughTheLine(test.load)) continue;
    answers.tests.push_back(bench.Hang(test.load, i, ""));
    StrungRod& strung = answers.tests.back();
    strung.own_drop_m = line_load::OwnDrop(bending, strung.clamp_m, test.load.butt_angle_deg.value);
  }
  return answers;
}

}  // namespace withy
