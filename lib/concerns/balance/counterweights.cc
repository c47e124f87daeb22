#include "withy/balance/counterweights.h"

#include <algorithm>
#include <cmath>

namespace withy {
namespace {

constexpr double kTieNm = 1e-12;
constexpr double kTieM = 1e-9;

// Of those that fit, how many stand behind the hold with their whole length.
int FitBehind(const CounterweightStack& stack, double hold_m) {
  const double layers = std::floor((hold_m - stack.room().start_m + kTieM) / stack.unit().length_m);
  return static_cast<int>(std::clamp(layers * stack.side_by_side(), 0.0, double(stack.fit())));
}

}  // namespace

CounterweightCount CountFor(const CounterweightStack& stack, const MassProperties& without, double hold_m, int least) {
  const auto taped_in = [&](int n) {
    MassProperties load = without;
    load += stack.Units(n);
    return load.StaticMomentAbout(hold_m);
  };
  const auto potted = [&](int n) {
    MassProperties load = without;
    load += stack.Units(n);
    load += stack.Potting(n);
    return load.StaticMomentAbout(hold_m);
  };
  // Not monotone: a light unit may weigh less than the potting that it displaces.
  const int most = std::max(FitBehind(stack, hold_m), least);
  const auto largest = [&](const auto& moment) -> std::optional<int> {
    for (int n = most; n >= least; --n) {
      if (moment(n) >= -kTieNm) return n;
    }
    return std::nullopt;
  };
  CounterweightCount count;
  count.moment_without_n_m = without.StaticMomentAbout(hold_m);
  const bool butt_heavy = (least > 0 ? potted(least) : count.moment_without_n_m) < -kTieNm;
  if (butt_heavy) return count;
  count.n = largest(potted);
  count.n_if_potting_ignored = largest(taped_in);
  count.status = most == 0        ? CounterweightStatus::kNoRoom
                 : *count.n == most ? CounterweightStatus::kRoomLimited
                                    : CounterweightStatus::kBalanced;
  count.moment_before_potting_n_m = taped_in(*count.n);
  count.moment_after_n_m = potted(*count.n);
  if (*count.n < most) count.moment_with_one_more_n_m = potted(*count.n + 1);
  return count;
}

}  // namespace withy
