// What an arbor weighs that was not weighed: the room between the blank under it and its outer diameter, times a density.
#include <algorithm>
#include <string>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "contributions.h"
#include "withy/balance/load.h"

namespace withy {
namespace {

struct ArborDensity {
  double kg_m3 = 0, plus_minus_kg_m3 = 0;
};

// Common practice, no source: tape with its adhesive about as heavy as water, foam arbors light. Others differ too much.
constexpr ArborDensity kTape{1000, 200};
std::optional<ArborDensity> DensityOfKind(const std::string& kind) {
  if (kind == "tape") return kTape;
  if (kind == "foam") return ArborDensity{200, 100};
  return std::nullopt;
}

// As it is to be built; to the bore where that cannot be told: the gap for adhesive is within the density's uncertainty.
std::optional<double> OuterOf(const Arbor& arbor, const ArborFit& fit) {
  if (arbor.outer) return LengthOf(arbor.outer);
  return fit.outer_m ? fit.outer_m : fit.bore_m;
}

// Of density one, from the arbor's own butt-side edge; unset where it cannot be told, or nothing is left of it.
std::optional<MassProperties> VolumeOf(const Rod& rod, const Arbor& arbor, const ArborFit& fit) {
  const auto length = LengthOf(arbor.length);
  const auto outer = OuterOf(arbor, fit);
  if (!length || !outer || !fit.blank_m) return std::nullopt;
  Profile under({{0, *fit.blank_m}});
  if (arbor.start.on_blank_m && !rod.blank.outer.empty()) {
    under = rod.blank.outer.Shifted(-arbor.start.on_blank_m->value());
  }
  under = under.Slice(0, *length);
  MassProperties sum;
  for (std::size_t i = 0; i + 1 < under.knots().size(); ++i) {
    const Profile::Knot &a = under.knots()[i], &b = under.knots()[i + 1];
    sum += Tube({a.x, b.x, *outer, *outer, a.y, b.y}, 1);
  }
  if (!(sum.mass_kg > 0)) return std::nullopt;
  return sum;
}

// Of tape, on a blank as thick all along as it is at most under the arbor: a little too light.
double AboutKg(const ArborFit& fit) {
  const auto outer = fit.outer_m ? fit.outer_m : fit.bore_m;
  if (!outer || !fit.blank_m || !fit.length_m) return 0;
  return std::max(0.0, Tube({0, *fit.length_m, *outer, *outer, *fit.blank_m, *fit.blank_m}, kTape.kg_m3).mass_kg);
}

Maybe<Mass> MassOf(const Arbor& arbor, const std::optional<MassProperties>& volume, Collection& all) {
  if (arbor.mass || !volume) return arbor.mass;
  ArborDensity density;
  if (arbor.density_kg_m3) {
    density = {arbor.density_kg_m3->value, arbor.density_kg_m3->plus_minus.value_or(0)};
  } else if (const auto usual = DensityOfKind(arbor.kind)) {
    density = *usual;
    all.assumptions.push_back({arbor.at.Field("density"),
                               absl::StrCat(usual->kg_m3, " kg/m3, give or take ", usual->plus_minus_kg_m3),
                               absl::StrCat("density of ", arbor.kind, ": common practice, no source")});
  }
  if (!(density.kg_m3 > 0)) return std::nullopt;
  return Known<Mass>{Mass::Kilograms(volume->mass_kg * density.kg_m3), volume->mass_kg * density.plus_minus_kg_m3,
                     Source::kComputed, arbor.at.Field("density")};
}

}  // namespace

void CollectArbor(const Rod& rod, const Arbor& arbor, const ArborFit& fit, Collection& all) {
  const std::optional<MassProperties> volume = VolumeOf(rod, arbor, fit);
  const Maybe<Mass> mass = MassOf(arbor, volume, all);
  if (!mass) {
    all.assumptions.push_back({arbor.at, "0 g", "not counted: neither its mass nor its size and density are known"});
    return;
  }
  const auto length = LengthOf(arbor.length);
  Count(all, {.id = arbor.id, .at = arbor.at, .mass = mass, .start = arbor.start, .length_m = length,
              .center_m = At(arbor.start, volume ? volume->Balance() : length.value_or(0) / 2)});
}

void SayProposed(const Part& part, const std::vector<ArborFit>& proposed, Collection& all) {
  if (proposed.empty()) return;
  double kg = 0;
  for (const ArborFit& arbor : proposed) kg += AboutKg(arbor);
  const std::string room = part.bond.empty() ? "" : "; the room they take is counted as full of adhesive";
  all.uncounted.push_back(
      {part.at.Field("arbors"), "0 g",
       absl::StrFormat("the design has none, and the %d that are proposed are not counted: about %.1f g of "
                       "tape%s",
                       proposed.size(), kg * 1000, room)});
}

}  // namespace withy
