#include "pieces.h"

namespace withy {
namespace {

// What a spigot adds to the section it is fixed in; unset where that is not known.
std::optional<Uncertain> StandingOut(const Rod& rod, const Section& section) {
  Uncertain sum;
  for (const Joint& joint : rod.blank.joints) {
    if (joint.kind != JointKind::kSpigot || joint.spigot_fixed_in.empty()) continue;
    if (joint.spigot_fixed_in != section.id) continue;
    if (!joint.spigot_standing_out) return std::nullopt;
    sum = sum + Uncertain(joint.spigot_standing_out->value.meters());
  }
  return sum;
}

std::optional<Uncertain> LengthOfPiece(const Rod& rod, const Section& section, bool first, bool last) {
  if (first && last) return rod.overall_m;
  const std::optional<Uncertain> spigot = StandingOut(rod, section);
  if (!section.from_m || !spigot) return std::nullopt;
  Uncertain length = *section.to_m - *section.from_m + *spigot;
  if (first) {
    if (!rod.blank_butt_m) return std::nullopt;
    length = length + *rod.blank_butt_m;
  }
  if (last) {
    if (!rod.overall_m || !rod.blank_tip_m) return std::nullopt;
    length = length + (*rod.overall_m - *rod.blank_tip_m);
  }
  return length;
}

}  // namespace

void FillPieces(const Rod& rod, FitAnswers& answers) {
  const std::vector<int>& assembled = rod.blank.assembled;
  if (assembled.empty()) return;
  answers.pieces = static_cast<int>(assembled.size());
  std::optional<Uncertain> longest;
  for (std::size_t i = 0; i < assembled.size(); ++i) {
    const auto length = LengthOfPiece(rod, rod.blank.sections[assembled[i]], i == 0, i + 1 == assembled.size());
    if (!length) {
      answers.unknowns.push_back({"sections.packed_length_mm", "what tells the overall length tells the pieces"});
      return;
    }
    if (!longest || length->value() > longest->value()) longest = length;
  }
  answers.packed_length_m = longest;
}

}  // namespace withy
