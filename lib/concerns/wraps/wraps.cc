#include "withy/wraps/wraps.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>
#include <string>
#include <string_view>
#include <unordered_set>
#include <utility>

#include "absl/strings/str_cat.h"

namespace withy {
namespace {

// More layers or turns than any wrap has: nothing is worked out.
constexpr std::uint32_t kMostLayers = 100;
constexpr double kMostTurns = 1e7;

// A ramp rises to its high end in steps of thread; its mean depth is half.
double Windings(const Wrap& wrap, const WrapAnswer& answer, double thread_m) {
  if (wrap.high_end == End::kUnknown || !wrap.high) return wrap.layers;
  const double low = wrap.high_end == End::kButt ? *answer.blank_end_m : *answer.blank_start_m;
  const double steps = (wrap.high->meters() - low) / 2 / thread_m;
  return steps > 1 ? (steps + 1) / 2 : 1;
}

// What stands between a wrap and the length of its thread, the first thing first.
std::string WhatTellsTheThread(const Rod& rod, const Wrap& wrap) {
  if (wrap.thread_index < 0) return absl::StrCat("name the thread of wrap ", wrap.id);
  const Thread& thread = rod.threads[wrap.thread_index];
  if (!thread.diameter) return absl::StrCat("count the turns of thread ", thread.id, " over 10 mm");
  if (!wrap.length && wrap.over_foot) return absl::StrCat("measure the foot that wrap ", wrap.id, " is on");
  if (!wrap.length) return absl::StrCat("give wrap ", wrap.id, " a length or turns");
  if (!wrap.start.known()) return absl::StrCat("give wrap ", wrap.id, " a place on the blank");
  if (!wrap.start.on_blank_m && !rod.blank_butt_m && !rod.rest_measure.empty()) return rod.rest_measure;
  return absl::StrCat("look at wrap ", wrap.id, ": its place, layers and length, and the blank's diameters there");
}

void FillThread(const Rod& rod, const Wrap& wrap, WrapAnswer& answer) {
  if (wrap.thread_index < 0 || !answer.blank_start_m || !answer.blank_end_m) return;
  const Thread& thread = rod.threads[wrap.thread_index];
  if (!thread.diameter || wrap.layers == 0 || wrap.layers > kMostLayers) return;
  const double pitch = thread.diameter->value.meters();
  if (!(pitch > 0) || wrap.length->meters() / pitch > kMostTurns) return;
  const double layers = Windings(wrap, answer, pitch);
  if (!(layers <= kMostLayers)) return;
  const int whole = static_cast<int>(layers);
  Winding winding = Wind(wrap.length->meters(), *answer.blank_start_m, *answer.blank_end_m, pitch, whole);
  if (layers > whole) {
    const Winding next = Wind(wrap.length->meters(), *answer.blank_start_m, *answer.blank_end_m, pitch, whole + 1);
    winding.turns += (layers - whole) * (next.turns - winding.turns);
    winding.thread_length_m += (layers - whole) * (next.thread_length_m - winding.thread_length_m);
  }
  answer.turns = winding.turns;
  answer.thread_length_m = winding.thread_length_m;
  if (thread.linear_density_kg_m) answer.thread_kg = winding.thread_length_m * thread.linear_density_kg_m->value;
}

// All coats as films on one another, outside the thread: volume = pi f (D + f) (length + what goes past the thread).
void FillFinish(const Rod& rod, const Wrap& wrap, double thread_m, WrapAnswer& answer) {
  if (!wrap.coats_known || !answer.blank_start_m || !answer.blank_end_m) return;
  double outer = (*answer.blank_start_m + *answer.blank_end_m) / 2 + 2 * thread_m * wrap.layers;
  std::vector<double> masses;
  for (const int i : wrap.coats) {
    const Finish& finish = rod.finishes[i];
    if (!finish.film || !finish.density_kg_m3 || finish.film->value.meters() < 0 || finish.density_kg_m3->value <= 0) {
      return;
    }
    const double film = finish.film->value.meters() * finish.coats;
    const double beyond = finish.beyond_thread ? finish.beyond_thread->value.meters() : 0;
    masses.push_back(finish.density_kg_m3->value * std::numbers::pi * film * (outer + film) *
                     (wrap.length->meters() + 2 * beyond));
    outer += 2 * film;
  }
  answer.finish_kg = std::accumulate(masses.begin(), masses.end(), 0.0);
  answer.coats_kg = std::move(masses);
}

void FillThreadAndFinish(const Rod& rod, const Wrap& wrap, WrapAnswer& answer) {
  FillThread(rod, wrap, answer);
  if (wrap.thread_index < 0 || !rod.threads[wrap.thread_index].diameter) return;
  FillFinish(rod, wrap, rod.threads[wrap.thread_index].diameter->value.meters(), answer);
}

// Of the whole blank.
struct Diameters {
  double least_m = 0, most_m = 0;
};

std::optional<Diameters> DiametersOf(const Profile& outer) {
  if (outer.empty()) return std::nullopt;
  return Diameters{outer.Min(outer.begin(), outer.end()), outer.Max(outer.begin(), outer.end())};
}

// The mass does not wait for the place: the blank's smallest and largest diameter bound it.
void BoundMass(const Rod& rod, const Wrap& wrap, const Diameters& blank, WrapAnswer& answer) {
  const auto on = [&](double diameter_m) {
    WrapAnswer there;
    there.blank_start_m = there.blank_end_m = diameter_m;
    FillThreadAndFinish(rod, wrap, there);
    return there;
  };
  const WrapAnswer thin = on(blank.least_m), thick = on(blank.most_m);
  if (!thin.thread_kg || !thin.finish_kg || !thick.thread_kg || !thick.finish_kg) return;
  answer.thread_kg = (*thin.thread_kg + *thick.thread_kg) / 2;
  answer.finish_kg = (*thin.finish_kg + *thick.finish_kg) / 2;
  answer.coats_kg.clear();
  for (std::size_t i = 0; i < thin.coats_kg.size(); ++i) {
    answer.coats_kg.push_back((thin.coats_kg[i] + thick.coats_kg[i]) / 2);
  }
  answer.mass_plus_minus_kg = std::abs(*thick.thread_kg + *thick.finish_kg - *thin.thread_kg - *thin.finish_kg) / 2;
}

WrapAnswer AnswerOf(const Rod& rod, const Wrap& wrap, const std::optional<Diameters>& blank) {
  WrapAnswer answer;
  if (wrap.turns && wrap.layers == 1) answer.turns = *wrap.turns;  // known wherever it lies
  answer.blank_start_m = rod.DiameterUnder(wrap.start);
  if (!wrap.length) return answer;
  answer.blank_end_m = rod.DiameterUnder(wrap.start.Moved(wrap.length->meters()));
  FillThreadAndFinish(rod, wrap, answer);
  const bool placed = wrap.start.on_blank_m || (wrap.start.from_butt_m && rod.blank_butt_m);
  if (!placed && blank) BoundMass(rod, wrap, *blank, answer);
  return answer;
}

// A foot, or another wrap.
bool AnyLiesOnMoreThanTheBlank(const Rod& rod) {
  std::unordered_set<std::string_view> ids;
  for (const Wrap& wrap : rod.wraps) {
    if (!wrap.id.empty()) ids.insert(wrap.id);
  }
  return std::any_of(rod.wraps.begin(), rod.wraps.end(), [&ids](const Wrap& wrap) {
    return wrap.over_foot || wrap.kind == "underwrap" || ids.contains(wrap.on);
  });
}

}  // namespace

WrapsAnswers ComputeWraps(const Rod& rod) {
  WrapsAnswers answers;
  std::vector<ThreadUse> use(rod.threads.size());
  std::vector<bool> used(rod.threads.size(), false);
  const FieldPath* told = nullptr;  // an entry of several wraps is spoken of once
  const std::optional<Diameters> blank = DiametersOf(rod.blank.outer);
  for (const Wrap& wrap : rod.wraps) {
    answers.wraps.push_back(AnswerOf(rod, wrap, blank));
    const WrapAnswer& answer = answers.wraps.back();
    if (!answer.thread_length_m && !(told && *told == wrap.at)) {
      told = &wrap.at;
      answers.unknowns.push_back(
          {absl::StrCat("wraps.wraps[", wrap.id, "].thread_length_mm"), WhatTellsTheThread(rod, wrap)});
    }
    if (wrap.thread_index < 0) continue;
    ThreadUse& of = use[wrap.thread_index];
    used[wrap.thread_index] = true;
    of.length_m += answer.thread_length_m.value_or(0);
    of.complete = of.complete && answer.thread_length_m.has_value();
  }
  if (AnyLiesOnMoreThanTheBlank(rod)) {
    answers.assumptions.push_back({FieldPath().Field("wraps"), "every wrap on the bare blank",
                                   "a foot or a wrap under it is not counted; it takes a little more thread"});
  }
  for (std::size_t i = 0; i < use.size(); ++i) {
    if (!used[i]) continue;
    use[i].thread = rod.threads[i].id;
    answers.threads.push_back(use[i]);
  }
  return answers;
}

}  // namespace withy
