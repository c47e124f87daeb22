#include "elastica_mesh.h"

#include <algorithm>
#include <cmath>

namespace withy {
namespace {

// No element is longer than this share of the beam, spans more than this ratio of EI^(1/4) (the diameter that a solid
// rod of that stiffness has), or more than this many times the length sqrt(EI / F) over which a force bends it (EI / M
// of a moment). With these each degree of the shape functions gains two digits or more.
constexpr double kMostShare = 1.0 / 8, kMostTaper = 1.3, kMostBend = 1.2;

// Ends nearer to each other than this share of the beam are one.
constexpr double kSamePlace = 1e-12;

double MassPast(const BeamPiece& piece, double s) {
  const double t = (s - piece.s0) / (piece.s1 - piece.s0);
  const double h = piece.s1 - piece.s0;
  const auto upto = [&](double u) { return u * (piece.mass[0] + u * (piece.mass[1] / 2 + u * piece.mass[2] / 3)); };
  return std::max(0.0, h * (upto(1) - upto(t)));
}

// Where elements have to end: ends of pieces, and forces and masses, past which the force jumps.
std::vector<double> EndsOf(const Beam& beam, const ElasticaLoad& load) {
  const bool weightless = load.gravity_x == 0 && load.gravity_y == 0;
  const double length = beam.length();
  std::vector<double> ends;
  for (const BeamPiece& piece : beam.pieces) ends.push_back(piece.s1);
  for (const BeamForce& force : load.forces) ends.push_back(force.s);
  if (!weightless) {
    for (const BeamMass& mass : beam.masses) ends.push_back(mass.s);
  }
  std::sort(ends.begin(), ends.end());
  std::vector<double> apart{0};
  for (double end : ends) {
    if (end - apart.back() > kSamePlace * length && end < length) apart.push_back(end);
  }
  if (length - apart.back() <= kSamePlace * length && apart.size() > 1) apart.pop_back();
  apart.push_back(length);
  return apart;
}

class Cutter {
 public:
  Cutter(const Beam& beam, const ElasticaLoad& load, int fineness) : beam_(beam), load_(load), fineness_(fineness) {
    dead_ = std::hypot(load.force_x, load.force_y) + std::abs(load.follower);
    for (const BeamForce& force : load.forces) dead_ += std::hypot(force.x, force.y);
    const double g = std::hypot(load.gravity_x, load.gravity_y);
    if (g == 0) return;
    for (const BeamMass& mass : beam.masses) dead_ += g * mass.mass_kg;
    for (const BeamPiece& piece : beam.pieces) dead_ += g * MassPast(piece, piece.s0);
  }

  // False where there would be too many.
  bool Cut(const BeamPiece& piece, double s0, double s1, std::vector<double>& ends) const {
    if (ends.size() > kMostElements) return false;
    const double middle = (s0 + s1) / 2;
    if (!Gentle(piece, s0, s1) && s0 < middle && middle < s1) {
      return Cut(piece, s0, middle, ends) && Cut(piece, middle, s1, ends);
    }
    for (int k = 1; k <= fineness_; ++k) ends.push_back(k == fineness_ ? s1 : s0 + (s1 - s0) * k / fineness_);
    return true;
  }

 private:
  bool Gentle(const BeamPiece& piece, double s0, double s1) const {
    const double h = s1 - s0;
    if (h > kMostShare * beam_.length()) return false;
    const double a = piece.StiffnessAt(s0), b = piece.StiffnessAt((s0 + s1) / 2), c = piece.StiffnessAt(s1);
    const double least = std::min({a, b, c}), most = std::max({a, b, c});
    constexpr double taper = kMostTaper * kMostTaper * kMostTaper * kMostTaper;
    return most <= taper * least && dead_ * h * h <= kMostBend * kMostBend * least &&
           std::abs(load_.moment) * h <= kMostBend * least;
  }

  const Beam& beam_;
  const ElasticaLoad& load_;
  int fineness_;
  double dead_ = 0;
};

}  // namespace

std::optional<std::vector<BeamElement>> MeshOf(const Beam& beam, const ElasticaLoad& load, int fineness) {
  const Cutter cutter(beam, load, fineness);
  const std::vector<double> must = EndsOf(beam, load);
  std::vector<double> ends{0};
  std::size_t piece = 0;
  for (std::size_t k = 0; k + 1 < must.size(); ++k) {
    const double middle = (must[k] + must[k + 1]) / 2;
    while (beam.pieces[piece].s1 <= middle) ++piece;
    if (!cutter.Cut(beam.pieces[piece], must[k], must[k + 1], ends)) return std::nullopt;
  }
  return MeshOf(beam, load, ends);
}

std::vector<BeamElement> MeshOf(const Beam& beam, const ElasticaLoad& load, const std::vector<double>& ends) {
  const double slack = kSamePlace * beam.length();
  std::vector<BeamElement> elements(ends.size() - 1);
  std::vector<BeamMass> masses = beam.masses;
  std::vector<BeamForce> forces = load.forces;
  std::sort(masses.begin(), masses.end(), [](const BeamMass& a, const BeamMass& b) { return a.s < b.s; });
  std::sort(forces.begin(), forces.end(), [](const BeamForce& a, const BeamForce& b) { return a.s < b.s; });
  double mass = 0, force_x = load.force_x, force_y = load.force_y;  // past the end of the element
  int piece = static_cast<int>(beam.pieces.size()) - 1;
  double past_piece = 0;
  for (std::size_t e = elements.size(); e-- > 0;) {
    BeamElement& element = elements[e];
    element.s0 = ends[e];
    element.s1 = ends[e + 1];
    for (; !masses.empty() && masses.back().s >= element.s1 - slack; masses.pop_back()) mass += masses.back().mass_kg;
    for (; !forces.empty() && forces.back().s >= element.s1 - slack; forces.pop_back()) {
      force_x += forces.back().x;
      force_y += forces.back().y;
    }
    const double middle = (element.s0 + element.s1) / 2;
    while (piece > 0 && middle < beam.pieces[static_cast<std::size_t>(piece)].s0) {
      past_piece +=
          MassPast(beam.pieces[static_cast<std::size_t>(piece)], beam.pieces[static_cast<std::size_t>(piece)].s0);
      --piece;
    }
    element.piece = piece;
    element.mass_beyond = mass + past_piece;
    element.force_x = force_x;
    element.force_y = force_y;
  }
  return elements;
}

BeamSection SectionAt(const Beam& beam, const ElasticaLoad& load, const BeamElement& element, double t) {
  const BeamPiece& piece = beam.pieces[static_cast<std::size_t>(element.piece)];
  const double s = element.s0 + t * element.length();
  BeamSection section;
  section.stiffness = piece.StiffnessAt(s);
  section.mass_beyond = element.mass_beyond + MassPast(piece, s);
  section.force_x = element.force_x + load.gravity_x * section.mass_beyond;
  section.force_y = element.force_y + load.gravity_y * section.mass_beyond;
  return section;
}

}  // namespace withy
