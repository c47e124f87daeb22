#include "contributions.h"

#include <cmath>
#include <numbers>
#include <string>
#include <utility>

#include "absl/strings/str_cat.h"
#include "withy/numerics/circle_packing.h"
#include "withy/sections/material.h"

namespace withy {
namespace {

// A thing of known mass with its balance point `center`, spread evenly over `length` where that is known.
void Add(Collection& all, std::string id, const FieldPath& at, const Maybe<Mass>& mass, const Along& start,
         std::optional<double> length, std::optional<Uncertain> center) {
  Counted counted;
  counted.shown.id = std::move(id);
  counted.shown.at = at;
  if (start.from_butt_m) counted.shown.start_m = start.from_butt_m->value();
  counted.shown.length_m = length;
  if (mass && mass->value.kilograms() >= 0) {
    counted.shown.mass_from = mass->source;
    counted.shown.mass_kg = all.inputs.Add(mass->value.kilograms(), MassPlusMinus(*mass, all.unstated_mass),
                                            mass->at.ToString());
    counted.measured = mass->source == Source::kMeasured;
    if (length) counted.own_inertia_kg_m2 = mass->value.kilograms() * *length * *length / 12;
  }
  counted.shown.center_m = std::move(center);
  if (counted.shown.mass_kg && counted.shown.center_m) {
    counted.moment_kg_m = *counted.shown.mass_kg * *counted.shown.center_m;
  }
  all.things.push_back(std::move(counted));
}

std::optional<Uncertain> At(const Along& start, double own_m) {
  return start.from_butt_m ? std::optional<Uncertain>(*start.from_butt_m + Uncertain(own_m)) : std::nullopt;
}

std::optional<double> LengthOf(const Maybe<Length>& length) {
  if (!length || !(length->value.meters() > 0)) return std::nullopt;
  return length->value.meters();
}

// Hardware of a joint that no section's mass holds.
void AddJoint(const Rod& rod, const Joint& joint, Collection& all) {
  if (!joint.mass && !joint.spigot_mass) return;
  std::optional<Uncertain> middle, spigot;
  if (rod.blank_butt_m && joint.lower_end_m && joint.upper_start_m) {
    middle = *rod.blank_butt_m + Uncertain((*joint.lower_end_m + *joint.upper_start_m) / 2);
    spigot = middle;
    if (joint.spigot_length && joint.spigot_standing_out) {
      const double out = joint.spigot_standing_out->value.meters() - joint.spigot_length->value.meters() / 2;
      spigot = *rod.blank_butt_m +
               Uncertain(joint.spigot_fixed_in == joint.upper ? *joint.upper_start_m - out : *joint.lower_end_m + out);
    }
  }
  if (joint.mass) Add(all, joint.id, joint.at, joint.mass, {}, std::nullopt, middle);
  if (joint.spigot_mass) {
    Add(all, joint.id, joint.at.Field("spigot"), joint.spigot_mass, {}, LengthOf(joint.spigot_length), spigot);
  }
}

// Between outer profile and bore, of density one. Unset without an outer profile.
std::optional<MassProperties> VolumeOf(const Part& part, double length) {
  if (part.outer.empty()) return std::nullopt;
  const Profile outer = part.outer.Slice(0, length);
  Profile bore = part.bore.empty() || part.bore_known != BoreKnown::kProfile ? Profile() : part.bore.Slice(0, length);
  MassProperties sum;
  const auto add = [&sum](const Profile& profile, double sign) {
    for (std::size_t i = 0; i + 1 < profile.knots().size(); ++i) {
      const Profile::Knot &a = profile.knots()[i], &b = profile.knots()[i + 1];
      sum += PropertiesOf(Frustum{a.x, b.x, a.y, b.y, 0, 0}, Shape::kTube, 1) * sign;
    }
  };
  add(outer, 1);
  if (!bore.empty()) add(bore, -1);
  if (!(sum.mass_kg > 0)) return std::nullopt;
  return sum;
}

// As written; else from the profiles and the density, where the bore is known and so the volume is.
Maybe<Mass> MassOf(const Part& part, const std::optional<MassProperties>& volume, Collection& all) {
  if (part.mass || !volume || part.bore_known != BoreKnown::kProfile) return part.mass;
  double density = 0, plus_minus = 0;
  if (part.density_kg_m3) {
    density = part.density_kg_m3->value;
    plus_minus = part.density_kg_m3->plus_minus.value_or(0);
  } else if (const auto table = DensityOfMaterial(part.material)) {
    density = table->kg_m3;
    plus_minus = table->plus_minus_kg_m3;
    all.assumptions.push_back(
        {part.at.Field("mass"), "from its shape and the density of " + part.material, table->why});
  }
  if (!(density > 0)) return std::nullopt;
  return Known<Mass>{Mass::Kilograms(volume->mass_kg * density), volume->mass_kg * plus_minus, Source::kComputed,
                     part.at.Field("density")};
}

void AddArbor(const Arbor& arbor, Collection& all) {
  if (!arbor.mass) {
    all.uncounted_arbors = true;
    return;
  }
  const auto length = LengthOf(arbor.length);
  Add(all, arbor.id, arbor.at, arbor.mass, arbor.start, length, At(arbor.start, length.value_or(0) / 2));
}

// From the cavity's butt-side end forward, as many side by side as the cavity takes, full layers first.
double CenterOfWeights(const Part& part, double count) {
  const Cavity& cavity = *part.cavity;
  const double own_at = cavity.own_at ? cavity.own_at->value.meters() : 0;
  const auto unit = LengthOf(part.weights->unit_length);
  if (!unit) return own_at + LengthOf(cavity.length).value_or(0) / 2;
  int abreast = 1;
  if (cavity.diameter && part.weights->unit_diameter) {
    abreast = SideBySide(cavity.diameter->value.meters(), part.weights->unit_diameter->value.meters(), 1e-9);
  }
  abreast = std::max(abreast, 1);
  const double full = std::floor(count / abreast);
  const double rest = count - full * abreast;
  const double moment = full * abreast * full * *unit / 2 + rest * (full + 0.5) * *unit;
  return own_at + moment / count;
}

void AddWeights(const Part& part, Collection& all) {
  if (!part.weights || !part.weights->count || *part.weights->count == 0) return;
  const double count = *part.weights->count;
  Maybe<Mass> mass = part.weights->unit_mass;
  if (mass) {
    mass->value = mass->value * count;
    if (mass->plus_minus) *mass->plus_minus *= count;
  }
  std::optional<Uncertain> center;
  if (part.cavity) center = At(part.start, CenterOfWeights(part, count));
  Add(all, part.id, part.weights->at, mass, {}, std::nullopt, center);
}

std::optional<Uncertain> CenterOfTipTop(const Rod& rod) {
  if (!rod.blank_tip_m) return std::nullopt;
  const double tube = LengthOf(rod.tip_top->tube_length).value_or(0);
  const double beyond = LengthOf(rod.tip_top->end_beyond_tube).value_or(0);
  return *rod.blank_tip_m + Uncertain((beyond - tube) / 2);
}

// What keeps a wrap's mass from being told, and so what to add.
std::string WhyUncounted(const Rod& rod, const Wrap& wrap) {
  const Thread* thread = wrap.thread_index < 0 ? nullptr : &rod.threads[wrap.thread_index];
  if (thread && thread->diameter && !thread->linear_density_kg_m) {
    return absl::StrCat("not counted: how heavy thread ", wrap.thread, " is, is not known (tex)");
  }
  for (const int i : wrap.coats) {
    const Finish& finish = rod.finishes[i];
    if (!finish.film) return absl::StrCat("not counted: finish ", finish.id, " has no film");
    if (!finish.density_kg_m3) return absl::StrCat("not counted: finish ", finish.id, " has no mix.density");
  }
  if (!wrap.coats_known) return "not counted: its finish is not described";
  return "not counted: the length of its thread is not known";
}

}  // namespace

void CollectSections(const Rod& rod, const SectionsAnswers& sections, Collection& all) {
  for (const SectionAnswer& answer : sections.sections) {
    const Section& section = rod.blank.sections[answer.section];
    Counted counted;
    counted.shown.id = section.id;
    counted.shown.at = section.at;
    counted.shown.mass_kg = answer.mass_kg;
    counted.shown.mass_from = answer.mass_from;
    counted.measured = true;  // totals of sections are fitted where sections are
    if (section.from_m) counted.shown.length_m = (*section.to_m - *section.from_m).value();
    if (rod.blank_butt_m && section.start_m) {
      const Uncertain start = *rod.blank_butt_m + *section.start_m;
      counted.shown.start_m = start.value();
      if (answer.mass_kg && answer.moment_kg_m && answer.mass_kg->value() > 0) {
        counted.moment_kg_m = *answer.moment_kg_m + *answer.mass_kg * start;
        counted.shown.center_m = *counted.moment_kg_m / *answer.mass_kg;
      }
    }
    if (answer.properties && answer.properties->mass_kg > 0) {
      counted.own_inertia_kg_m2 = answer.properties->InertiaAtBalance();
    }
    all.things.push_back(std::move(counted));
  }
  for (const Joint& joint : rod.blank.joints) AddJoint(rod, joint, all);
}

void CollectHandle(const Rod& rod, Collection& all) {
  for (const Part& part : rod.handle.parts) {
    const auto length = LengthOf(part.length);
    const std::optional<MassProperties> volume = length ? VolumeOf(part, *length) : std::nullopt;
    std::optional<Uncertain> center;
    if (part.balance_from_own_butt) {
      center = At(part.start, part.balance_from_own_butt->value.meters());
    } else if (volume) {
      center = At(part.start, volume->Balance());
    } else {
      center = At(part.start, length.value_or(0) / 2);
    }
    Add(all, part.id, part.at, MassOf(part, volume, all), part.start, length, center);
    all.things.back().glued_part = !part.bond.empty();
    for (const Arbor& arbor : part.arbors) AddArbor(arbor, all);
    AddWeights(part, all);
  }
}

void CollectGuides(const Rod& rod, Collection& all) {
  for (const Guide& guide : rod.guides) {
    Add(all, guide.id, guide.at, guide.mass, guide.ring, std::nullopt, guide.ring.from_butt_m);
  }
  if (!rod.tip_top) return;
  Add(all, rod.tip_top->id, rod.tip_top->at, rod.tip_top->mass, {}, std::nullopt, CenterOfTipTop(rod));
}

void CollectWraps(const Rod& rod, const WrapsAnswers& wraps, Collection& all) {
  const FieldPath* told = nullptr;
  for (std::size_t i = 0; i < rod.wraps.size(); ++i) {
    const Wrap& wrap = rod.wraps[i];
    const WrapAnswer& answer = wraps.wraps[i];
    if (!answer.thread_kg || !answer.finish_kg) {
      // An entry of several wraps is spoken of once.
      if (!told || *told != wrap.at) all.assumptions.push_back({wrap.at, "0 g", WhyUncounted(rod, wrap)});
      told = &wrap.at;
      continue;
    }
    const double length = wrap.length->meters();
    // On a known diameter their own uncertainty is far below that of anything weighed.
    const Maybe<Mass> mass = Known<Mass>{Mass::Kilograms(*answer.thread_kg + *answer.finish_kg), answer.mass_plus_minus_kg,
                                         Source::kComputed, wrap.at};
    Add(all, wrap.id, wrap.at, mass, wrap.start, length, At(wrap.start, length / 2));
  }
}

}  // namespace withy
