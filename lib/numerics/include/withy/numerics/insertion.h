// How far a tapered shaft goes into a bore: a contact problem between two piecewise linear profiles, solved exactly,
// not by sampling. Knows no rods.
//
//   z along the bore: 0 = its rear end, `bore.end()` = its front mouth.   s along the shaft: 0 = the end that enters.
//   The shaft enters at the mouth and moves towards smaller z. After `cut` is off its end the face is at s = cut; at
//   the position e the point s of the shaft is at z = e + s - cut.
//
//   Insertion insertion({.bore = bore, .shaft = shaft, .clearance = 0.0001, .stop = 0});
//   insertion.RestAt(0.05)      // 0.246875: where the face comes to rest, from the bore's rear end
//   insertion.LengthAt(0.05)    // 2.296875: rear end of the bore to the far end of the shaft
//   insertion.At(0.05).contacts // what stops it there
//   insertion.LeastCut(2.2)     // the least that must come off for a length of at most 2.2
//
// Model. A position is admissible where e >= stop and shaft + clearance <= bore at every point of the open overlap
// max(0, e) < z < min(H, e + L - cut), at a jump on both sides. The shaft comes to rest at the smallest e from which on
// every larger one up to H is admissible (it does not jump past an obstruction):
//   u(cut) = sup { z - s : cut < s < L, 0 < z < H, shaft(s) + clearance > bore(z) },  rest = max(stop, cut + u),
//   length = rest + L - cut = max(stop + L - cut, u + L).
// For each pair of linear pieces the set is a rectangle cut by a half plane, and z - s is largest at a vertex. Length
// never increases with the cut, is piecewise linear and right-continuous: at a jump the lower value belongs to the
// jump. Own derivation (plane geometry). Ties: diameters 1e-14, positions 1e-9; a tie passes.
//
// Cost of one query: linear in the pieces of the shaft that can lie in the bore times those of the bore.
#ifndef WITHY_NUMERICS_INSERTION_H_
#define WITHY_NUMERICS_INSERTION_H_

#include <optional>
#include <vector>

#include "withy/numerics/profile.h"

namespace withy {

class Insertion {
 public:
  // Ties: diameters that differ by no more are equal, positions and lengths likewise. They suit metres.
  static constexpr double kDiameterTie = 1e-14;
  static constexpr double kPositionTie = 1e-9;

  // Any one unit, the same for all. Requires: profiles not empty, beginning at 0; clearance finite (it may be
  // negative); 0 <= stop <= bore.end(). Jumps are allowed in both profiles; knots that tie make one.
  struct Setup {
    Profile bore;          // diameters over [0, H]
    Profile shaft;         // diameters over [0, L]
    double clearance = 0;  // added to the shaft's diameter: both sides together
    double stop = 0;       // the face never goes behind it
  };
  explicit Insertion(Setup setup);

  enum class Touch {
    kStep,   // the face on a shoulder of the bore that faces the mouth, or on the mouth itself
    kStop,   // the face on the stop
    kTaper,  // shaft + clearance = bore: anywhere, corners included
  };
  // Parallel faces touch over an interval; else lo = hi. s is on the shaft as supplied.
  struct Contact {
    Touch touch = Touch::kTaper;
    double z_lo = 0, z_hi = 0, s_lo = 0, s_hi = 0;
  };
  struct State {
    double rest = 0;                     // of the face, from the bore's rear end
    double length = 0;                   // rear end of the bore to the far end of the shaft
    double depth = 0;                    // mouth to face
    bool enters = false;                 // depth > 0
    std::vector<Contact> contacts;       // those that block a further move, by z_lo, z_hi, touch
    std::optional<double> slope_before;  // d length / d cut of the branch just below the cut; unset at cut = 0
    double slope_after = 0;              // of the branch from the cut on
    double jump = 0;                     // by how much the length falls at this cut, >= 0
  };

  // Requires of all: 0 <= cut < L.
  double RestAt(double cut) const;
  double LengthAt(double cut) const;
  double LengthBefore(double cut) const;  // limit from smaller cuts; LengthAt(0) at 0
  State At(double cut) const;
  // Least cut with LengthAt(cut) <= length up to rounding (1e-13), in closed form; where only a tie in length makes it,
  // the cut of the tie. Unset where no cut below L gives it.
  std::optional<double> LeastCut(double length) const;
  // The same bore with a shaft that is thicker by `by` everywhere (negative: thinner). The profiles stay as they are,
  // `by` is added to the clearance: the same thing for every position.
  Insertion Thicker(double by) const;
  // The largest jump of LengthAt(cut) while Thicker goes from `from` up to but not including `to`; 0 where none is
  // larger than `least`, and the search is the quicker for it. A jump can hide beside a point that looks smooth: the
  // neck that is passed by a hair. Requires: from <= to, least >= 1e-9.
  double LargestJump(double cut, double from, double to, double least = 1e-9) const;
  // d length / d by of Thicker at by = 0, towards thicker and towards thinner, both >= 0. Where the length jumps as
  // soon as the shaft gets thicker, `thicker` is the derivative beyond the jump.
  struct Sensitivity {
    double thicker = 0, thinner = 0;
  };
  Sensitivity SensitivityAt(double cut) const;

  double bore_length() const { return bore_.end(); }
  double shaft_length() const { return shaft_.end(); }
  const Profile& bore() const { return bore_; }
  const Profile& shaft() const { return shaft_; }
  double clearance() const { return clearance_; }
  double stop() const { return stop_; }

  // A linear piece of a profile, lo < hi.
  struct Piece {
    double lo = 0, hi = 0, at_lo = 0, at_hi = 0;
    double Slope() const { return (at_hi - at_lo) / (hi - lo); }
  };

 private:
  // Which pairs of pieces count: those that interfere, or also those that touch (the limit of a thicker shaft).
  enum class Count { kInterfering, kTouching };
  template <typename Visit>
  void ForEachBorePiece(const Piece& shaft, double by, Count count, const double& floor, Visit visit) const;
  template <typename Visit>
  void ForEachPair(double cut, double by, Count count, const double& floor, Visit visit) const;
  template <typename Visit>
  void ForEachEdgeBelow(double cut, Visit visit) const;
  double ReachAt(double cut, double by, Count count, double floor) const;
  double ReachAt(double cut) const;
  std::optional<double> CutFor(double length) const;
  std::vector<Contact> ContactsAt(double cut, double rest, double reach) const;
  double SlopeAfter(double cut, double reach) const;
  double SlopeBefore(double cut, double reach) const;

  Profile bore_, shaft_;
  double clearance_ = 0, stop_ = 0;
  std::vector<Piece> bore_pieces_, shaft_pieces_;
  std::vector<double> narrowest_behind_;  // [i]: least diameter of bore_pieces_[0..i]
};

}  // namespace withy

#endif  // WITHY_NUMERICS_INSERTION_H_
