#include "withy/numerics/beam.h"

#include <cmath>
#include <cstddef>
#include <limits>
#include <locale>
#include <optional>
#include <sstream>

namespace withy {
namespace {

// Joints of pieces and the ends of the beam may be off by this much of its length.
constexpr double kJoint = 1e-9;

template <std::size_t N>
double Horner(const std::array<double, N>& powers, double t) {
  double value = 0;
  for (std::size_t k = N; k-- > 0;) value = value * t + powers[k];
  return value;
}

// The same polynomial over the rest of the piece: p(t) with t = from + (1 - from) u, in powers of u (Horner's scheme).
template <std::size_t N>
std::array<double, N> Rest(const std::array<double, N>& powers, double from) {
  std::array<double, N> rest{};
  for (std::size_t i = N; i-- > 0;) {
    for (std::size_t k = N - 1; k > 0; --k) rest[k] = rest[k] * from + rest[k - 1] * (1 - from);
    rest[0] = rest[0] * from + powers[i];
  }
  return rest;
}

template <std::size_t N>
bool AllFinite(const std::array<double, N>& powers) {
  for (double power : powers) {
    if (!std::isfinite(power)) return false;
  }
  return true;
}

// The same polynomial over [0, 1] by its Bernstein coefficients, between the least and greatest of which it lies.
template <std::size_t N>
std::array<double, N> BernsteinOf(std::array<double, N> powers) {
  double choose = 1;  // of k from the degree
  for (std::size_t k = 0; k < N; ++k) {
    powers[k] /= choose;
    choose = choose * static_cast<double>(N - 1 - k) / static_cast<double>(k + 1);
  }
  for (std::size_t round = 1; round < N; ++round) {
    for (std::size_t k = N - 1; k >= round; --k) powers[k] += powers[k - 1];
  }
  return powers;
}

// Somewhere in [t0, t1] where the polynomial is not above `floor`; halves (de Casteljau) until that is certain. Unset
// where it is above everywhere.
template <std::size_t N>
std::optional<double> NotAbove(double floor, std::array<double, N> left, double t0, double t1, int halvings = 40) {
  if (!(left.front() > floor)) return t0;
  if (!(left.back() > floor)) return t1;
  bool above = true;
  for (double coefficient : left) above = above && coefficient > floor;
  if (above) return std::nullopt;
  if (halvings == 0) return t0;
  std::array<double, N> right = left;
  for (std::size_t round = 1; round < N; ++round) {
    for (std::size_t k = N - 1; k >= round; --k) left[k] = (left[k] + left[k - 1]) / 2;
    for (std::size_t k = 0; k < N - round; ++k) right[k] = (right[k] + right[k + 1]) / 2;
  }
  const double middle = (t0 + t1) / 2;
  if (const auto first = NotAbove(floor, left, t0, middle, halvings - 1)) return first;
  return NotAbove(floor, right, middle, t1, halvings - 1);
}

std::string Say(const std::string& what, double s) {
  std::ostringstream text;
  text.imbue(std::locale::classic());
  text << what << " at " << s << " m";
  return text.str();
}

std::string WhatIsWrongWith(const BeamPiece& piece, double start, double slack) {
  if (!std::isfinite(piece.s0) || !std::isfinite(piece.s1))
    return Say("a piece ends nowhere: not a number, after", start);
  if (std::abs(piece.s0 - start) > slack) return Say("pieces do not follow end to end", piece.s0);
  if (!(piece.s0 < piece.s1)) return Say("a piece has no length", piece.s0);
  if (!AllFinite(piece.stiffness)) return Say("stiffness is not a number", piece.s0);
  if (!AllFinite(piece.mass)) return Say("mass is not a number", piece.s0);
  const double length = piece.s1 - piece.s0;
  if (const auto t = NotAbove(0, BernsteinOf(piece.stiffness), 0, 1)) {
    return Say("stiffness is not above zero", piece.s0 + *t * length);
  }
  double scale = 0;  // a taper that runs out to nothing may round to a little less than nothing
  for (double power : piece.mass) scale += std::abs(power);
  const double floor = -1e-12 * scale - std::numeric_limits<double>::min();
  if (const auto t = NotAbove(floor, BernsteinOf(piece.mass), 0, 1)) {
    return Say("mass is below zero", piece.s0 + *t * length);
  }
  return "";
}

}  // namespace

double BeamPiece::StiffnessAt(double s) const {
  return Horner(stiffness, (s - s0) / (s1 - s0));
}

double BeamPiece::MassPerLengthAt(double s) const {
  return Horner(mass, (s - s0) / (s1 - s0));
}

BeamPiece BeamPiece::From(double s) const {
  const double t = (s - s0) / (s1 - s0);
  return {s, s1, Rest(stiffness, t), Rest(mass, t)};
}

std::string WhatIsWrongWith(const Beam& beam) {
  if (beam.pieces.empty()) return "the beam has no pieces";
  const double slack = kJoint * std::abs(beam.length());
  double start = 0;
  for (const BeamPiece& piece : beam.pieces) {
    const std::string wrong = WhatIsWrongWith(piece, start, slack);
    if (!wrong.empty()) return wrong;
    start = piece.s1;
  }
  for (const BeamMass& mass : beam.masses) {
    if (!std::isfinite(mass.s) || mass.s < -slack || mass.s > beam.length() + slack) {
      return Say("a mass lies beyond the beam,", mass.s);
    }
    if (!std::isfinite(mass.mass_kg) || mass.mass_kg < 0) return Say("a mass is below zero or not a number", mass.s);
  }
  return "";
}

}  // namespace withy
