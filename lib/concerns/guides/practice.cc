#include "withy/guides/practice.h"

#include <algorithm>
#include <cmath>

namespace withy {
namespace {

constexpr double kFoot_m = 0.3048;
constexpr char kFlyButtGuide[] = "quoted by builders of fly rods: 28 to 32 in from the butt end";
constexpr char kFlyCount[] = "quoted by builders of fly rods: one per foot and one more; here give or take one";

UsualRange Mm(double least, double most, const char* source = kCommonPractice) {
  return {least / 1000, most / 1000, source, ""};
}

UsualCount Count(double per_foot, double least, double most, const char* source = kCommonPractice) {
  return {per_foot, least, most, source, ""};
}

std::vector<Practice> MakePractices() {
  return {
      {.technique = "fly",
       .butt_guide_from_butt = Mm(711.2, 812.8, kFlyButtGuide),
       .butt_ring = Mm(8, 20),
       .running_ring = Mm(4, 12),
       .guides = Count(1, 0, 2, kFlyCount)},
      {.technique = "spinning",
       .butt_guide_from_reel = Mm(350, 750),
       .butt_ring = Mm(12, 40),
       .running_ring = Mm(4, 12),
       .guides = Count(1, -1.5, 2)},
      {.technique = "casting",
       .butt_guide_from_reel = Mm(400, 750),
       .butt_ring = Mm(6, 20),
       .running_ring = Mm(4, 10),
       .guides = Count(1, -1, 3)},
      {.technique = "surf",
       .butt_guide_from_reel = Mm(600, 1300),
       .butt_ring = Mm(16, 60),
       .running_ring = Mm(8, 20),
       .guides = Count(0.6, -1.5, 2)},
      {.technique = "conventional",
       .butt_guide_from_reel = Mm(400, 900),
       .butt_ring = Mm(10, 40),
       .running_ring = Mm(6, 20),
       .guides = Count(1, -1.5, 3)},
      {.technique = "float",
       .butt_guide_from_reel = Mm(400, 1100),
       .butt_ring = Mm(10, 30),
       .running_ring = Mm(4, 10),
       .guides = Count(1, -2, 3)},
      // a rod of two feet or three: nothing of the others fits it
      {.technique = "ice",
       .butt_guide_from_reel = Mm(150, 400),
       .butt_ring = Mm(6, 25),
       .running_ring = Mm(3, 10),
       .guides = Count(1, 0, 4)},
  };
}

// The technique whose rules hold where `technique` has none.
std::string_view LikeOf(std::string_view technique) {
  return technique == "trolling" ? "conventional" : technique;
}

template <typename Rule>
void Take(const std::optional<Rule>& other, std::optional<Rule>& usual) {
  if (other) usual = other;
}

void Take(const Practice& other, Practice& practice) {
  if (other.butt_guide_from_reel || other.butt_guide_from_butt) {
    practice.butt_guide_from_reel = other.butt_guide_from_reel;
    practice.butt_guide_from_butt = other.butt_guide_from_butt;
  }
  Take(other.butt_ring, practice.butt_ring);
  Take(other.running_ring, practice.running_ring);
  Take(other.guides, practice.guides);
}

// Both in one: nothing where they have nothing in common.
std::optional<UsualRange> Common(const UsualRange& a, const UsualRange& b) {
  const UsualRange both = {std::max(a.least, b.least), std::min(a.most, b.most), a.source, a.plugin};
  return both.least <= both.most ? std::optional(both) : std::nullopt;
}

}  // namespace

UsualRange UsualCount::For(double rod_m) const {
  const double feet = per_foot * rod_m / kFoot_m;
  return {std::max(0.0, std::round(feet + least)), std::max(0.0, std::round(feet + most)), source, plugin};
}

const std::vector<Practice>& UsualPractices() {
  static const std::vector<Practice> practices = MakePractices();
  return practices;
}

Practice PracticeFor(std::string_view technique, const std::vector<Practice>& others) {
  Practice practice;
  for (const Practice& usual : UsualPractices()) {
    if (usual.technique == LikeOf(technique)) practice = usual;
  }
  practice.technique = std::string(technique);
  for (auto other = others.rbegin(); other != others.rend(); ++other) {  // the first of several comes last
    if (other->technique == technique) Take(*other, practice);
  }
  return practice;
}

std::optional<UsualRange> ButtGuideBounds(const Practice& practice, std::optional<double> reel_foot_m) {
  std::optional<UsualRange> from_reel = practice.butt_guide_from_reel;
  if (from_reel) {
    if (!reel_foot_m) return practice.butt_guide_from_butt;
    from_reel->least += *reel_foot_m;
    from_reel->most += *reel_foot_m;
  }
  if (!from_reel || !practice.butt_guide_from_butt) return from_reel ? from_reel : practice.butt_guide_from_butt;
  return Common(*from_reel, *practice.butt_guide_from_butt);
}

}  // namespace withy
