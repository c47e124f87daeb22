#include "contributions.h"

#include <string>
#include <utility>

#include "absl/strings/str_cat.h"
#include "withy/sections/material.h"

namespace withy {

Counted& Count(Collection& all, Thing thing) {
  Counted& counted = all.things.emplace_back();
  counted.needs = {thing.id};
  counted.shown.id = std::move(thing.id);
  counted.shown.at = std::move(thing.at);
  if (thing.start.from_butt_m) counted.shown.start_m = thing.start.from_butt_m->value();
  counted.shown.length_m = thing.length_m;
  if (const Maybe<Mass>& mass = thing.mass; mass && mass->value.kilograms() >= 0) {
    counted.shown.mass_from = mass->source;
    counted.shown.mass_kg =
        all.inputs.Add(mass->value.kilograms(), MassPlusMinus(*mass, all.unstated_mass), mass->at.ToString());
    counted.measured = mass->source == Source::kMeasured;
    const double length = thing.length_m.value_or(0);
    counted.own_inertia_kg_m2 = mass->value.kilograms() * length * length / 12;
  }
  counted.shown.center_m = std::move(thing.center_m);
  if (counted.shown.mass_kg && counted.shown.center_m) {
    counted.moment_kg_m = *counted.shown.mass_kg * *counted.shown.center_m;
  }
  return counted;
}

std::optional<Uncertain> At(const Along& start, double own_m) {
  return start.from_butt_m ? std::optional<Uncertain>(*start.from_butt_m + Uncertain(own_m)) : std::nullopt;
}

int EntryOf(const FieldPath& at) {
  const auto& steps = at.steps();
  return steps.size() >= 2 && steps[0].field == "log" ? steps[1].index : -1;
}

std::optional<double> LengthOf(const Maybe<Length>& length) {
  if (!length || !(length->value.meters() > 0)) return std::nullopt;
  return length->value.meters();
}

namespace {

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
  if (joint.mass) Count(all, {.id = joint.id, .at = joint.at, .mass = joint.mass, .center_m = middle});
  if (joint.spigot_mass) {
    Count(all, {.id = joint.id, .at = joint.at.Field("spigot"), .mass = joint.spigot_mass,
                .length_m = LengthOf(joint.spigot_length), .center_m = spigot});
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

void CollectHandle(const Rod& rod, const FitAnswers& fit, Collection& all) {
  for (std::size_t i = 0; i < rod.handle.parts.size(); ++i) {
    const Part& part = rod.handle.parts[i];
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
    Counted& counted = Count(all, {.id = part.id, .at = part.at, .mass = MassOf(part, volume, all), .start = part.start,
                                   .length_m = length, .center_m = center});
    counted.glued_part = !part.bond.empty();
    if (!part.on.empty()) counted.needs.push_back(part.on);
    for (std::size_t a = 0; a < part.arbors.size(); ++a) CollectArbor(rod, part.arbors[a], fit.parts[i].arbors[a], all);
    SayProposed(part, fit.parts[i].proposed, all);
  }
}

void CollectGuides(const Rod& rod, Collection& all) {
  for (const Guide& guide : rod.guides) {
    Count(all, {.id = guide.id, .at = guide.at, .mass = guide.mass, .start = guide.ring,
                .center_m = guide.ring.from_butt_m});
  }
  if (!rod.tip_top) return;
  const TipTop& top = *rod.tip_top;
  Count(all, {.id = top.id, .at = top.at, .mass = top.mass, .center_m = CenterOfTipTop(rod)});
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
    const double length = wrap.length->meters(), mass = *answer.thread_kg + *answer.finish_kg;
    // On a known diameter their own uncertainty is far below that of anything weighed.
    Counted& counted = Count(all, {.id = wrap.id, .at = wrap.at,
                                   .mass = Known<Mass>{Mass::Kilograms(mass), answer.mass_plus_minus_kg,
                                                       Source::kComputed, wrap.at},
                                   .start = wrap.start, .length_m = length, .center_m = At(wrap.start, length / 2)});
    if (!wrap.on.empty()) counted.needs.push_back(wrap.on);
    for (std::size_t c = 0; c < wrap.coats.size() && mass > 0; ++c) {
      counted.films.emplace_back(rod.finishes[wrap.coats[c]].id, answer.coats_kg[c] / mass);
    }
  }
}

void CollectAdhesives(const BondingAnswers& bonding, Collection& all) {
  for (const GluedJoint& joint : bonding.joints) {
    if (joint.potting) continue;
    const FieldPath at = joint.at.Field("bond");
    if (!joint.mass_kg) {
      all.uncounted.push_back({at, "0 g", absl::StrCat("its adhesive is not counted: ", joint.measure)});
      continue;
    }
    Counted& counted = Count(all, {.id = joint.what, .at = at});
    counted.shown.mass_from = Source::kComputed;
    counted.shown.mass_kg = joint.mass_kg;
    counted.shown.start_m = joint.from_m;
    if (joint.from_m && joint.to_m) counted.shown.length_m = *joint.to_m - *joint.from_m;
    const double length = counted.shown.length_m.value_or(0);
    counted.own_inertia_kg_m2 = joint.mass_kg->value() * length * length / 12;
    if (!joint.center_m) continue;
    counted.shown.center_m = Uncertain(*joint.center_m);
    counted.moment_kg_m = *joint.mass_kg * Uncertain(*joint.center_m);
  }
}

}  // namespace withy
