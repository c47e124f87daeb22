// The loads that the design asks about.
#include "read_quantity.h"
#include "resolver.h"

namespace withy {
namespace {

// A weight pulls with standard gravity, so that its uncertainty does too.
Maybe<double> WeightOf(const Maybe<Mass>& mass) {
  if (!mass) return std::nullopt;
  Known<double> weight{mass->value.kilograms() * kStandardGravity, std::nullopt, mass->source, mass->at};
  if (mass->plus_minus) weight.plus_minus = *mass->plus_minus * kStandardGravity;
  return weight;
}

LoadCase ReadLoadCase(const v1::LoadCase& from, int i, const Maybe<Length>& holding_point) {
  LoadCase load;
  load.id = from.id();
  load.at = FieldPath().Field("load_cases").Item(from.id(), i);
  load.load_n = from.has_lifted() ? WeightOf(ReadMass(from.lifted(), load.at, "lifted"))
                                  : ReadForce(from.tension(), load.at, "tension");
  load.at_tip = from.at_tip();
  load.butt_angle_deg = ReadAngle(from.butt_angle(), load.at, "butt_angle")
                            .value_or(Known<double>{0, std::nullopt, Source::kPlan, load.at.Field("butt_angle")});
  load.line_angle_deg = ReadAngle(from.line_angle(), load.at, "line_angle");
  load.clamp = ReadLength(from.clamp_from_butt(), load.at, "clamp_from_butt");
  if (!load.clamp) load.clamp = holding_point;
  return load;
}

}  // namespace

void ResolveLoadCases(Resolver& r) {
  const FieldPath at = FieldPath().Field("load_cases");
  if (!WithinLimit(r, at, r.design.load_cases_size(), kMostLoadCases, "load cases")) return;
  for (int i = 0; i < r.design.load_cases_size(); ++i) {
    r.rod.load_cases.push_back(ReadLoadCase(r.design.load_cases(i), i, r.rod.order.holding_point));
  }
}

}  // namespace withy
