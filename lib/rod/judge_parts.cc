#include "judge_parts.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "absl/strings/str_format.h"
#include "codes.h"
#include "read_quantity.h"

namespace withy {
namespace {

using Rings = google::protobuf::RepeatedPtrField<v1::Ring>;

constexpr double kSameM = 1e-9;
// Two readings of one hole with a calliper (common practice, no source).
constexpr double kSameHoleM = 0.0002;
constexpr double kSameMass = 0.02;  // relative: units of one stock (common practice, no source)

// The first row that falls back.
void JudgeOrder(Resolver& r, const Rings& rings, const FieldPath& at) {
  std::optional<double> before;
  for (int i = 0; i < rings.size(); ++i) {
    const auto place = LengthOf(rings[i].at());
    if (!place || !LengthOf(rings[i].diameter())) continue;
    if (before && place->meters() < *before) {
      r.rod.findings.push_back(
          MakeFinding(kRingOrder, at.Item("", i).Field("at"),
                      absl::StrFormat("this row is at %.6g mm, and the one before it at %.6g mm: none of the rows is used",
                                      place->mm(), *before * 1000),
                      {{"at_mm", place->mm()}, {"before_mm", *before * 1000}}));
      return;
    }
    before = place->meters();
  }
}

void JudgeOrders(Resolver& r, const v1::Part& written, const FieldPath& at) {
  JudgeOrder(r, written.outer(), at.Field("outer"));
  JudgeOrder(r, written.bore(), at.Field("bore"));
  for (int i = 0; i < written.arbors_size(); ++i) {
    JudgeOrder(r, written.arbors(i).bore(), at.Field("arbors").Item(written.arbors(i).id(), i).Field("bore"));
  }
}

// One row alone is a straight tube.
bool Tells(const Profile& profile, double x) {
  return profile.knots().size() == 1 || (x >= profile.begin() && x <= profile.end());
}

// Where both are told there is at least one knot at which they come closest, on one of its two sides.
struct Wall {
  double at = 0, bore = 0, outer = 0;
  double thickness() const { return outer - bore; }
};

std::optional<Wall> ThinnestWall(const Profile& bore, const Profile& outer) {
  std::optional<Wall> thinnest;
  for (const Profile* profile : {&bore, &outer}) {
    for (const Profile::Knot& knot : profile->knots()) {
      if (!Tells(bore, knot.x) || !Tells(outer, knot.x)) continue;
      for (const auto side : {Profile::Limit::kLeft, Profile::Limit::kRight}) {
        const Wall wall{knot.x, bore.At(knot.x, side), outer.At(knot.x, side)};
        if (!thinnest || wall.thickness() < thinnest->thickness()) thinnest = wall;
      }
    }
  }
  return thinnest;
}

// Of what is stretched or shrunk on, the bore is as sold and the outside as it will be.
void JudgeBoreInPart(Resolver& r, const Part& part) {
  if (part.bore.empty() || part.outer.empty() || part.fitting != FitKind::kRigid) return;
  const std::optional<Wall> wall = ThinnestWall(part.bore, part.outer);
  if (!wall || wall->thickness() > -kSameM) return;
  r.rod.findings.push_back(MakeFinding(
      kBoreWiderThanPart, part.at.Field("bore"),
      absl::StrFormat("%.1f mm from its own butt end the bore is %.2f mm wide and the part round it %.2f mm",
                      wall->at * 1000, wall->bore * 1000, wall->outer * 1000),
      {{"at_mm", wall->at * 1000}, {"bore_mm", wall->bore * 1000}, {"outer_mm", wall->outer * 1000}}));
  r.rod.findings.back().related.push_back(part.at.Field("outer"));
}

void JudgeCavity(Resolver& r, const Part& part) {
  if (!part.cavity || part.bore.empty() || part.bore_known != BoreKnown::kProfile) return;
  const auto length = Positive(part.cavity->length), diameter = Positive(part.cavity->diameter);
  if (!part.cavity->own_at || !length || !diameter) return;
  const double from = std::max(part.cavity->own_at->value.meters(), part.bore.begin());
  const double to = std::min((part.cavity->own_at->value + *length).meters(), part.bore.end());
  if (!(from < to)) return;
  const double narrowest = part.bore.Min(from, to);
  if (narrowest >= diameter->meters() - kSameHoleM) return;
  r.rod.findings.push_back(
      MakeFinding(kCavityAgainstBore, part.cavity->at.Field("diameter"),
                  absl::StrFormat("the cavity is %.2f mm across, and the bore is %.2f mm within it", diameter->mm(),
                                  narrowest * 1000),
                  {{"cavity_mm", diameter->mm()}, {"bore_mm", narrowest * 1000}}));
  r.rod.findings.back().related.push_back(part.at.Field("bore"));
}

void JudgeUnit(Resolver& r, const Part& part) {
  const auto shop = Positive(r.rod.shop.counterweight_unit);
  const auto unit = part.weights ? Positive(part.weights->unit_mass) : std::nullopt;
  if (!shop || !unit || std::abs(shop->grams() / unit->grams() - 1) <= kSameMass) return;
  r.rod.findings.push_back(MakeFinding(
      kCounterweightUnit, part.weights->unit_mass->at,
      absl::StrFormat("one weighs %.2f g here, and %.2f g in the shop's stock", unit->grams(), shop->grams()),
      {{"unit_g", unit->grams()}, {"stock_g", shop->grams()}}));
  r.rod.findings.back().related.push_back(r.rod.shop.counterweight_unit->at);
}

}  // namespace

void JudgeParts(Resolver& r) {
  for (std::size_t i = 0; i < r.rod.handle.parts.size(); ++i) {
    const Part& part = r.rod.handle.parts[i];
    JudgeOrders(r, r.design.handle().parts(static_cast<int>(i)), part.at);
    JudgeBoreInPart(r, part);
    JudgeCavity(r, part);
    JudgeUnit(r, part);
  }
}

}  // namespace withy
