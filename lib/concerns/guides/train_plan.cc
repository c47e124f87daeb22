#include "withy/guides/train_plan.h"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "train_parts.h"
#include "withy/line_load/line_load.h"

namespace withy {
namespace {

using guides::HeaviestOf;

// Rings nearer to each other than this are one (common practice, no source).
constexpr double kLeastGapM = 0.01;
// How far ahead of a handle that ends beyond the usual place the butt guide is looked for (common practice, no source).
constexpr double kAheadOfHandleM = 0.15;

absl::Status CannotTell(std::string what) {
  return absl::FailedPreconditionError(std::move(what));
}

// "why: what to measure" of the first thing that is not known.
absl::Status FromUnknowns(const std::vector<Unknown>& unknowns, std::string_view otherwise) {
  return CannotTell(unknowns.empty() ? std::string(otherwise) : unknowns.front().measure);
}

// In the order of the list, which is butt first, unless the places of its ends say that it is tip first. One wrong
// place is no reason to change two guides.
std::vector<int> ButtFirst(const Rod& rod) {
  std::vector<int> order;
  std::vector<double> places;
  for (int i = 0; i < static_cast<int>(rod.guides.size()); ++i) {
    order.push_back(i);
    if (rod.guides[i].from_tip) places.push_back(rod.guides[i].from_tip->value.meters());
  }
  if (!places.empty() && places.front() < places.back()) std::reverse(order.begin(), order.end());
  return order;
}

// What takes a ring of that reach out of a stretch.
ClosedStretch ClosedTo(const GuideReach& reach, const TakenStretch& taken, double clamp_m) {
  return {taken.from_m - reach.to_tip_m - clamp_m, taken.to_m + reach.to_butt_m - clamp_m};
}

class Planner {
 public:
  Planner(const Rod& rod, const BendingAnswers& bending, const TrainWishes& wishes)
      : rod_(rod), bending_(bending), wishes_(wishes) {}

  absl::StatusOr<TrainPlan> Run() {
    if (rod_.guides.empty())
      return CannotTell("the design lists no guides: add one entry of guides for each, with its model");
    plan_.guides = ButtFirst(rod_);
    if (const absl::Status status = TakeLoads(); !status.ok()) return status;
    if (const absl::Status status = TakeBeam(); !status.ok()) return status;
    TakeGaps();
    TakeFirst();
    if (const absl::Status status = TakeThoseThatStay(); !status.ok()) return status;
    return TakeRings();
  }

 private:
  PlacementProblem& problem() { return plan_.problem; }
  const Guide& guide(std::size_t k) const { return rod_.guides[plan_.guides[k]]; }

  absl::Status TakeLoads() {
    if (rod_.order.side == 0) {
      return CannotTell("on which side of the rod reel and guides stand is not known: write intent.reel.side");
    }
    problem().side = rod_.order.side;
    absl::StatusOr<std::vector<TrainLoad>> loads =
        guides::TrainLoadsOf(rod_, rod_.order.side, FarthestClampM(), plan_.notes);
    if (!loads.ok()) return loads.status();
    plan_.loads = *std::move(loads);
    if (plan_.loads.empty()) {
      return CannotTell(
          "no load is known: add load_cases { id: \"lift\" lifted { g: 300 } butt_angle { deg: 45 } }, or the line's "
          "strength in intent.line");
    }
    for (const TrainLoad& load : plan_.loads) {
      const LoadCase& from = load.as_load_case;
      if (std::string wrong = WhatIsWrongWithDirection(from); !wrong.empty()) return CannotTell(std::move(wrong));
      problem().cases.push_back({from.id, from.load_n->value, guides::PhiOf(from), 0, load.weight, load.clearance_m});
    }
    if (rod_.order.friction && rod_.order.friction->value > 0) {
      plan_.notes.push_back(
          "The line is taken to run freely through the rings: intent.line.friction does not enter into the places (0.1 "
          "changes the largest angle by about 1 % at most).");
    }
    return absl::OkStatus();
  }

  // As far as the butt guide may stand at most: a hand there leaves it no place ahead of itself.
  double FarthestClampM() const {
    const double tip_m = bending_.stiff ? bending_.stiff->butt_m + bending_.stiff->beam.length() : INFINITY;
    const std::optional<double> foot =
        rod_.order.reel_foot_m ? std::optional(rod_.order.reel_foot_m->value()) : std::nullopt;
    const std::optional<UsualRange> usual = ButtGuideBounds(wishes_.practice, foot);
    const double ahead_m = guides::FrontOfHandle(rod_).value_or(0) + kAheadOfHandleM;
    return std::min(tip_m, std::max(usual ? usual->most : tip_m, ahead_m));
  }

  // Held as under the heaviest load, since a layout has to serve all of them at once.
  absl::Status TakeBeam() {
    if (!bending_.stiff) return FromUnknowns(bending_.unknowns, "how stiff the blank is cannot be told");
    const LoadCase& heaviest = HeaviestOf(plan_.loads).as_load_case;
    const std::optional<double> held = heaviest.clamp ? std::optional(heaviest.clamp->value.meters()) : bending_.held_m;
    if (!held) return CannotTell("where the rod is held is not known: write intent.holding_point_from_butt");
    const StiffBlank& stiff = *bending_.stiff;
    if (!(*held < stiff.butt_m + stiff.beam.length()))
      return CannotTell("the rod is held ahead of its tip: look at clamp_from_butt");
    for (const TrainLoad& load : plan_.loads) {
      const auto& clamp = load.as_load_case.clamp;
      if (!clamp || std::abs(clamp->value.meters() - *held) < 1e-9) continue;
      plan_.notes.push_back(
          absl::StrFormat("'%s' is held elsewhere; all loads are taken with the rod held %.0f mm from its butt end.",
                          load.as_load_case.id, *held * 1000));
    }
    StiffBlank ahead = StiffAheadOf(stiff, *held);
    plan_.clamp_m = ahead.butt_m;
    problem().beam = std::move(ahead.beam);
    problem().outer_m = std::move(ahead.outer_m);
    return absl::OkStatus();
  }

  // Feet and thread of one guide and the next; of the last, what the tip-top takes.
  void TakeGaps() {
    const double tip_m = plan_.clamp_m + problem().beam.length();
    for (std::size_t k = 0; k < plan_.guides.size(); ++k)
      plan_.reaches.push_back(guides::ReachOf(rod_, guide(k), plan_.notes));
    plan_.taken = guides::TakenStretches(rod_);
    const double tip_top_m = tip_m - guides::TipTopFrom(rod_, tip_m);
    for (std::size_t k = 0; k < plan_.guides.size(); ++k) {
      const double next = k + 1 < plan_.guides.size() ? plan_.reaches[k + 1].to_butt_m : tip_top_m;
      problem().least_gaps_m.push_back(std::max(kLeastGapM, plan_.reaches[k].to_tip_m + next));
      std::vector<ClosedStretch>& closed = problem().closed.emplace_back();
      for (const TakenStretch& taken : plan_.taken) closed.push_back(ClosedTo(plan_.reaches[k], taken, plan_.clamp_m));
    }
    problem().last_high_m = problem().beam.length() - problem().least_gaps_m.back();
  }

  void TakeFirst() {
    const std::optional<double> front = guides::FrontOfHandle(rod_);
    const std::optional<double> foot =
        rod_.order.reel_foot_m ? std::optional(rod_.order.reel_foot_m->value()) : std::nullopt;
    const std::optional<UsualRange> usual = ButtGuideBounds(wishes_.practice, foot);
    const double clear = front ? *front + plan_.reaches.front().to_butt_m : plan_.clamp_m;
    double low = clear, high = clear + (plan_.clamp_m + problem().beam.length() - clear) / 2;
    plan_.first_low_by = Obstacle::kHandle;
    if (!usual) {
      plan_.notes.push_back(
          "No rule says where the butt guide usually stands: it may stand anywhere from the handle to half way to "
          "the tip.");
    } else {
      high = usual->most;
      if (usual->least > low) {
        low = usual->least;
        plan_.first_low_by = Obstacle::kReel;
      }
      if (high < low) {
        high = low + kAheadOfHandleM;
        plan_.notes.push_back(
            "The handle ends beyond where the butt guide usually stands: it is looked for just ahead of the handle.");
      }
    }
    if (const auto in_cone = guides::InConeWithin(rod_, guide(0), low, high)) {
      if (in_cone->first > low) plan_.first_low_by = Obstacle::kReel;
      std::tie(low, high) = *in_cone;
    } else {
      plan_.notes.push_back(
          absl::StrCat("Nowhere from the handle to the usual distance does '", guide(0).id,
                       "' take the loops off the spool: look at its ring and height, or at the spool's."));
    }
    problem().first_low_m = std::max(low - plan_.clamp_m, kLeastGapM);
    problem().first_high_m = std::max(high - plan_.clamp_m, problem().first_low_m);
    problem().gaps_never_grow = wishes_.gaps_never_grow;
  }

  absl::Status TakeThoseThatStay() {
    const double length = problem().beam.length();
    for (std::size_t k = 0; k < plan_.guides.size(); ++k) {
      problem().locked_m.emplace_back();
      const std::string why = guides::StaysBecause(rod_, guide(k));
      if (why.empty()) continue;
      const double s = length - guide(k).from_tip->value.meters();
      if (!(s > 0 && s < length)) {
        return CannotTell(absl::StrCat("'", guide(k).id,
                                       "' is not to be moved and stands off the rod ahead of where it is held: look "
                                       "at its from_tip"));
      }
      problem().locked_m.back() = s;
      plan_.notes.push_back(absl::StrCat("'", guide(k).id, "' stays where it is: ", why, "."));
    }
    return absl::OkStatus();
  }

  // Where the design places them all on the blank, their offsets are of there, else of even gaps.
  absl::StatusOr<TrainPlan> TakeRings() {
    problem().offsets_m.assign(plan_.guides.size(), 0);
    std::vector<Unknown> unknowns;
    std::vector<Assumption> assumptions;
    std::optional<LineTrain> train = TrainOf(rod_, nullptr, &assumptions, nullptr);
    if (!train || train->guides.size() != plan_.guides.size()) {
      assumptions.clear();
      const std::vector<double> even = EqualLayout(problem());
      std::vector<double> places(rod_.guides.size());
      for (std::size_t k = 0; k < even.size(); ++k) places[plan_.guides[k]] = FromTip(plan_, even[k]);
      train = TrainOf(rod_, &places, &assumptions, &unknowns);
    }
    if (!train) return FromUnknowns(unknowns, "where rings and reel stand cannot be told");
    for (const Assumption& assumed : assumptions) {
      plan_.notes.push_back(absl::StrCat(assumed.at.ToString(), ": ", assumed.used, "; ", assumed.why, "."));
    }
    TakeRingsOf(*train);
    return std::move(plan_);
  }

  void TakeRingsOf(const LineTrain& train) {
    problem().reel_s_m = train.reel_m - plan_.clamp_m;
    problem().reel_offset_m = train.reel_height_m;
    problem().tip_offset_m = train.offset_m.back();
    problem().tip_turned = train.turned.back();
    std::vector<double> turned(plan_.guides.size());
    for (std::size_t k = 0; k < train.guides.size(); ++k) {
      const auto at = std::find(plan_.guides.begin(), plan_.guides.end(), train.guides[k]) - plan_.guides.begin();
      problem().offsets_m[at] = train.offset_m[k];
      turned[at] = train.turned[k];
    }
    if (std::any_of(turned.begin(), turned.end(), [](double angle) { return angle != 0; })) problem().turned = turned;
    problem().first_low_m = std::max(problem().first_low_m, problem().reel_s_m + kLeastGapM);
    problem().first_high_m = std::max(problem().first_high_m, problem().first_low_m);
  }

  const Rod& rod_;
  const BendingAnswers& bending_;
  const TrainWishes& wishes_;
  TrainPlan plan_;
};

const char* WordOf(Obstacle obstacle) {
  switch (obstacle) {
    case Obstacle::kReel:
      return "reel";
    case Obstacle::kHandle:
      return "handle";
    case Obstacle::kJoint:
      return "joint";
    case Obstacle::kKeeper:
      return "keeper";
    case Obstacle::kTipTop:
      break;
  }
  return "tip-top";
}

}  // namespace

absl::StatusOr<TrainPlan> PlanTrain(const Rod& rod, const BendingAnswers& bending, const TrainWishes& wishes) {
  return Planner(rod, bending, wishes).Run();
}

std::vector<double> FromTip(const TrainPlan& plan, const std::vector<double>& s_m) {
  std::vector<double> from_tip;
  for (const double s : s_m) from_tip.push_back(FromTip(plan, s));
  return from_tip;
}

PlacementProblem WithOffsetsAt(const Rod& rod, const TrainPlan& plan, const std::vector<double>& s_m) {
  PlacementProblem problem = plan.problem;
  for (std::size_t k = 0; k < s_m.size(); ++k) {
    const Guide& guide = rod.guides[plan.guides[k]];
    const std::optional<double> blank_m = rod.BlankDiameterAt(plan.clamp_m + s_m[k]);
    if (guide.ring_height && blank_m) problem.offsets_m[k] = guide.ring_height->value.meters() + *blank_m / 2;
  }
  return problem;
}

JudgedLayout JudgeLayout(const Rod& rod, const TrainPlan& plan, const std::vector<double>& s_m) {
  const PlacementProblem problem = WithOffsetsAt(rod, plan, s_m);
  return {problem.offsets_m, EvaluateLayout(problem, s_m)};
}

std::optional<JudgedLayout> JudgeAsItIs(const Rod& rod, const TrainPlan& plan) {
  std::vector<double> s_m;
  for (const int i : plan.guides) {
    if (!rod.guides[i].from_tip) return std::nullopt;
    s_m.push_back(plan.problem.beam.length() - rod.guides[i].from_tip->value.meters());
  }
  return JudgeLayout(rod, plan, s_m);
}

std::string BoundBy(const TrainPlan& plan, const std::vector<double>& s_m, int k, double within_m) {
  const PlacementProblem& problem = plan.problem;
  const double s = s_m[k];
  const auto at = [within_m](double a, double b) { return std::abs(a - b) <= within_m; };
  if (problem.locked_m[k]) return "locked";
  if (k == 0 && at(s, problem.first_low_m)) return WordOf(plan.first_low_by);
  if (k == 0 && at(s, problem.first_high_m)) return WordOf(Obstacle::kReel);
  for (std::size_t i = 0; i < problem.closed[k].size(); ++i) {
    const ClosedStretch& closed = problem.closed[k][i];
    if (at(s, closed.from_m) || at(s, closed.to_m)) return WordOf(plan.taken[i].by);
  }
  const bool last = k + 1 == problem.count();
  const double next = last ? problem.beam.length() : s_m[k + 1];
  if (at(next - s, problem.least_gaps_m[k])) return last ? WordOf(Obstacle::kTipTop) : "next guide";
  if (k > 0 && at(s - s_m[k - 1], problem.least_gaps_m[k - 1])) return "next guide";
  return "";
}

}  // namespace withy
