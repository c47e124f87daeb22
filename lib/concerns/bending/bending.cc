#include "withy/bending/bending.h"

#include <algorithm>
#include <map>
#include <utility>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "power.h"
#include "ring.h"
#include "workshop.h"

namespace withy {
namespace bending {
namespace {

// What keeps the blank's stiffness from being told, as what to measure; empty where nothing does.
std::string MissingOf(const Rod& rod, const SectionsAnswers& sections) {
  for (const SectionAnswer& answer : sections.sections) {
    const Section& section = rod.blank.sections[answer.section];
    if (answer.frusta.empty()) return absl::StrCat("measure outer diameters along section ", section.id);
    if (!answer.wall_known) {
      const auto& rows = section.taper.stations;
      const bool written = std::any_of(rows.begin(), rows.end(), [](const auto& row) { return row.wall || row.inner; });
      return written ? absl::StrCat("measure the wall of section ", section.id, " again: the one written cannot be")
                     : absl::StrCat("weigh section ", section.id, " or measure its wall");
    }
    if (answer.frusta_kg.empty() || !answer.mass_kg) return absl::StrCat("weigh section ", section.id);
    if (!section.start_m) return absl::StrCat("measure how far section ", section.id, " goes into its joint");
  }
  if (rod.blank.length_m && rod.blank_butt_m && rod.tip_ring_m) return "";
  return rod.rest_measure.empty() ? "say where the blank begins in the handle" : rod.rest_measure;
}

// Where the rod is held, from its butt end: as ordered, else as the first load case says, else at the reel foot.
std::optional<double> HoldingPlace(const Rod& rod, BendingAnswers& answers) {
  if (rod.order.holding_point) return rod.order.holding_point->value.meters();
  for (const LoadCase& load : rod.load_cases) {
    if (load.clamp) return load.clamp->value.meters();
  }
  if (!rod.order.reel_foot_m) return std::nullopt;
  const double foot_m = rod.order.reel_foot_m->value();
  answers.assumptions.push_back({FieldPath().Field("intent").Field("holding_point_from_butt"),
                                 absl::StrFormat("%.1f mm", foot_m * 1000),
                                 "bending is reckoned from the middle of the reel foot"});
  return foot_m;
}

// A clamp behind the blank holds it at its butt face.
void SayHeldAtButtFace(const Rod& rod, const Maybe<Length>& clamp, BendingAnswers& answers) {
  const double butt_m = rod.blank_butt_m->value();
  if (!clamp || clamp->value.meters() >= butt_m - 1e-6) return;
  answers.assumptions.push_back({clamp->at,
                                 absl::StrFormat("the blank is held at its butt face, %.1f mm", butt_m * 1000),
                                 "the handle behind the blank counts as rigid"});
}

// How a joint is bridged whose sections do not meet in each other.
void SayBridged(const Rod& rod, const Joint& joint, const std::vector<Plug>& plugs, BendingAnswers& answers) {
  const bool plug =
      std::any_of(plugs.begin(), plugs.end(), [&](const Plug& p) { return &rod.blank.joints[p.joint] == &joint; });
  if (plug) {
    answers.assumptions.push_back(
        {joint.at.Field("spigot"), absl::StrCat("the modulus of section ", joint.spigot_fixed_in),
         "a design gives a spigot no modulus; it counts as of the section it is fixed in, and "
         "bends with both sections as one, without slip or play"});
  } else if (joint.kind == JointKind::kSpigot) {
    answers.assumptions.push_back({joint.at.Field("spigot"), "as stiff as the sections it joins",
                                   "length, what stands out, diameters and walls of the spigot are not all written, or "
                                   "do not lie within the two sections; the bare blank counts without its mass"});
  } else {
    answers.assumptions.push_back({joint.at, "as stiff as the sections it joins",
                                   "wall and modulus of a sleeve or ferrule are not part of a design"});
  }
}

void SayAssumptions(const Rod& rod, const std::vector<Plug>& plugs, BendingAnswers& answers) {
  for (const Joint& joint : rod.blank.joints) {
    if (!joint.upper_start_m) continue;
    if (*joint.upper_start_m < *joint.lower_end_m) {
      answers.assumptions.push_back({joint.at.Field("overlap"),
                                     "stiffness of both sections added where one is in the other",
                                     "they bend as one, without slip or play"});
    } else {
      SayBridged(rod, joint, plugs, answers);
    }
  }
  SayHeldAtButtFace(rod, rod.order.holding_point, answers);
  for (const LoadCase& load : rod.load_cases) {
    SayHeldAtButtFace(rod, load.clamp, answers);
    if (load.at_tip || !load.load_n) continue;
    answers.assumptions.push_back(
        {load.at, "the load acts on the ring of the tip-top alone",
         "the line along the rod presses on the other rings and bends it further; line_load has that"});
  }
}

// Sums of shares by guide and tip-top, in the order of the rod.
std::vector<FrequencyLoss> LossesOf(const Rod& rod, const std::vector<OnTheBlank>& things, const Ringing& ringing) {
  std::map<std::string, double> shares;
  for (std::size_t i = 0; i < things.size(); ++i) {
    if (!things[i].train.empty()) shares[things[i].train] += ringing.share_of_thing[i];
  }
  std::vector<FrequencyLoss> losses;
  const auto add = [&](const std::string& id, const FieldPath& at) {
    if (const auto share = shares.find(id); share != shares.end() && share->second > 0) {
      losses.push_back({id, at, LossOf(ringing.frequency_hz[0], share->second)});
    }
  };
  for (const Guide& guide : rod.guides) add(guide.id, guide.at);
  if (rod.tip_top) add(rod.tip_top->id, rod.tip_top->at);
  return losses;
}

// The finished rod starts from what `answers` hold of the bare blank, and adds what its train costs.
std::optional<BendingOf> BendingAt(const Workshop& shop, const Rod& rod, double clamp_m, bool finished,
                                   const std::vector<OnTheBlank>& things, BendingAnswers& answers) {
  LoadedBeam held = shop.MakeBeam(clamp_m, finished);
  if (const std::string wrong = WhatIsWrongWith(held.blank.beam); !wrong.empty()) {
    answers.unknowns.push_back(
        {finished ? "bending.finished" : "bending.bare",
         absl::StrCat("measure diameters and walls of the blank again: ahead of the clamp ", wrong)});
    return std::nullopt;
  }
  BendingOf of;
  of.clamp_m = shop.Datum(clamp_m, finished);
  for (std::size_t i = 0; i < rod.load_cases.size(); ++i) {
    of.cases.push_back(shop.BendUnder(i, held, clamp_m, finished));
  }
  of.power = PowerOf(held, finished && answers.bare ? answers.bare->power : std::nullopt);
  const Ringing ringing = RingingOf(held, finished ? things.size() : 0);
  of.frequency_hz = ringing.frequency_hz;
  of.first_frequency_hz = ringing.first_hz;
  if (finished && ringing.first_hz) answers.losses = LossesOf(rod, things, ringing);
  of.beam = std::move(held.blank.beam);
  of.outer_m = std::move(held.blank.outer_m);
  return of;
}

}  // namespace
}  // namespace bending

BendingAnswers ComputeBending(const Rod& rod, const SectionsAnswers& sections, const std::vector<OnTheBlank>& on_blank,
                              Inputs& inputs) {
  BendingAnswers answers;
  if (sections.sections.empty()) return answers;
  const auto cannot_tell = [&answers](std::string figure, std::string measure) {
    answers.unknowns.push_back({std::move(figure), std::move(measure)});
  };
  if (std::string missing = bending::MissingOf(rod, sections); !missing.empty()) {
    cannot_tell("bending", std::move(missing));
    return answers;
  }
  const auto clamp_m = bending::HoldingPlace(rod, answers);
  if (!clamp_m) {
    cannot_tell("bending", "say where the rod is held (intent.holding_point_from_butt)");
    return answers;
  }
  auto moduli = bending::ModuliOf(rod, sections, inputs, answers);
  if (!moduli) return answers;
  std::vector<bending::Plug> plugs = bending::PlugsOf(rod, sections, &inputs);
  const std::vector<OnTheBlank> things = bending::WithoutPlugs(rod, on_blank, plugs);
  const bending::Workshop shop(rod, sections, std::move(*moduli), plugs, things, inputs);
  if (!shop.Holds(*clamp_m)) {
    cannot_tell("bending", "hold the rod on its blank, behind the tip");
    return answers;
  }
  bending::SayAssumptions(rod, plugs, answers);
  answers.held_m = clamp_m;
  answers.stiff = shop.MakeStiff();
  answers.bare = bending::BendingAt(shop, rod, *clamp_m, false, things, answers);
  if (const OnTheBlank* thing = bending::NotKnown(things, shop.FurthestBack(*clamp_m))) {
    cannot_tell("bending.finished", absl::StrCat(thing->mass_kg ? "give a place to " : "weigh ", thing->id));
    return answers;
  }
  answers.finished = bending::BendingAt(shop, rod, *clamp_m, true, things, answers);
  if (answers.bare && answers.finished && answers.bare->first_frequency_hz && answers.finished->first_frequency_hz) {
    answers.train_costs_hz = answers.bare->frequency_hz[0] - answers.finished->frequency_hz[0];
  }
  return answers;
}

}  // namespace withy
