#include "mode_mesh.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <numeric>
#include <utility>

namespace withy {
namespace {

constexpr double kMostPhase = 0.7;   // radians in an element
constexpr double kMostTaper = 1.25;  // stiffest to softest in an element
// What is softer than this beside the stiffest of its piece is rounding of the piece's polynomial: not cut further.
constexpr double kSoftest = 1e-10;

// The polynomial of t on [a, b] as one of u = (t - a) / (b - a), by repeated synthetic division.
template <std::size_t N>
std::array<double, N> Part(std::array<double, N> c, double a, double b) {
  for (std::size_t i = 0; i + 1 < N; ++i) {
    for (std::size_t j = N - 1; j-- > i;) c[j] += a * c[j + 1];
  }
  double power = 1;
  for (double& term : c) term *= std::exchange(power, power * (b - a));
  return c;
}

template <std::size_t N>
double ValueAt(const std::array<double, N>& c, double t) {
  double value = 0;
  for (std::size_t i = N; i-- > 0;) value = value * t + c[i];
  return value;
}

// The wave number of a wave of frequency 1 rad/s, integrated over the element.
double UnitPhase(const ModeElement& element) {
  constexpr int kSamples = 4;
  double sum = 0;
  for (int i = 0; i < kSamples; ++i) {
    const double t = (i + 0.5) / kSamples;
    sum += std::sqrt(std::sqrt(std::max(0.0, ValueAt(element.mass, t)) / ValueAt(element.stiffness, t)));
  }
  return sum / kSamples * element.length();
}

struct Range {
  double least, most;
};

Range StiffnessOf(const ModeElement& element) {
  Range range{element.stiffness[0], element.stiffness[0]};
  for (double t : {0.25, 0.5, 0.75, 1.0}) {
    const double value = ValueAt(element.stiffness, t);
    range = {std::min(range.least, value), std::max(range.most, value)};
  }
  return range;
}

class Cutter {
 public:
  Cutter(const Beam& beam, int modes) : beam_(beam) {
    double phase = 0;
    for (std::size_t i = 0; i < beam.pieces.size(); ++i) phase += UnitPhase(PartOf(static_cast<int>(i), 0, 1));
    scale_ = phase > 0 ? modes * std::numbers::pi / phase : 0;
  }

  void Cut(int piece, double s0, double s1, std::vector<ModeElement>& elements) const {
    const ModeElement part = Between(piece, s0, s1);
    const double middle = std::midpoint(s0, s1);
    const Range stiffness = StiffnessOf(part);
    const bool tapers = stiffness.most > kMostTaper * stiffness.least && stiffness.most > kSoftest * StiffestOf(piece);
    if ((tapers || scale_ * UnitPhase(part) > kMostPhase) && s0 < middle && middle < s1) {
      Cut(piece, s0, middle, elements);
      Cut(piece, middle, s1, elements);
    } else {
      elements.push_back(part);
    }
  }

 private:
  ModeElement PartOf(int piece, double a, double b) const {
    const BeamPiece& whole = beam_.pieces[piece];
    return {piece, whole.s0, whole.s1, Part(whole.stiffness, a, b), Part(whole.mass, a, b)};
  }
  ModeElement Between(int piece, double s0, double s1) const {
    const BeamPiece& whole = beam_.pieces[piece];
    const double length = whole.s1 - whole.s0;
    ModeElement part = PartOf(piece, (s0 - whole.s0) / length, (s1 - whole.s0) / length);
    part.s0 = s0;
    part.s1 = s1;
    return part;
  }
  double StiffestOf(int piece) const { return StiffnessOf(PartOf(piece, 0, 1)).most; }

  const Beam& beam_;
  double scale_;
};

}  // namespace

ModeMesh MeshForModes(const Beam& beam, int modes) {
  std::vector<double> at;
  for (const BeamMass& mass : beam.masses) at.push_back(mass.s);
  std::sort(at.begin(), at.end());
  at.erase(std::unique(at.begin(), at.end()), at.end());

  ModeMesh mesh;
  const Cutter cutter(beam, modes);
  auto next = std::upper_bound(at.begin(), at.end(), 0.0);
  for (std::size_t i = 0; i < beam.pieces.size(); ++i) {
    double from = beam.pieces[i].s0;
    for (; next != at.end() && *next < beam.pieces[i].s1; ++next) {
      if (*next > from) cutter.Cut(static_cast<int>(i), from, *next, mesh.elements);
      from = *next;
    }
    cutter.Cut(static_cast<int>(i), from, beam.pieces[i].s1, mesh.elements);
  }
  for (const BeamMass& mass : beam.masses) {
    const auto ends_before = [](const ModeElement& element, double s) { return element.s1 < s; };
    const auto element = std::lower_bound(mesh.elements.begin(), mesh.elements.end(), mass.s, ends_before);
    const bool on_clamp = !(mass.s > mesh.elements.front().s0);
    const bool past_end = element == mesh.elements.end();
    mesh.element_of_mass.push_back(on_clamp ? -1 : static_cast<int>(element - mesh.elements.begin()) - past_end);
    if (!on_clamp) mesh.elements[mesh.element_of_mass.back()].point_kg += mass.mass_kg;
  }
  return mesh;
}

}  // namespace withy
