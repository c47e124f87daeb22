#include "draft.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "withy/sections/material.h"

namespace withy {
namespace {

// How well a computed balance point of a section is known, as a share of its length: by walls that were measured, by
// walls that were written, by one assumed or inferred ratio of wall to diameter. Common practice, no source.
constexpr double kCenterByMeasuredWall = 0.01;
constexpr double kCenterByWrittenWall = 0.02;
constexpr double kCenterByRatio = 0.03;
// Of a mass that was computed with an assumed wall: the wall may be half or twice.
constexpr double kMassByAssumedWall = 0.5;
constexpr double kUnstatedBalanceM = 0.001;
// Only shares of it are used: without a density masses are known up to a factor that a total must fix.
constexpr double kAnyDensity = 1500;

struct UsedDensity {
  double kg_m3 = kAnyDensity;
  double plus_minus = 0;
  bool known = false;
  std::string from;  // name of the input
};

UsedDensity DensityFor(const Maybe<double>& written, const std::string& material, const FieldPath& at,
                   SectionsAnswers& answers) {
  if (written && written->value > 0) {
    return {written->value, written->plus_minus.value_or(0), true, written->at.ToString()};
  }
  const auto table = DensityOfMaterial(material);
  if (!table) return {};
  answers.assumptions.push_back({at, absl::StrFormat("%.0f kg/m3", table->kg_m3), table->why});
  return {table->kg_m3, table->plus_minus_kg_m3, true, absl::StrCat(at.ToString(), " (assumed)")};
}

double CenterPlusMinus(const Section& section, const Distribution& distribution) {
  const double share = !distribution.wall_given()                        ? kCenterByRatio
                       : section.wall_measured || !distribution.hollow() ? kCenterByMeasuredWall
                                                                         : kCenterByWrittenWall;
  return share * section.length->value.meters();
}

struct Center {
  double at = 0, plus_minus = 0;
  std::string from;  // name of the input
};

// The balance point is known for itself, not by the mass.
std::pair<Uncertain, Uncertain> MassAndMoment(Inputs& inputs, const Uncertain& mass, const Center& center) {
  return {mass, mass * inputs.Add(center.at, center.plus_minus, center.from)};
}

Uncertain StatedMass(const SectionMass& stated, Inputs& inputs, bool& unstated) {
  return inputs.Add(stated.mass.value.kilograms(), MassPlusMinus(stated.mass, unstated), stated.mass.at.ToString());
}

Center StatedCenter(const SectionMass& stated) {
  return {stated.balance->value.meters(), stated.balance->plus_minus.value_or(kUnstatedBalanceM),
          stated.balance->at.ToString()};
}

// From how the mass lies along it.
Center ComputedCenter(const Section& section, const Distribution& distribution, const MassProperties& computed) {
  return {computed.Balance(), CenterPlusMinus(section, distribution),
          absl::StrCat(OuterDiametersOf(section), " (how its mass lies along it)")};
}

// Where the balance point went when what came off an earlier, longer piece took its share: (c - x o) / (1 - x), with the
// off-cut's share x of the mass and its balance point o.
Center CenterAfterCuts(const SectionMass& earlier, const SectionMass& now, const Distribution& distribution) {
  const MassProperties then = distribution.Properties(earlier.from.meters(), earlier.to.meters());
  const MassProperties left = distribution.Properties(now.from.meters(), now.to.meters());
  const double share = left.mass_kg / then.mass_kg;
  const double point = earlier.balance->value.meters() - (then.s_kg_m - left.s_kg_m) / then.mass_kg;
  return {point / share, earlier.balance->plus_minus.value_or(kUnstatedBalanceM) / share,
          earlier.balance->at.ToString()};
}

// As measured; else from the balance point of the piece before it was cut; else from the computed distribution.
Center CenterOf(const SectionMass& stated, const Section& section, const Distribution& distribution,
                const MassProperties& computed) {
  if (stated.balance) return StatedCenter(stated);
  if (section.balanced_before) return CenterAfterCuts(*section.balanced_before, stated, distribution);
  return ComputedCenter(section, distribution, computed);
}

// A written mass spread by the computed distribution; what was cut off since it was weighed goes with its share.
void SpreadStatedMass(const SectionMass& stated, Draft& draft, Inputs& inputs, bool& unstated) {
  const double weighed_from = stated.from.meters(), weighed_to = stated.to.meters();
  const MassProperties weighed = draft.distribution->Properties(weighed_from, weighed_to);
  if (!(weighed.mass_kg > 0)) return;
  const Center center = CenterOf(stated, *draft.section, *draft.distribution, weighed);
  auto [m, moment] = MassAndMoment(inputs, StatedMass(stated, inputs, unstated), center);
  MassProperties off;
  if (draft.from > weighed_from) off += draft.distribution->Properties(weighed_from, draft.from);
  if (draft.to < weighed_to) off += draft.distribution->Properties(draft.to, weighed_to);
  draft.mass_kg = m * Uncertain(1 - off.mass_kg / weighed.mass_kg);
  const Uncertain moment_as_supplied = moment - m * Uncertain(off.s_kg_m / weighed.mass_kg);
  draft.moment_kg_m = moment_as_supplied - *draft.mass_kg * *draft.section->from_m;
}

// From walls and density; uncertainty from moving all diameters, all walls and the density together.
void ComputeMass(const UsedDensity& density, Draft& draft, Inputs& inputs) {
  const Distribution& d = *draft.distribution;
  const MassProperties left = d.Properties(draft.from, draft.to);
  if (!(left.mass_kg > 0)) return;
  const double outer_pm = draft.section->taper.diameter_plus_minus_m.value_or(0);
  const double wall_pm = d.hollow() ? draft.section->wall_plus_minus_m.value_or(0) : 0;
  const auto grown = [&](double outer, double wall) {
    return d.Properties(draft.from, draft.to, outer, wall).mass_kg - left.mass_kg;
  };
  const std::string diameters = OuterDiametersOf(*draft.section);
  const Uncertain by_density = inputs.Add(density.kg_m3, density.plus_minus, density.from) / density.kg_m3;
  Uncertain mass = left.mass_kg * by_density;
  mass = mass + inputs.Add(0, grown(outer_pm, 0), diameters);
  mass = mass + inputs.Add(0, grown(0, wall_pm), absl::StrCat(diameters, " (walls)"));
  if (!d.wall_given() || !density.known) {
    mass = mass + inputs.Add(0, kMassByAssumedWall * left.mass_kg, absl::StrCat(diameters, " (wall assumed)"));
  }
  auto [m, moment] = MassAndMoment(inputs, mass, ComputedCenter(*draft.section, d, left));
  draft.mass_kg = m;
  draft.moment_kg_m = moment - m * *draft.section->from_m;
}

// Without diameters only a mass and balance point of the uncut section say anything.
void TakeUncutMass(const SectionMass& stated, Draft& draft, Inputs& inputs, bool& unstated) {
  if (draft.from != stated.from.meters() || draft.to != stated.to.meters()) return;
  if (!stated.balance) {
    draft.mass_kg = StatedMass(stated, inputs, unstated);
    return;
  }
  auto [m, moment] = MassAndMoment(inputs, StatedMass(stated, inputs, unstated), StatedCenter(stated));
  draft.mass_kg = m;
  draft.moment_kg_m = moment - m * *draft.section->from_m;
}

}  // namespace

std::string OuterDiametersOf(const Section& section) { return section.taper.at.Field("stations").ToString(); }

Draft DraftSection(const Section& section, Inputs& inputs, SectionsAnswers& answers, bool& unstated) {
  Draft draft;
  draft.section = &section;
  if (!section.from_m) return draft;
  draft.from = section.from_m->value();
  draft.to = section.to_m->value();
  const bool stated = section.mass && section.mass->mass.value.kilograms() > 0;
  draft.stated = stated;
  draft.measured = stated && section.mass->mass.source == Source::kMeasured;
  if (section.outer.empty() || section.shape == Shape::kOther) {
    if (stated) TakeUncutMass(*section.mass, draft, inputs, unstated);
    return draft;
  }
  const UsedDensity density = DensityFor(section.density_kg_m3, section.material, section.at.Field("density"), answers);
  double splice_density = density.kg_m3;
  if (section.splice_at) {
    splice_density = DensityFor(section.splice_density_kg_m3, section.splice_material,
                                section.at.Field("splice").Field("density"), answers).kg_m3;
  }
  draft.density_known = density.known;
  draft.density_kg_m3 = density.known ? density.kg_m3 : 0;
  draft.distribution.emplace(section, density.kg_m3, splice_density);
  if (stated) {
    SpreadStatedMass(*section.mass, draft, inputs, unstated);
  } else {
    ComputeMass(density, draft, inputs);
  }
  return draft;
}

}  // namespace withy
