#include "withy/guides/guides.h"

#include <algorithm>
#include <limits>

#include "absl/strings/str_cat.h"

namespace withy {
namespace {

// Along the rod by whichever origin is known; the same one for all guides, since they all hang on the tip.
double OrderOf(const Guide& guide) {
  if (guide.ring.on_blank_m) return guide.ring.on_blank_m->value();
  if (guide.ring.from_butt_m) return guide.ring.from_butt_m->value();
  return std::numeric_limits<double>::infinity();
}

}  // namespace

GuidesAnswers ComputeGuides(const Rod& rod, const std::vector<Practice>& practices) {
  GuidesAnswers answers;
  answers.practice = PracticeFor(rod.order.technique, practices);
  for (std::size_t i = 0; i < rod.guides.size(); ++i) {
    const Guide& guide = rod.guides[i];
    answers.guides.push_back({static_cast<int>(i), rod.DiameterUnder(guide.ring)});
    if (!guide.from_tip && !guide.ring.known()) {
      answers.unknowns.push_back({absl::StrCat("guides.guides[", guide.id, "].from_tip_mm"),
                                  absl::StrCat("choose a distance from the tip-top for ", guide.id)});
    }
  }
  std::stable_sort(answers.guides.begin(), answers.guides.end(), [&rod](const GuideAnswer& a, const GuideAnswer& b) {
    return OrderOf(rod.guides[a.guide]) < OrderOf(rod.guides[b.guide]);
  });
  return answers;
}

}  // namespace withy
