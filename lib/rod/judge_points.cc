#include <vector>

#include "absl/strings/str_format.h"
#include "judge_log.h"
#include "log_codes.h"

namespace withy {
namespace {

// Beyond what length and reading leave open. Below zero document/negative speaks.
bool BeyondTip(const Rod& rod, const Known<Length>& point) {
  return rod.overall_m &&
         point.value.meters() > rod.overall_m->value() + rod.overall_m->plus_minus() + point.plus_minus.value_or(0);
}

void Report(Resolver& r, const Known<Length>& point, const char* what) {
  const double at_mm = point.value.mm(), overall_mm = r.rod.overall_m->value() * 1000;
  r.rod.findings.push_back(MakeFinding(
      kPointOffRod, point.at,
      absl::StrFormat("%s is %.1f mm from the butt end of a rod that is %.1f mm long", what, at_mm, overall_mm),
      {{"at_mm", at_mm}, {"overall_mm", overall_mm}}));
}

void JudgePoint(Resolver& r, const Maybe<Length>& point, const char* what) {
  if (point && BeyondTip(r.rod, *point)) Report(r, *point, what);
}

// Of the latest: an earlier one is not looked at any more.
void SayNotUsed(Resolver& r) {
  if (r.rod.wholes.empty() || !r.rod.wholes.back().outdated) return;
  r.rod.findings.push_back(
      MakeFinding(kWeighingNotUsed, r.rod.wholes.back().at,
                  "the blank was, or is to be, cut after this weighing: the balance is reckoned from the parts"));
}

}  // namespace

void JudgePoints(Resolver& r) {
  JudgePoint(r, r.rod.order.holding_point, "where it is held");
  JudgePoint(r, r.rod.order.balance_from_butt, "where it is to balance");
  JudgePoint(r, r.rod.order.reel_foot_center, "the reel foot's centre");
  SayNotUsed(r);
  for (WholeWeighing& whole : r.rod.wholes) {
    if (!whole.balance) continue;
    // A rod that was longer then may have balanced there; it is not reckoned from.
    const bool beyond = !whole.outdated && BeyondTip(r.rod, *whole.balance);
    if (beyond) Report(r, *whole.balance, "where it was seen to balance");
    if (beyond || whole.balance->value.meters() < 0) whole.balance.reset();
  }
  std::erase_if(r.rod.wholes, [](const WholeWeighing& whole) { return !whole.mass && !whole.balance; });
}

}  // namespace withy
