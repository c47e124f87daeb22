#include "blank_beam.h"

#include <algorithm>
#include <cmath>

#include "absl/strings/str_cat.h"
#include "withy/sections/material.h"
#include "withy/sections/tube.h"

namespace withy::bending {
namespace {

// A taper table of more stretches than any calliper could tell apart is drawn through fewer rows, evenly chosen:
// bending is solved some dozens of times.
constexpr std::size_t kMostStretches = 480;
constexpr double kSameM = 1e-7;  // places that differ by less are one: rounding of cuts and overlaps

// One frustum of one section or plug where it lies on the blank.
struct Layer {
  Frustum frustum;
  double from = 0, to = 0;
  double kg_per_m3 = 0;  // of its mass over its volume, per unit of the section's area factor
  const UsedModulus* modulus = nullptr;
  const ShapeDoubts* doubts = nullptr;
  const Uncertain* mass_kg = nullptr;  // of the whole that it is of
  Shape shape = Shape::kTube;
};

double Lerp(double a, double b, double t) {
  return a + t * (b - a);
}

// D^2 - d^2 over a frustum, on the average.
double MeanSquares(const Frustum& f) {
  const auto mean = [](double a, double b) { return (a * a + a * b + b * b) / 3; };
  return mean(f.outer0, f.outer1) - mean(f.inner0, f.inner1);
}

// As one, straight between its ends.
Frustum Joined(const Frustum& first, const Frustum& last) {
  return {first.s0, last.s1, first.outer0, last.outer1, first.inner0, last.inner1};
}

void AddLayers(const Section& section, const SectionAnswer& answer, const ModuliOfSection& moduli,
               const ShapeDoubts& doubts, std::size_t at_once, std::vector<Layer>& layers) {
  const double shift = section.start_m->value() - section.from_m->value();
  const auto solid_tip = [&](const Frustum& f) { return f.s0 >= section.SolidFrom() && moduli.splice; };
  for (std::size_t i = 0; i < answer.frusta.size();) {
    const std::size_t first = i;
    double kg = 0;
    for (; i < answer.frusta.size() && i < first + at_once; ++i) {
      if (solid_tip(answer.frusta[i]) != solid_tip(answer.frusta[first])) break;
      kg += answer.frusta_kg[i];
    }
    const Frustum f = Joined(answer.frusta[first], answer.frusta[i - 1]);
    const double squares = MeanSquares(f) * (f.s1 - f.s0);
    layers.push_back({f, f.s0 + shift, f.s1 + shift, squares > 0 ? kg / squares : 0,
                      solid_tip(f) ? &*moduli.splice : &moduli.section, &doubts, &*answer.mass_kg, section.shape});
  }
}

void AddLayers(const Plug& plug, const ModuliOfSection& moduli, std::vector<Layer>& layers) {
  double squares = 0;
  for (const Frustum& f : plug.frusta) squares += MeanSquares(f) * (f.s1 - f.s0);
  const double kg_per_m3 = squares > 0 ? plug.mass_kg.value() / squares : 0;
  for (const Frustum& f : plug.frusta) {
    layers.push_back({f, f.s0, f.s1, kg_per_m3, &moduli.section, &plug.doubts, &plug.mass_kg, Shape::kTube});
  }
}

std::vector<Layer> LayersOf(const Rod& rod, const SectionsAnswers& sections, const std::vector<ModuliOfSection>& moduli,
                            const std::vector<ShapeDoubts>& doubts, const std::vector<Plug>& plugs) {
  std::size_t stretches = 0;
  for (const SectionAnswer& answer : sections.sections) stretches += answer.frusta.size();
  const std::size_t at_once = stretches / kMostStretches + 1;
  std::vector<Layer> layers;
  for (std::size_t k = 0; k < sections.sections.size(); ++k) {
    const SectionAnswer& answer = sections.sections[k];
    AddLayers(rod.blank.sections[answer.section], answer, moduli[k], doubts[k], at_once, layers);
  }
  for (const Plug& plug : plugs) AddLayers(plug, moduli[plug.section], layers);
  return layers;
}

// All ends of layers from the clamp on, the clamp first; places within rounding of each other once.
std::vector<double> PlacesOf(const std::vector<Layer>& layers, double clamp_m) {
  std::vector<double> places = {clamp_m};
  for (const Layer& layer : layers) {
    for (const double end : {layer.from, layer.to}) {
      if (end > clamp_m + kSameM) places.push_back(end);
    }
  }
  std::sort(places.begin(), places.end());
  const auto last = std::unique(places.begin(), places.end(), [](double a, double b) { return b - a < kSameM; });
  places.erase(last, places.end());
  return places;
}

// A layer's part of one piece: the frustum between the piece's ends.
struct Part {
  const Layer& layer;
  double outer0, outer1, inner0, inner1;
};

Part PartOf(const Layer& layer, double from, double to) {
  const double length = layer.to - layer.from;
  const auto at = [&](double a, double b, double x) {
    return Lerp(a, b, std::clamp((x - layer.from) / length, 0.0, 1.0));
  };
  const Frustum& f = layer.frustum;
  return {layer, at(f.outer0, f.outer1, from), at(f.outer0, f.outer1, to), at(f.inner0, f.inner1, from),
          at(f.inner0, f.inner1, to)};
}

// Adds factor (a + (b - a) t)^4 and ^2, in ascending powers of t.
void AddFourthPower(double factor, double a, double b, std::array<double, 5>& sum) {
  const double step = b - a;
  const double terms[] = {a * a * a * a, 4 * a * a * a * step, 6 * a * a * step * step, 4 * a * step * step * step,
                          step * step * step * step};
  for (int i = 0; i < 5; ++i) sum[i] += factor * terms[i];
}
void AddSquare(double factor, double a, double b, std::array<double, 3>& sum) {
  const double step = b - a;
  const double terms[] = {a * a, 2 * a * step, step * step};
  for (int i = 0; i < 3; ++i) sum[i] += factor * terms[i];
}

void AddPart(const Part& part, BeamPiece& piece) {
  const double stiffness = part.layer.modulus->pa * SecondMomentOf(part.layer.shape, 1, 0);
  AddFourthPower(stiffness, part.outer0, part.outer1, piece.stiffness);
  AddFourthPower(-stiffness, part.inner0, part.inner1, piece.stiffness);
  AddSquare(part.layer.kg_per_m3, part.outer0, part.outer1, piece.mass);
  AddSquare(-part.layer.kg_per_m3, part.inner0, part.inner1, piece.mass);
}

// First-order changes of a piece of several layers, each by its share at the middle.
void AddChanges(const std::vector<Part>& parts, const BeamPiece& piece, BlankBeam& blank) {
  const double middle = (piece.s0 + piece.s1) / 2;
  const double whole = piece.StiffnessAt(middle), mass = piece.MassPerLengthAt(middle);
  Uncertain stiffness, own_mass, outer;
  double widest = 0;
  for (const Part& part : parts) {
    const double D = (part.outer0 + part.outer1) / 2, d = (part.inner0 + part.inner1) / 2;
    const double factor = part.layer.modulus->pa * SecondMomentOf(part.layer.shape, 1, 0) / whole;
    const ShapeDoubts& doubt = *part.layer.doubts;
    const double by_wall = 8 * factor * d * d * d;  // d/dw of D^4 - (D - 2 w)^4
    stiffness = stiffness + Uncertain(factor * (D * D * D * D - d * d * d * d)) * part.layer.modulus->change +
                Uncertain(4 * factor * (D * D * D - d * d * d)) * doubt.diameters_m +
                Uncertain(by_wall) * doubt.walls_m + Uncertain(by_wall * (D - d) / 2) * doubt.walls_share;
    if (const Uncertain& kg = *part.layer.mass_kg; mass > 0 && kg.value() > 0) {
      const double share = part.layer.kg_per_m3 * (D * D - d * d) / mass;
      own_mass = own_mass + Uncertain(share) * (kg / kg.value() - Uncertain(1));
    }
    if (D > widest) {
      widest = D;
      outer = doubt.diameters_m / D;
    }
  }
  blank.stiffness_change.push_back(stiffness);
  blank.mass_change.push_back(own_mass);
  blank.outer_change.push_back(outer);
}

void AddPiece(const std::vector<Part>& parts, double from, double to, BlankBeam& blank) {
  BeamPiece piece{from, to};
  double outer0 = 0, outer1 = 0;
  for (const Part& part : parts) {
    AddPart(part, piece);
    outer0 = std::max(outer0, part.outer0);
    outer1 = std::max(outer1, part.outer1);
  }
  AddChanges(parts, piece, blank);
  blank.beam.pieces.push_back(piece);
  blank.outer_m.insert(blank.outer_m.end(), {outer0, outer1});
}

// Gaps that no plug spans were left without stiffness: each gets a straight line between its neighbours.
void BridgeGaps(BlankBeam& blank) {
  std::vector<BeamPiece>& pieces = blank.beam.pieces;
  for (std::size_t i = 1; i + 1 < pieces.size(); ++i) {
    if (blank.outer_m[2 * i] > 0 || blank.outer_m[2 * i + 2] == 0) continue;
    const double before = pieces[i - 1].StiffnessAt(pieces[i].s0), after = pieces[i + 1].StiffnessAt(pieces[i].s1);
    pieces[i].stiffness = {before, after - before, 0, 0, 0};
    blank.outer_m[2 * i] = blank.outer_m[2 * i - 1];
    blank.outer_m[2 * i + 1] = blank.outer_m[2 * i + 2];
    blank.stiffness_change[i] = blank.stiffness_change[i - 1];
    blank.outer_change[i] = blank.outer_change[i - 1];
  }
}

// How far a wall that was inferred from a weighing may be off, relative: as the density and the mass it is inferred
// from.
double InferredWallShare(const Section& section, const SectionAnswer& answer) {
  double density = 0;
  if (section.density_kg_m3 && section.density_kg_m3->value > 0) {
    density = section.density_kg_m3->plus_minus.value_or(0) / section.density_kg_m3->value;
  } else if (const auto table = DensityOfMaterial(section.material)) {
    density = table->plus_minus_kg_m3 / table->kg_m3;
  }
  const double mass = answer.mass_kg->value() > 0 ? answer.mass_kg->plus_minus() / answer.mass_kg->value() : 0;
  return std::hypot(density, mass);
}

}  // namespace

std::vector<ShapeDoubts> ShapeDoubtsOf(const Rod& rod, const SectionsAnswers& sections, Inputs& inputs) {
  std::vector<ShapeDoubts> all;
  for (const SectionAnswer& answer : sections.sections) {
    const Section& section = rod.blank.sections[answer.section];
    const std::string rows = section.taper.at.Field("stations").ToString();
    ShapeDoubts doubts;
    doubts.diameters_m = inputs.Add(0, section.taper.diameter_plus_minus_m.value_or(0), rows);
    if (section.shape == Shape::kTube && !section.wall.empty()) {
      doubts.walls_m = inputs.Add(0, section.wall_plus_minus_m.value_or(0), absl::StrCat(rows, " (walls)"));
    } else if (section.shape == Shape::kTube) {
      doubts.walls_share = inputs.Add(0, InferredWallShare(section, answer), absl::StrCat(rows, " (wall by its mass)"));
    }
    all.push_back(std::move(doubts));
  }
  return all;
}

BlankBeam MakeBlankBeam(const Rod& rod, const SectionsAnswers& sections, const std::vector<ModuliOfSection>& moduli,
                        const std::vector<ShapeDoubts>& doubts, const std::vector<Plug>& plugs, double clamp_m) {
  const std::vector<Layer> layers = LayersOf(rod, sections, moduli, doubts, plugs);
  const std::vector<double> places = PlacesOf(layers, clamp_m);
  std::vector<std::vector<const Layer*>> over(places.size());
  for (const Layer& layer : layers) {
    auto i = std::lower_bound(places.begin(), places.end(), layer.from - kSameM) - places.begin();
    if (layer.from < clamp_m) i = 0;
    for (; i + 1 < static_cast<std::ptrdiff_t>(places.size()) && places[i + 1] <= layer.to + kSameM; ++i) {
      over[i].push_back(&layer);
    }
  }
  BlankBeam blank;
  for (std::size_t i = 0; i + 1 < places.size(); ++i) {
    std::vector<Part> parts;
    for (const Layer* layer : over[i]) parts.push_back(PartOf(*layer, places[i], places[i + 1]));
    AddPiece(parts, places[i] - clamp_m, places[i + 1] - clamp_m, blank);
  }
  BridgeGaps(blank);
  return blank;
}

}  // namespace withy::bending
