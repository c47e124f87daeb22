#include "withy/fit/mouth_play.h"

#include <algorithm>

#include "plan_basis.h"

namespace withy {
namespace {

constexpr std::size_t kMostGaps = 2000;  // pairs of them are looked at
constexpr double kOnePlace_m = 1e-6;     // two gaps no further apart are one place seen twice

// At every corner of bore and blank from the butt face to the mouth.
std::vector<HalfGap> GapsOf(const Insertion& insertion, double tighter_m, double cut_m, double rest_m) {
  const double mouth_m = insertion.bore_length(), end_m = std::min(mouth_m, rest_m + insertion.shaft_length() - cut_m);
  if (!(rest_m < end_m)) return {};
  const Profile bore = insertion.bore().Slice(rest_m, end_m);
  const Profile blank = insertion.shaft().Shifted(rest_m - cut_m).Slice(rest_m, end_m);
  std::vector<HalfGap> gaps;
  for (const Profile* profile : {&bore, &blank}) {
    for (const Profile::Knot& knot : profile->knots()) {
      for (const auto side : {Profile::Limit::kLeft, Profile::Limit::kRight}) {
        gaps.push_back({knot.x, std::max(0.0, (bore.At(knot.x, side) - blank.At(knot.x, side) - tighter_m) / 2)});
      }
    }
  }
  return gaps;
}

// Those of them that are on the blank leave less than bare blank does; nothing where none is.
std::vector<HalfGap> GapsAtArbors(const Profile& bore, const std::vector<ArborInBore>& arbors, double rest_m,
                                  double end_m) {
  std::vector<HalfGap> gaps;
  for (const ArborInBore& arbor : arbors) {
    const double from_m = std::max(arbor.from_m, rest_m), to_m = std::min(arbor.to_m, end_m);
    if (!(from_m < to_m)) continue;
    gaps.push_back({from_m, std::max(0.0, (bore.At(from_m) - arbor.outer_m) / 2)});
    gaps.push_back({to_m, std::max(0.0, (bore.At(to_m, Profile::Limit::kLeft) - arbor.outer_m) / 2)});
  }
  return gaps;
}

}  // namespace

double TipOffAxis(const std::vector<HalfGap>& gaps, double tip_z_m) {
  std::optional<double> least;
  for (const HalfGap& ahead : gaps) {
    for (const HalfGap& behind : gaps) {
      if (!(ahead.z_m - behind.z_m > kOnePlace_m)) continue;
      const double off_m =
          ahead.half_m + (ahead.half_m + behind.half_m) * (tip_z_m - ahead.z_m) / (ahead.z_m - behind.z_m);
      least = std::min(least.value_or(off_m), off_m);
    }
  }
  return least.value_or(0);
}

std::optional<MouthPlay> MouthPlayOf(const Rod& rod, const std::vector<ArborInBore>& arbors) {
  const auto basis = fit::PlanBasisOf(rod);
  if (!basis || basis->host == nullptr || basis->law.as_read() == nullptr || basis->law.Contradicted()) {
    return std::nullopt;
  }
  const Insertion& insertion = *basis->law.as_read();
  const double mouth_m = insertion.bore_length();
  if (!basis->Told(basis->planned_m) || basis->law.setup().known_to_z_m < mouth_m) return std::nullopt;
  const double rest_m = basis->law.RestAt(basis->planned_m);
  const double tip_z_m = rest_m + insertion.shaft_length() - basis->planned_m;
  if (!(mouth_m - rest_m > kOnePlace_m) || !(tip_z_m > mouth_m)) return std::nullopt;
  const double at_mouth_m = basis->planned_m + mouth_m - rest_m;  // on the blank as supplied
  const auto inside = Profile::Limit::kLeft;
  MouthPlay play;
  play.play_m =
      insertion.bore().At(mouth_m, inside) - insertion.shaft().At(at_mouth_m, inside) - basis->law.tighter_m();
  play.ahead_m = tip_z_m - mouth_m;
  std::vector<HalfGap> gaps = GapsOf(insertion, basis->law.tighter_m(), basis->planned_m, rest_m);
  const std::vector<HalfGap> at_arbors = GapsAtArbors(insertion.bore(), arbors, rest_m, mouth_m);
  if (gaps.size() + at_arbors.size() > kMostGaps) return play;
  play.off_axis_m = TipOffAxis(gaps, tip_z_m);
  gaps.insert(gaps.end(), at_arbors.begin(), at_arbors.end());
  if (!at_arbors.empty()) play.off_axis_with_arbors_m = TipOffAxis(gaps, tip_z_m);
  return play;
}

}  // namespace withy
