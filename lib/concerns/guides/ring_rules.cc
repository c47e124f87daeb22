#include <set>
#include <string>

#include "absl/strings/str_format.h"
#include "rules.h"

namespace withy::guides {
namespace {

constexpr Code kModelUnknown = {
    .name = "guides/model-unknown",
    .severity = Severity::kCannotTell,
    .summary = "A guide does not say which kind it is",
    .why = "Ring, height, feet and mass are the model's; without them neither its place nor its wrap can be judged.",
    .action = "Describe the kind once in `guide_models` and name it in `model`.",
};

void JudgeModelUnknown(const View& view, std::vector<Finding>& findings) {
  for (const Guide& guide : view.rod.guides) {
    // a name that leads nowhere is told where references are
    if (guide.model_found || !guide.model.empty()) continue;
    findings.push_back(
        MakeFinding(kModelUnknown, guide.at, absl::StrFormat("the kind of '%s' is not known", guide.id)));
  }
}

constexpr Code kRingInner = {
    .name = "guides/ring-inner",
    .severity = Severity::kError,
    .summary = "A ring's inner diameter is not less than its outer one",
    .why =
        "Ring sizes are sold by the outside; the line passes the inside. Interchanged, every ring seems larger "
        "than it is.",
    .action = "Measure the ring: `ring_outer` outside, `ring_inner` where the line passes.",
};

void JudgeInner(const Maybe<Length>& outer, const Maybe<Length>& inner, std::vector<Finding>& findings) {
  if (!outer || !inner || inner->value < outer->value) return;
  findings.push_back(MakeFinding(
      kRingInner, inner->at, absl::StrFormat("%.2f mm inside a ring of %.2f mm", inner->value.mm(), outer->value.mm()),
      {{"inner_mm", inner->value.mm()}, {"outer_mm", outer->value.mm()}}));
}

void JudgeRingInner(const View& view, std::vector<Finding>& findings) {
  std::set<std::string> seen;  // a model is judged once, however many of it are on the rod
  for (const Guide& guide : view.rod.guides) {
    if (seen.insert(guide.model).second) JudgeInner(guide.ring_outer, guide.ring_inner, findings);
  }
  if (view.rod.tip_top) JudgeInner(view.rod.tip_top->ring_outer, view.rod.tip_top->ring_inner, findings);
}

constexpr Code kRingOrder = {
    .name = "guides/ring-order",
    .severity = Severity::kWarning,
    .summary = "A ring is larger than the one behind it",
    .why =
        "Rings lead the line down from the reel to the tip. A larger one further up lets it flap, and is weight "
        "where weight costs most. A fly rod's tip-top is no such case.",
    .action = "Look whether two guides were interchanged.",
};

// The diameter that both rings know: where the line passes, else outside.
std::optional<std::pair<Length, Length>> Comparable(const Guide& a, const Guide& b) {
  if (a.ring_inner && b.ring_inner) return std::pair{a.ring_inner->value, b.ring_inner->value};
  if (a.ring_outer && b.ring_outer) return std::pair{a.ring_outer->value, b.ring_outer->value};
  return std::nullopt;
}

void JudgeRingOrder(const View& view, std::vector<Finding>& findings) {
  const std::vector<const Guide*> guides = AlongTheRod(view);
  for (std::size_t i = 1; i < guides.size(); ++i) {
    const auto rings = Comparable(*guides[i - 1], *guides[i]);
    // a tenth of a millimetre: the same size from two makers
    if (!rings || rings->second <= rings->first + Length::Mm(0.1)) continue;
    findings.push_back(
        MakeFinding(kRingOrder, guides[i]->at.Field("model"),
                    absl::StrFormat("'%s' has a ring of %.2f mm, and '%s' behind it one of %.2f mm", guides[i]->id,
                                    rings->second.mm(), guides[i - 1]->id, rings->first.mm()),
                    {{"ring_mm", rings->second.mm()}, {"behind_mm", rings->first.mm()}}));
    findings.back().from_tip_mm = view.rod.FromTipMm(guides[i]->ring);
  }
}

constexpr Code kKnot = {
    .name = "guides/knot",
    .severity = Severity::kWarning,
    .summary = "The leader knot does not pass the smallest ring",
    .why = "A knot that stops at the tip-top ends the cast, and sometimes the ring.",
    .action = "Take larger rings towards the tip, a slimmer knot, or a leader that stays outside.",
};

void JudgeKnot(const View& view, std::vector<Finding>& findings) {
  if (!view.rod.order.knot_diameter) return;
  const Known<Length>* smallest = nullptr;
  const auto look = [&](const Maybe<Length>& ring) {
    if (ring && (smallest == nullptr || ring->value < smallest->value)) smallest = &*ring;
  };
  for (const Guide& guide : view.rod.guides) look(guide.ring_inner);
  if (view.rod.tip_top) look(view.rod.tip_top->ring_inner);
  const Known<Length>& knot = *view.rod.order.knot_diameter;
  if (smallest == nullptr || knot.value < smallest->value) return;
  findings.push_back(MakeFinding(kKnot, knot.at,
                                 absl::StrFormat("a knot of %.2f mm, and the smallest ring is %.2f mm inside",
                                                 knot.value.mm(), smallest->value.mm()),
                                 {{"knot_mm", knot.value.mm()}, {"ring_mm", smallest->value.mm()}}));
  findings.back().related.push_back(smallest->at);
}

}  // namespace

std::vector<Rule<View>> RingRules() {
  return {{&kModelUnknown, JudgeModelUnknown},
          {&kRingInner, JudgeRingInner},
          {&kRingOrder, JudgeRingOrder},
          {&kKnot, JudgeKnot}};
}

}  // namespace withy::guides
