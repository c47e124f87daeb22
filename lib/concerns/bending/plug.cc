#include "plug.h"

#include <algorithm>

#include "withy/sections/distribution.h"

namespace withy::bending {
namespace {

constexpr double kSameM = 1e-6;

FieldPath PathOf(const Joint& joint) {
  return joint.at.Field("spigot");
}

// In SectionsAnswers::sections; none where it is not in the rod.
std::optional<int> PositionOf(const Rod& rod, const SectionsAnswers& sections, const std::string& id) {
  for (std::size_t k = 0; k < sections.sections.size(); ++k) {
    if (rod.blank.sections[sections.sections[k].section].id == id) return static_cast<int>(k);
  }
  return std::nullopt;
}

// Butt end of the plug on the blank; unset where it does not end within the two sections.
std::optional<double> StartOf(const Joint& joint, const Section& lower, const Section& upper) {
  const auto end_of = [](const Section& section) {
    return section.start_m->value() + section.to_m->value() - section.from_m->value();
  };
  const double length = joint.spigot_length->value.meters(), out = joint.spigot_standing_out->value.meters();
  const double from =
      joint.spigot_fixed_in == joint.upper ? upper.start_m->value() - out : end_of(lower) + out - length;
  if (!(length > 0) || from < lower.start_m->value() - kSameM || from + length > end_of(upper) + kSameM) {
    return std::nullopt;
  }
  return from;
}

// Its own frusta, moved onto the blank.
std::vector<Frustum> FrustaOf(const Joint& joint, double start_m) {
  Section plug;
  plug.outer = joint.spigot_outer;
  plug.wall = joint.spigot_wall;
  std::vector<Frustum> frusta = Distribution(plug, 1, 1).Frusta(0, joint.spigot_length->value.meters());
  for (Frustum& f : frusta) {
    f.s0 += start_m;
    f.s1 += start_m;
  }
  return frusta;
}

}  // namespace

std::vector<Plug> PlugsOf(const Rod& rod, const SectionsAnswers& sections, Inputs* inputs) {
  std::vector<Plug> plugs;
  for (std::size_t i = 0; i < rod.blank.joints.size(); ++i) {
    const Joint& joint = rod.blank.joints[i];
    if (joint.kind != JointKind::kSpigot || !joint.spigot_length || !joint.spigot_standing_out) continue;
    if (joint.spigot_outer.empty() || joint.spigot_wall.empty()) continue;
    if (joint.spigot_fixed_in != joint.lower && joint.spigot_fixed_in != joint.upper) continue;
    const auto lower = PositionOf(rod, sections, joint.lower), upper = PositionOf(rod, sections, joint.upper);
    if (!lower || !upper) continue;
    const auto section = [&](int k) -> const Section& { return rod.blank.sections[sections.sections[k].section]; };
    const std::optional<double> start = StartOf(joint, section(*lower), section(*upper));
    if (!start) continue;
    Plug plug;
    plug.joint = static_cast<int>(i);
    plug.section = joint.spigot_fixed_in == joint.lower ? *lower : *upper;
    plug.frusta = FrustaOf(joint, *start);
    if (joint.spigot_mass) plug.mass_kg = Uncertain(std::max(0.0, joint.spigot_mass->value.kilograms()));
    if (inputs != nullptr) {
      const std::string rows = joint.spigot_taper.at.Field("stations").ToString();
      plug.doubts.diameters_m = inputs->Add(0, joint.spigot_taper.diameter_plus_minus_m.value_or(0), rows);
      plug.doubts.walls_m = inputs->Add(0, joint.spigot_wall_plus_minus_m.value_or(0), rows + " (walls)");
    }
    plugs.push_back(std::move(plug));
  }
  return plugs;
}

std::vector<OnTheBlank> WithoutPlugs(const Rod& rod, const std::vector<OnTheBlank>& things, std::vector<Plug>& plugs) {
  std::vector<OnTheBlank> rest;
  for (const OnTheBlank& thing : things) {
    const auto plug = std::find_if(plugs.begin(), plugs.end(),
                                   [&](const Plug& p) { return PathOf(rod.blank.joints[p.joint]) == thing.at; });
    if (plug == plugs.end()) {
      rest.push_back(thing);
    } else if (thing.mass_kg) {
      plug->mass_kg = *thing.mass_kg;
    }
  }
  return rest;
}

}  // namespace withy::bending
