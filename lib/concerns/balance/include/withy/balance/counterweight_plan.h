// The plan for the counterweights of a rod: how many, where to stop before potting, how sure that is, what it costs.
#ifndef WITHY_BALANCE_COUNTERWEIGHT_PLAN_H_
#define WITHY_BALANCE_COUNTERWEIGHT_PLAN_H_

#include <cstdint>
#include <optional>
#include <string>

#include "withy/balance/counterweights.h"
#include "withy/findings/field_path.h"
#include "withy/numerics/uncertain.h"

namespace withy {

// Whether the count holds within the uncertainty of the rod's moment.
enum class Confidence { kCannotTell, kOneMoreOrLess, kSure };

// Moments are about the aim (BalanceAnswers::aim) with the reel on, N m, positive = tip-heavy.
struct CounterweightPlan {
  std::string part;                       // id
  FieldPath at;                           // of its weights
  std::string material;                   // of the units; empty = not said
  std::optional<std::uint32_t> planned;   // by the log what is potted, else by the design
  bool potted = false;                    // `planned` is potted: a fact
  bool potted_first = false;              // planned to be potted before the blank goes in
  Uncertain unit_kg;
  std::optional<CounterweightStack> stack;             // unset = how many fit cannot be told; an Unknown says what to measure
  std::optional<Uncertain> moment_without_n_m;  // without any, but with those that are potted

  // Unset where stack or moment_without_n_m are.
  std::optional<CounterweightStatus> status;
  std::optional<int> count;               // unset also where it is butt-heavy without any
  std::optional<int> count_if_potting_ignored;
  std::optional<Uncertain> moment_before_potting_n_m, moment_after_n_m;
  std::optional<double> moment_with_one_more_n_m;
  Confidence confidence = Confidence::kCannotTell;
  // A mass at the tip-top's ring that the rod lifts just level with `count` taped in: by how much to stop short.
  std::optional<double> stop_short_at_tip_kg;
  // What `count` units and their potting add to the rod; the inertia about the hold.
  std::optional<double> added_kg, added_inertia_kg_m2;
  std::optional<double> balance_after_m;  // with the reel, from the butt end
};

}  // namespace withy

#endif  // WITHY_BALANCE_COUNTERWEIGHT_PLAN_H_
