// A slender straight beam: how stiff and how heavy it is along its axis. Knows no rods.
//
//   Beam beam;
//   beam.pieces.push_back({0, 2, {56.8}, {0.02}});     // 2 m of 56.8 N m2 and 20 g/m
//   beam.masses.push_back({2, 0.030});                 // 30 g on its free end
//
// s runs from the clamp at 0 to the free end. Within a piece stiffness and mass per length are polynomials in t = (s - s0) /
// (s1 - s0): of a conical tube between two stations they are exactly that, of degree four and two.
#ifndef WITHY_NUMERICS_BEAM_H_
#define WITHY_NUMERICS_BEAM_H_

#include <array>
#include <string>
#include <vector>

namespace withy {

struct BeamPiece {
  double s0 = 0, s1 = 0;                  // metres, s0 < s1
  std::array<double, 5> stiffness{};      // EI in N m2, ascending powers of t; above zero over the piece
  std::array<double, 3> mass{};           // kg/m, ascending powers of t; never below zero

  double StiffnessAt(double s) const;
  double MassPerLengthAt(double s) const;
  // The same piece without what lies before s; s0 <= s < s1.
  BeamPiece From(double s) const;
};

struct BeamMass {
  double s = 0;
  double mass_kg = 0;                     // never below zero
};

struct Beam {
  std::vector<BeamPiece> pieces;          // end to end from 0, in order
  std::vector<BeamMass> masses;           // points on the axis, in any order
  double length() const { return pieces.empty() ? 0 : pieces.back().s1; }
};

// What keeps a beam from being one: empty where it is one. "stiffness is not above zero at 1.82 m".
std::string WhatIsWrongWith(const Beam& beam);

}  // namespace withy

#endif  // WITHY_NUMERICS_BEAM_H_
