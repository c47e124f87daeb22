// The loads that the guides are placed for.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "absl/strings/str_format.h"
#include "train_parts.h"
#include "withy/line_load/line_load.h"
#include "withy/units/quantity.h"

namespace withy::guides {
namespace {

// Shares of the full load, and the straight pull: of the loads that the objective was tried with (placement.h).
constexpr double kLight = 0.22, kMiddle = 0.55, kStraight = 0.06;
constexpr double kStraightWeight = 3;
// Loads that differ by less are one: what a spring balance and an eye tell apart (common practice, no source).
constexpr double kSamePull = 1.1, kSameDirectionDeg = 10;
constexpr std::size_t kMostLoads = 6;
// A third of the line's strength is what a drag is set to (common practice, no source).
constexpr double kDragShare = 1.0 / 3;
// A lure that leaves at 20 m/s after 2 m of swing was pulled with v2 / (2 x 2 m) = 100 m/s2, ten times its weight.
constexpr double kCastFactor = 10;

bool Differ(const LoadCase& a, const LoadCase& b) {
  const double ratio = a.load_n->value / b.load_n->value;
  return ratio > kSamePull || ratio < 1 / kSamePull || std::abs(a.LineAngleDeg() - b.LineAngleDeg()) > kSameDirectionDeg;
}

bool AnyDiffer(const std::vector<TrainLoad>& loads) {
  return std::any_of(loads.begin(), loads.end(),
                     [&loads](const TrainLoad& load) { return Differ(load.as_load_case, loads.front().as_load_case); });
}

LoadCase Added(const char* id, double pull_n, const LoadCase& like) {
  LoadCase load = like;
  load.id = id;
  load.at = FieldPath();
  load.at_tip = false;
  load.load_n = Known<double>{pull_n, std::nullopt, Source::kAssumed, FieldPath()};
  return load;
}

// Square to the butt: what no load case says otherwise.
LoadCase Square(double pull_n) {
  LoadCase load = Added("full", pull_n, LoadCase());
  load.line_angle_deg = Known<double>{90, std::nullopt, Source::kAssumed, FieldPath()};
  return load;
}

std::vector<TrainLoad> OfTheDesign(const Rod& rod, bool at_tip) {
  std::vector<TrainLoad> loads;
  for (const LoadCase& load : rod.load_cases) {
    if (load.at_tip == at_tip && load.load_n && load.load_n->value > 0) loads.push_back({load});
  }
  return loads;
}

// Of the line, or of the strongest that the blank is rated for where that is less; unset where no line is written.
std::optional<double> DragOf(const Rod& rod) {
  if (!rod.order.line_strength_n || !(*rod.order.line_strength_n > 0)) return std::nullopt;
  double strength_n = *rod.order.line_strength_n;
  if (rod.blank.rated_line_max_n && *rod.blank.rated_line_max_n > 0) {
    strength_n = std::min(strength_n, *rod.blank.rated_line_max_n);
  }
  return kDragShare * strength_n;
}

// A lift alone bends little more than the tip, and would crowd the guides there.
void AddDrag(const Rod& rod, std::vector<TrainLoad>& loads, std::vector<std::string>& notes) {
  const std::optional<double> drag_n = DragOf(rod);
  if (!drag_n || *drag_n < kSamePull * HeaviestOf(loads).as_load_case.load_n->value) return;
  notes.push_back(
      absl::StrFormat("One load alone places guides for nothing else: added is the full load, a third of the strength "
                      "of the line or of what the blank is rated for, %.1f N, square to the butt (common practice, no "
                      "source); write load_cases for what it is to be fished with.",
                      *drag_n));
  loads.push_back({Square(*drag_n)});
}

void TakeFullLoad(const Rod& rod, std::vector<TrainLoad>& loads, std::vector<std::string>& notes) {
  constexpr char kWrite[] = "; write load_cases for what it is to be fished with.";
  if (const std::optional<double> drag_n = DragOf(rod)) {
    loads.push_back({Square(*drag_n)});
    notes.push_back(
        absl::StrFormat("No load case pulls through the line: the full load is a third of the strength of the line or "
                        "of what the blank is rated for, %.1f N, square to the butt (common practice, no source)%s",
                        *drag_n, kWrite));
  } else if (std::vector<TrainLoad> hung = OfTheDesign(rod, /*at_tip=*/true); !hung.empty()) {
    const LoadCase heaviest = HeaviestOf(hung).as_load_case;
    loads.push_back({Added("full", heaviest.load_n->value, heaviest)});
    notes.push_back(
        absl::StrFormat("No load case pulls through the line: what '%s' hangs on the tip itself, %.1f N, is taken "
                        "to pull through it as the full load%s",
                        heaviest.id, heaviest.load_n->value, kWrite));
  } else if (rod.order.lure_max && rod.order.lure_max->grams() > 0) {
    const double pull_n = kCastFactor * Force::WeightOf(*rod.order.lure_max).newtons();
    loads.push_back({Square(pull_n)});
    notes.push_back(
        absl::StrFormat("No load case pulls through the line: the full load is ten times the weight of the heaviest "
                        "lure, %.1f N, square to the butt, as in a cast (common practice, no source)%s",
                        pull_n, kWrite));
  }
}

void AddLighter(std::vector<TrainLoad>& loads, std::vector<std::string>& notes) {
  const LoadCase full = HeaviestOf(loads).as_load_case;
  const double pull_n = full.load_n->value;
  loads.insert(loads.begin(), {{Added("light", kLight * pull_n, full)}, {Added("middle", kMiddle * pull_n, full)}});
  notes.push_back(
      absl::StrFormat("Added are light and middle, %.2f and %.2f of '%s' in its direction: one load alone places guides "
                      "for nothing else.",
                      kLight, kMiddle, full.id));
}

// Heaviest first, without those that are like one before; of what is still too many the heaviest, the lightest and
// some between them.
void TakeThoseThatDiffer(std::vector<TrainLoad>& loads, std::vector<std::string>& notes) {
  const std::size_t written = loads.size();
  std::stable_sort(loads.begin(), loads.end(), [](const TrainLoad& a, const TrainLoad& b) {
    return a.as_load_case.load_n->value > b.as_load_case.load_n->value;
  });
  std::vector<TrainLoad> differ;
  for (const TrainLoad& load : loads) {
    const bool new_one = std::all_of(differ.begin(), differ.end(), [&load](const TrainLoad& kept) {
      return Differ(kept.as_load_case, load.as_load_case);
    });
    if (new_one) differ.push_back(load);
  }
  loads = differ;
  if (differ.size() > kMostLoads) {
    loads.clear();
    for (std::size_t i = 0; i < kMostLoads; ++i) {
      loads.push_back(differ[i * (differ.size() - 1) / (kMostLoads - 1)]);
    }
  }
  notes.push_back(
      absl::StrFormat("Of %d loads through the line %d differ by more than a tenth or by more than 10 degrees; %d are "
                      "placed for, the heaviest and the lightest among them.",
                      written, differ.size(), loads.size()));
}

// Says of the first what to correct; empty where none is left out.
std::string LeaveOutThoseHeldBeyond(double farthest_m, std::vector<TrainLoad>& loads, std::vector<std::string>& notes) {
  std::string first;
  std::vector<TrainLoad> kept;
  for (const TrainLoad& load : loads) {
    const LoadCase& from = load.as_load_case;
    if (!from.clamp || from.clamp->value.meters() < farthest_m) {
      kept.push_back(load);
      continue;
    }
    const std::string why = absl::StrFormat(
        "'%s' is held %.0f mm from the butt end, and ahead of that there is no place for the butt guide, which stands "
        "no further than %.0f mm: correct %s",
        from.id, from.clamp->value.mm(), farthest_m * 1000, from.clamp->at.ToString());
    notes.push_back("Left out: " + why + ".");
    if (first.empty()) first = why;
  }
  loads = std::move(kept);
  return first;
}

bool IsFixedSpool(const Rod& rod, int side) {
  return side < 0 && (rod.order.technique == "spinning" || rod.order.technique == "surf");
}

void AddStraight(std::vector<TrainLoad>& loads, std::vector<std::string>& notes) {
  for (TrainLoad& load : loads) {
    if (std::abs(load.as_load_case.LineAngleDeg()) >= kSameDirectionDeg) continue;
    load.weight = kStraightWeight;
    notes.push_back(
        absl::StrFormat("'%s' is a straight pull: its angles count three times, to keep the line's path straight "
                        "from the spool.",
                        load.as_load_case.id));
    return;
  }
  LoadCase straight =
      Added("straight", kStraight * HeaviestOf(loads).as_load_case.load_n->value, HeaviestOf(loads).as_load_case);
  straight.line_angle_deg = Known<double>{0, std::nullopt, Source::kAssumed, FieldPath()};
  loads.push_back({straight, kStraightWeight});
  notes.push_back(
      absl::StrFormat("A fixed spool: added is a straight pull of %.2f of the heaviest load, its angles counted three "
                      "times, to keep the line's path straight from the spool.",
                      kStraight));
}

}  // namespace

double PhiOf(const LoadCase& load) {
  return load.LineAngleDeg() * std::numbers::pi / 180;
}

const TrainLoad& HeaviestOf(const std::vector<TrainLoad>& loads) {
  return *std::max_element(loads.begin(), loads.end(), [](const TrainLoad& a, const TrainLoad& b) {
    return a.as_load_case.load_n->value < b.as_load_case.load_n->value;
  });
}

absl::StatusOr<std::vector<TrainLoad>> TrainLoadsOf(const Rod& rod, int side, double farthest_clamp_m,
                                                    std::vector<std::string>& notes) {
  std::vector<TrainLoad> loads = OfTheDesign(rod, /*at_tip=*/false);
  std::string left_out = LeaveOutThoseHeldBeyond(farthest_clamp_m, loads, notes);
  if (const std::string refused = WhatIsWrongWithPulls(rod); !refused.empty()) {
    notes.push_back(absl::StrFormat("Left out: a load that cannot be used; %s.", refused));
    if (left_out.empty()) left_out = refused;
  }
  if (loads.empty() && !left_out.empty()) return absl::FailedPreconditionError(std::move(left_out));
  if (loads.empty()) TakeFullLoad(rod, loads, notes);
  if (loads.empty()) return loads;
  if (loads.size() > kMostLoads) TakeThoseThatDiffer(loads, notes);
  if (!AnyDiffer(loads)) {
    if (!loads.front().as_load_case.at.empty()) AddDrag(rod, loads, notes);
    AddLighter(loads, notes);
  }
  if (IsFixedSpool(rod, side)) AddStraight(loads, notes);
  // Below, the line lifts off the blank by itself; a straight pull lies along it either way.
  for (TrainLoad& load : loads) {
    if (side > 0) load.clearance_m = 0;
  }
  return loads;
}

}  // namespace withy::guides
