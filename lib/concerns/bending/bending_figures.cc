// Where the figures of `bending` come from: those of the bare blank and of the finished rod are the same but for what
// is on it.
#include <deque>
#include <string>

#include "absl/strings/str_replace.h"
#include "withy/bending/bending.h"

namespace withy {
namespace {

constexpr std::string_view kElastica = "the plane inextensible elastica: Euler 1744, EI theta' = M";
constexpr std::string_view kDefinition = "own definition";
constexpr std::string_view kCoins = "coin-deflection method, magazine articles of 2003";

// `~` stands for "bending.bare" or "bending.finished".
std::vector<Figure> OfBeam() {
  return {
      {"~.clamp_mm",
       "where it is held: as ordered, else as the first load case says, else the middle of the reel foot",
       kDefinition,
       {"intent.holding_point_from_butt", "load_cases[].clamp_from_butt", "intent.reel.foot_center_from_butt",
        "fit.blank_butt_mm"}},
      {"~.at_mm",
       "ends of the stretches between stations, cuts and joints, from the clamp on; of very many, 60 even distances",
       kDefinition,
       {"sections.sections[].at_mm", "~.clamp_mm", "blank.joints[].overlap", "blank.joints[].spigot.taper.stations"}},
      {"~.ei_n_m2",
       "E x pi/64 (D^4 - d^4), of a hexagon E x 5 sqrt(3)/144 D^4; one section or spigot in another: both added; "
       "a gap: its spigot alone, else straight between",
       "second moments of plane figures",
       {"blank.sections[].modulus", "sections.sections[].outer_mm", "sections.sections[].wall_mm",
        "blank.joints[].overlap", "blank.joints[].spigot.standing_out", "blank.joints[].spigot.taper.stations",
        "~.at_mm"}},
  };
}

std::vector<Figure> OfLoadCase() {
  return {
      {"~.cases[].clamp_mm",
       "as the load case says, else where the rod is held",
       kDefinition,
       {"load_cases[=].clamp_from_butt", "~.clamp_mm"}},
      {"~.cases[].load_n",
       "mass x 9.80665, or the pull as written",
       "standard gravity, 3rd CGPM 1901",
       {"load_cases[=].lifted", "load_cases[=].tension"}},
      {"~.cases[].butt_angle_deg", "as written; 0 where it is not", kDefinition, {"load_cases[=].butt_angle"}},
      {"~.cases[].load_angle_deg",
       "butt angle - line angle; -90 where no line angle is written",
       kDefinition,
       {"load_cases[=].line_angle", "~.cases[=].butt_angle_deg"}},
      {"~.cases[].state",
       "the shape reached by raising load and weight from nothing: all of it, or up to where it branches or turns back",
       "stability of equilibria along a path: the tangent stiffness stays positive definite",
       {"~.cases[=].load_n", "~.cases[=].load_angle_deg", "~.ei_n_m2"}},
      {"~.cases[].reached",
       "share of the load up to there",
       "stability of equilibria along a path",
       {"~.cases[=].load_n", "~.cases[=].load_angle_deg", "~.ei_n_m2"}},
      {"~.cases[].at_mm",
       "48 even distances, and where the strain peaks",
       kDefinition,
       {"~.cases[=].clamp_mm", "~.free_length_mm", "~.cases[=].peak_at_mm"}},
  };
}

std::vector<Figure> OfShape() {
  return {
      {"~.cases[].forward_mm",
       "integral of cos(theta) ds from the clamp",
       kElastica,
       {"~.cases[=].at_mm", "~.cases[=].moment_n_m", "~.ei_n_m2"}},
      {"~.cases[].up_mm",
       "integral of sin(theta) ds from the clamp",
       kElastica,
       {"~.cases[=].at_mm", "~.cases[=].moment_n_m", "~.ei_n_m2"}},
      {"~.cases[].moment_n_m",
       "M(s) of load and weights beyond s, about s, in the bent shape; anticlockwise",
       kElastica,
       {"~.cases[=].load_n", "~.cases[=].load_angle_deg", "~.cases[=].butt_angle_deg", "~.ei_n_m2"}},
      {"~.cases[].strain_millistrain",
       "M D / (2 EI)",
       "bending of beams: Euler and Bernoulli",
       {"~.cases[=].moment_n_m", "sections.sections[].outer_mm", "~.ei_n_m2"}},
      {"~.cases[].tip_drop_mm",
       "height of the tip under own weight - height under the load as well",
       kElastica,
       {"~.cases[=].load_n", "~.ei_n_m2", "~.free_length_mm", "~.cases[=].butt_angle_deg"}},
      {"~.cases[].tip_angle_deg",
       "butt angle + integral of M / EI ds",
       kElastica,
       {"~.cases[=].butt_angle_deg", "~.cases[=].moment_n_m", "~.ei_n_m2"}},
      {"~.cases[].clamp_moment_n_m", "|M| at the clamp", kElastica, {"~.cases[=].moment_n_m"}},
      {"~.cases[].peak_strain_millistrain",
       "largest M D / (2 EI), looked for along the whole of it",
       "bending of beams: Euler and Bernoulli",
       {"~.cases[=].moment_n_m", "sections.sections[].outer_mm", "~.ei_n_m2"}},
      {"~.cases[].peak_at_mm",
       "where that is",
       "bending of beams: Euler and Bernoulli",
       {"~.cases[=].moment_n_m", "sections.sections[].outer_mm", "~.ei_n_m2"}},
      {"~.cases[].strain_energy_j", "integral of M^2 / (2 EI) ds", kElastica, {"~.cases[=].moment_n_m", "~.ei_n_m2"}},
      {"~.cases[].error_mm",
       "how far the tip moves between two accuracies of the same computation",
       "a-posteriori estimate of the discretisation",
       {"~.cases[=].moment_n_m"}},
  };
}

std::vector<Figure> OfPower() {
  return {
      {"~.power.load_g",
       "weight that drops the tip of the level rod, from its place under own weight, by a third of the free length",
       kCoins,
       {"~.ei_n_m2", "~.free_length_mm"}},
      {"~.power.coins", "load / 2.50 g", kCoins, {"~.power.load_g"}},
      {"~.power.tip_angle_deg",
       "direction of the tip under that load, below the horizontal",
       kElastica,
       {"~.power.load_g", "~.ei_n_m2"}},
      {"~.power.action",
       "by the tip angle: slow below 59, moderate to 63, moderate fast to 66, fast",
       kCoins,
       {"~.power.tip_angle_deg"}},
      {"~.power.line_number",
       "line number whose target grains are (load in g + 12.085) / 0.80194, straight between whole numbers; 39 to 173 "
       "g only",
       "own fit: a straight line through 20 published points of the coin method, each within 0.08",
       {"~.power.load_g"}},
  };
}

std::vector<Figure> OfHalf(std::string_view prefix, std::deque<std::string>& texts) {
  const bool finished = prefix == "bending.finished";
  const auto text = [&](std::string_view of) -> std::string_view {
    texts.push_back(absl::StrReplaceAll({of.data(), of.size()}, {{"~", {prefix.data(), prefix.size()}}}));
    return texts.back();
  };
  std::vector<Figure> all = OfBeam();
  for (const auto& more : {OfLoadCase(), OfShape(), OfPower()}) all.insert(all.end(), more.begin(), more.end());
  Figure length{"~.free_length_mm",
                finished ? "clamp to the ring of the tip-top" : "clamp to the tip of the blank",
                "plane geometry",
                {"~.clamp_mm", finished ? "fit.tip_ring_mm" : "sections.blank_length_mm"}};
  Figure ring{"~.frequency_hz",
              "lowest eigenvalues of (EI y'')'' = (2 pi f)^2 m y, clamped and free; things on the blank as masses",
              "bending vibrations of beams: Euler and Bernoulli",
              {"~.ei_n_m2", "sections.sections[].mass_g", "blank.joints[].spigot.mass", "~.free_length_mm"}};
  if (finished) ring.from.insert(ring.from.end(), {"balance.parts[].mass_g", "balance.parts[].center_mm"});
  all.push_back(length);
  all.push_back(ring);
  for (Figure& figure : all) {
    figure.name = text(figure.name);
    for (std::string_view& from : figure.from) from = text(from);
  }
  return all;
}

std::vector<Figure> OfTrain() {
  return {
      {"bending.losses[].hz",
       "f / sqrt(1 - c) - f, with its part c of the kinetic energy of the first mode, wraps and finish on it included",
       "Rayleigh's quotient of the unchanged shape: to first order in c",
       {"bending.finished.frequency_hz", "balance.parts[].mass_g", "balance.parts[].center_mm"}},
      {"bending.train_costs_hz",
       "first frequency of the bare blank - that of the finished rod, held at the same place",
       kDefinition,
       {"bending.bare.frequency_hz", "bending.finished.frequency_hz"}},
      {"bending.modulus_from",
       "what the moduli are known by, the least sure of all sections",
       kDefinition,
       {"blank.sections[].modulus", "blank.sections[].material"}},
  };
}

}  // namespace

std::vector<Figure> BendingFigures() {
  static std::deque<std::string>* const texts = new std::deque<std::string>();
  static const std::vector<Figure>* const all = [] {
    auto* figures = new std::vector<Figure>();
    for (const auto& more : {OfHalf("bending.bare", *texts), OfHalf("bending.finished", *texts), OfTrain()}) {
      figures->insert(figures->end(), more.begin(), more.end());
    }
    return figures;
  }();
  return *all;
}

}  // namespace withy
