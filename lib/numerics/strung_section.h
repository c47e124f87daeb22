// One section of a strung beam: from ring to ring, where a constant force N acts on all that lies beyond.
//
//   theta' = M / EI,  x' = cos theta,  y' = sin theta,  M' = -t x N = Nx y' - Ny x'
//
// Integrated by Taylor series. EI is a polynomial in each piece, so that the coefficients of theta, its sine and
// cosine, x, y and M follow from those before them by products of series (Moore, Interval Analysis, 1966; Jorba and
// Zou, Experimental Mathematics 14, 2005): one sine and one division a step whatever the order, and an arc ends as a
// polynomial that can be asked anywhere. The series stops where its terms are nothing; where they do not get there the
// step is cut short.
#ifndef WITHY_LIB_NUMERICS_STRUNG_SECTION_H_
#define WITHY_LIB_NUMERICS_STRUNG_SECTION_H_

#include <array>
#include <cstddef>

#include "withy/numerics/beam.h"
#include "withy/numerics/elastica.h"

namespace withy {

struct PlaneVector {
  double x = 0, y = 0;
};
inline double Dot(PlaneVector a, PlaneVector b) {
  return a.x * b.x + a.y * b.y;
}
inline double Cross(PlaneVector a, PlaneVector b) {
  return a.x * b.y - a.y * b.x;
}
inline PlaneVector Quarter(PlaneVector a) {  // turned anticlockwise by a right angle
  return {-a.y, a.x};
}

// The solution over one step, as polynomials in t in [0, 1].
struct BendArc {
  static constexpr std::size_t kTerms = 17;
  std::size_t piece = 0;
  double s0 = 0, length = 0;
  std::size_t terms = 0;
  std::array<double, kTerms> angle, x, y, moment;

  BeamPoint At(double t) const;
  double MomentAt(double t) const;
};

// What a state answers to the angle and moment at the start of the section, and to N.
struct StateChange {
  double angle = 0, x = 0, y = 0, moment = 0;
};
struct FirstVariations {
  StateChange by_angle, by_moment, by_pull_x, by_pull_y;
};

// Walks from s0 to s1, arc by arc. `tolerance`: of the terms left out, radians, in each arc.
class SectionWalk {
 public:
  SectionWalk(const Beam& beam, const BeamPoint& start, double s1, PlaneVector pull, double tolerance);

  // False at the end, and where it cannot go on (Failed).
  bool Next(BendArc& arc);
  bool Failed() const { return failed_; }
  const BeamPoint& here() const { return here_; }

  // The whole way at once. False where it fails.
  bool ToEnd();
  bool ToEnd(FirstVariations& variations);

 private:
  struct Varied;
  struct Stretch;
  bool NextStretch(Stretch& stretch);
  double Expand(const Stretch& stretch, BendArc& arc) const;  // by how much of the stretch the arc reaches
  void Vary(const Stretch& stretch, const BendArc& arc, double reach, Varied& varied) const;
  void Advance(const Stretch& stretch, const BendArc& arc, double reach);

  const Beam& beam_;
  BeamPoint here_;
  double end_;
  PlaneVector pull_;
  double tolerance_;
  std::size_t piece_ = 0;
  int arcs_left_;
  bool failed_ = false;
};

}  // namespace withy

#endif  // WITHY_LIB_NUMERICS_STRUNG_SECTION_H_
