// What the shop's saw can do, and what it is asked to.
#include "absl/strings/str_format.h"
#include "rules.h"

namespace withy::fit {
namespace {

constexpr Code kSawLimits = {
    .name = "fit/saw-limits",
    .severity = Severity::kWarning,
    .summary = "The cuts that the shop allows do not go with one another or with its saw",
    .why =
        "No cut takes less than the saw's kerf, and the last cut is a small one: kerf <= last cut <= largest single cut. "
        "Where they are otherwise the larger value is planned with, and that is more than was allowed.",
    .action = "Put right which of `saw_kerf`, `last_cut` and `largest_single_cut` was misread or is in another unit.",
};

// A finding at the one that should be larger, where it is less than the other.
void Compare(const Maybe<Length>& less, const char* what_less, const Maybe<Length>& more, const char* what_more,
             std::vector<Finding>& findings) {
  if (!less || !more || less->value.meters() <= more->value.meters() + 1e-9) return;
  findings.push_back(MakeFinding(kSawLimits, more->at,
                                 absl::StrFormat("the %s, %.2f mm, is less than the %s, %.2f mm", what_more,
                                                 more->value.mm(), what_less, less->value.mm()),
                                 {{"mm", more->value.mm()}, {"least_mm", less->value.mm()}}));
  findings.back().related.push_back(less->at);
}

void JudgeSawLimits(const View& view, std::vector<Finding>& findings) {
  const Shop& shop = view.rod.shop;
  Compare(shop.saw_kerf, "kerf", shop.last_cut, "last cut", findings);
  Compare(shop.last_cut, "last cut", shop.largest_single_cut, "largest single cut", findings);
  if (!shop.last_cut) Compare(shop.saw_kerf, "kerf", shop.largest_single_cut, "largest single cut", findings);
}

}  // namespace

std::vector<Rule<View>> SawRules() {
  return {{&kSawLimits, JudgeSawLimits}};
}

}  // namespace withy::fit
