#include <string>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "rules.h"

namespace withy::guides {
namespace {

// Places and sizes that differ from a limit by less are at it: rounding of inches and millimetres.
constexpr double kSame = 1e-9;

template <typename Rule>
std::string WhoSays(const Rule& rule) {
  return rule.plugin.empty() ? rule.source : absl::StrCat("rule of ", rule.plugin, ": ", rule.source);
}

bool Outside(const UsualRange& usual, double value) {
  return value < usual.least - kSame || value > usual.most + kSame;
}

// "casting"; of an order that names no technique nothing is usual, so that there is one.
const std::string& TechniqueOf(const View& view) {
  return view.answers.practice.technique;
}

constexpr Code kButtGuidePlace = {
    .name = "guides/butt-guide-place",
    .severity = Severity::kAdvice,
    .summary = "The butt guide stands where builders of this technique seldom put it",
    .why =
        "Too near the reel, the line leaves the spool at a steep angle and slaps; too far, it sags and wraps around "
        "the "
        "blank. What is usual was found by casting.",
    .action =
        "Tape the butt guide on and cast: where that place was found by casting, waive the finding with that reason.",
};

// The butt guide, where its place is one that a range can be held against.
const Guide* PlacedButtGuide(const View& view) {
  const std::vector<const Guide*> guides = AlongTheRod(view);
  if (guides.empty() || !guides.front()->ring.from_butt_m) return nullptr;
  const std::optional<Span> blank = BlankOn(Origin::kFromButt, view.rod);
  if (blank && guides.front()->ring.from_butt_m->value() < blank->start) return nullptr;  // told as off the blank
  return guides.front();
}

void JudgePlaceFrom(const View& view, const Guide& guide, const UsualRange& usual, double origin_m, const char* origin,
                    const char* number, std::vector<Finding>& findings) {
  const double place = guide.ring.from_butt_m->value() - origin_m;
  if (!Outside(usual, place)) return;
  findings.push_back(AtGuide(
      view, kButtGuidePlace, guide,
      absl::StrFormat("'%s' stands %.0f mm from %s; usual for %s is %.0f to %.0f mm (%s)", guide.id, place * 1000,
                      origin, TechniqueOf(view), usual.least * 1000, usual.most * 1000, WhoSays(usual)),
      {{number, place * 1000}, {"least_mm", usual.least * 1000}, {"most_mm", usual.most * 1000}}));
}

void JudgeButtGuidePlace(const View& view, std::vector<Finding>& findings) {
  const Guide* guide = PlacedButtGuide(view);
  if (guide == nullptr || NearTheReel(view)) return;
  const Practice& practice = view.answers.practice;
  if (practice.butt_guide_from_reel && view.rod.order.reel_foot_m) {
    JudgePlaceFrom(view, *guide, *practice.butt_guide_from_reel, view.rod.order.reel_foot_m->value(),
                   "the middle of the reel's foot", "from_reel_mm", findings);
  }
  if (practice.butt_guide_from_butt) {
    JudgePlaceFrom(view, *guide, *practice.butt_guide_from_butt, 0, "the butt end", "from_butt_mm", findings);
  }
}

constexpr Code kCount = {
    .name = "guides/count",
    .severity = Severity::kAdvice,
    .summary = "The rod has fewer or more guides than builders of this technique usually take",
    .why =
        "With too few the line cuts the corners of the bend and each guide turns it sharply; each one too many is "
        "weight on the tip, and friction.",
    .action = "Load the rod with the line through the guides and look whether the line follows the bend.",
};

void JudgeCount(const View& view, std::vector<Finding>& findings) {
  const std::optional<UsualCount>& rule = view.answers.practice.guides;
  if (!rule || view.rod.guides.empty()) return;
  std::optional<double> rod_m;
  if (view.rod.overall_m) rod_m = view.rod.overall_m->value();
  if (!rod_m && view.rod.order.overall_length) rod_m = view.rod.order.overall_length->value.meters();
  if (!rod_m && rule->per_foot > 0) return;
  const UsualRange usual = rule->For(rod_m.value_or(0));
  const double count = static_cast<double>(view.rod.guides.size());
  if (!Outside(usual, count)) return;
  std::vector<Number> numbers = {{"guides", count}, {"least", usual.least}, {"most", usual.most}};
  if (rod_m) numbers.push_back({"rod_mm", *rod_m * 1000});
  findings.push_back(MakeFinding(
      kCount, FieldPath().Field("intent").Field("technique"),
      absl::StrFormat("%d guides and a tip-top; usual for %s%s is %.0f to %.0f (%s)", view.rod.guides.size(),
                      TechniqueOf(view), rod_m ? absl::StrFormat(" on a rod of %.0f mm", *rod_m * 1000) : std::string(),
                      usual.least, usual.most, WhoSays(*rule)),
      std::move(numbers)));
}

constexpr Code kRingRange = {
    .name = "guides/ring-range",
    .severity = Severity::kAdvice,
    .summary = "A ring is smaller or larger than builders of this technique usually take",
    .why =
        "A butt guide that is too small chokes the line where it comes off the reel in loops; rings that are too large "
        "are weight where it costs most, and let the line flap.",
    .action = "Look at the label again: ring sizes are sold by the outside diameter in mm.",
};

void JudgeRing(const View& view, const Guide& guide, const std::optional<UsualRange>& usual, const char* which,
               std::vector<Finding>& findings) {
  if (!usual || !guide.ring_outer || !Outside(*usual, guide.ring_outer->value.meters())) return;
  const double ring_mm = guide.ring_outer->value.mm();
  findings.push_back(MakeFinding(
      kRingRange, guide.at.Field("model"),
      absl::StrFormat("'%s', %s, has a ring of %.4g mm; usual for %s is %.4g to %.4g mm (%s)", guide.id, which, ring_mm,
                      TechniqueOf(view), usual->least * 1000, usual->most * 1000, WhoSays(*usual)),
      {{"ring_mm", ring_mm}, {"least_mm", usual->least * 1000}, {"most_mm", usual->most * 1000}}));
  findings.back().from_tip_mm = view.rod.FromTipMm(guide.ring);
  findings.back().related.push_back(guide.ring_outer->at);
}

void JudgeRingRange(const View& view, std::vector<Finding>& findings) {
  const std::vector<const Guide*> guides = AlongTheRod(view);
  if (guides.empty()) return;
  JudgeRing(view, *guides.front(), view.answers.practice.butt_ring, "the butt guide", findings);
  if (guides.size() == 1) return;
  JudgeRing(view, *guides.back(), view.answers.practice.running_ring, "next to the tip-top", findings);
}

}  // namespace

std::vector<Rule<View>> PracticeRules() {
  return {{&kButtGuidePlace, JudgeButtGuidePlace}, {&kCount, JudgeCount}, {&kRingRange, JudgeRingRange}};
}

}  // namespace withy::guides
