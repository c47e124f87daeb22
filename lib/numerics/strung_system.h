// The equations of a strung beam: multiple shooting from node to node.
//
// Unknown at node k: angle, x and y of the axis, Q, the moment about the ring's centre of all that lies beyond, and
// with friction t = log(T_k / T). A span runs from centre to centre, so its direction u_k follows from the two nodes
// and cannot come out reversed. With F = T u_n, N_k = F - T_k u_k and d = c - r, section by section
//
//   (angle, x, y)_(k+1) - flow of (angle, x, y, M = Q + d x N_k)_k under N_k = 0
//   Q_k - Q_(k+1) - (c_(k+1) - c_k) x F = 0          since u_k is parallel to the chord
//   t_k - t_(k+1) - friction |turn at k + 1| = 0
//
// with the clamp before them and Q_n = t_n = 0 after: a narrow band.
#ifndef WITHY_LIB_NUMERICS_STRUNG_SYSTEM_H_
#define WITHY_LIB_NUMERICS_STRUNG_SYSTEM_H_

#include <cstddef>
#include <vector>

#include "banded.h"
#include "strung_line.h"
#include "strung_section.h"

namespace withy {

// What a section hangs on, and where it ends.
struct StrungLink {
  PlaneVector arm;  // d
  SpanChord span;
  PlaneVector line_pull;  // T_k u_k, its part in the plane
  PlaneVector pull;       // N_k
  double moment = 0;      // M at its start
  FirstVariations by;
};

class StrungSystem {
 public:
  enum Unknown : std::size_t { kAngle, kX, kY, kMoment, kLogTension };

  explicit StrungSystem(const StrungCase& given);

  void SetStraight();
  // The moments follow from the places.
  void SetNodes(const std::vector<StrungNode>& nodes, const std::vector<double>& log_tension);

  const StrungCase& given() const { return given_; }
  const std::vector<double>& unknowns() const { return unknowns_; }
  std::vector<double>& unknowns() { return unknowns_; }
  double at(std::size_t node, Unknown which) const { return unknowns_[node * width_ + which]; }
  double log_tension(std::size_t node) const { return width_ > kLogTension ? at(node, kLogTension) : 0; }
  PlaneVector Centre(std::size_t node) const;

  // About the present unknowns, at a share of the tension, sections integrated to `tolerance`: the matrix too, or only
  // what the equations lack. False where that cannot be told: numbers run away, rings meet.
  bool Factor(double share, double tolerance);
  bool Evaluate(double share, double tolerance);
  // After Factor: whether the determinant has the sign of that of the slack beam. Along a path it changes where
  // stability is lost. Slack, each unknown hangs on those before it alone, by one equation whose factor is 1; the order
  // of equations makes the sign: at each section three of them stand before that of Q, and of t.
  bool Stable() const { return matrix_.negative() == (width_ == 4 && given_.spans() % 2 == 1); }

  // By the matrix of the last Factor: the correction of Newton after either; the answer to the share of the tension
  // after Factor.
  void Correction(std::vector<double>& change) const;
  void ByShare(std::vector<double>& change) const;
  void Solve(std::vector<double>& side) const { matrix_.Solve(side); }
  // The largest of its angles, and of its ways over the length of the beam.
  double Largest(const std::vector<double>& change) const;
  void Add(const std::vector<double>& change, double factor);

  const std::vector<StrungLink>& links() const { return links_; }
  std::size_t width() const { return width_; }
  std::size_t RowOf(std::size_t section) const { return 3 + section * width_; }  // of its angle; x, y, Q, t follow

 private:
  bool Assemble(double share, double tolerance, bool with_matrix);
  void SetRows(std::size_t k, double share);
  void SetFriction(std::size_t k, bool with_matrix);

  const StrungCase& given_;
  std::size_t width_;
  std::vector<double> unknowns_, lack_;
  std::vector<StrungLink> links_;
  BandedMatrix matrix_;
};

}  // namespace withy

#endif  // WITHY_LIB_NUMERICS_STRUNG_SYSTEM_H_
