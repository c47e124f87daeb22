// One linear piece of a shaft against one linear piece of a bore: the plane problem under Insertion, in closed form.
//
//   interference(s, z) = shaft(s) + clearance - bore(z), affine over the rectangle [s.lo, s.hi] x [z.lo, z.hi]
//
// Where is z - s largest with interference >= 0? At the corner (s.lo, z.hi) if that interferes. Otherwise what it lacks
// there must be made up by going back in z (where the bore narrows to the rear) or ahead in s (where the shaft
// thickens), either at the cost of 1 per unit of length; so the steeper of the two first, and then the other.
#ifndef WITHY_NUMERICS_CONTACT_PAIR_H_
#define WITHY_NUMERICS_CONTACT_PAIR_H_

#include <limits>
#include <optional>

#include "withy/numerics/insertion.h"

namespace withy {

inline constexpr double kNoReach = -std::numeric_limits<double>::infinity();

class ContactPair {
 public:
  ContactPair(const Insertion::Piece& shaft, const Insertion::Piece& bore, double clearance);

  // The largest interference, 0 where it is a tie. Only pairs where it is not negative are asked for more.
  double Worst() const { return worst_; }
  // The shaft's diameter where its piece begins, with the clearance.
  double StartDiameter() const { return shaft_.at_lo + clearance_; }
  // The largest z - s where the interference is the largest.
  double TouchingReach() const;

  struct Point {
    double s = 0, z = 0;
    double Reach() const { return z - s; }
  };
  // What the corner lacks made up by going back in z first, or ahead in s first. The better one is where z - s is
  // largest; where the faces are parallel both are, and so is the line between them.
  Point BackFirst() const { return back_first_; }
  Point AheadFirst() const { return ahead_first_; }
  double Reach() const;

  // Derivative of Reach with respect to a thicker shaft, on either side of 0; both >= 0.
  double TowardsThicker() const;
  double TowardsThinner() const;
  // Derivative of Reach with respect to s.lo where the piece begins at the cut.
  double SlopeAtStart() const;
  // The limit of the largest z - s as s goes up to s.hi, and the derivative of that with respect to s; unset where
  // nothing interferes there.
  struct Edge {
    double reach = 0, slope = 0;
  };
  std::optional<Edge> AtEnd() const;
  // Supremum of s where something interferes with z - s > reach; unset where nothing does.
  std::optional<double> FarthestAbove(double reach) const;

 private:
  double InterferenceAt(double s, double z) const;
  Point MakeUp(bool back_first) const;
  // What is still lacking once the steeper of the two is used up; and reach lost per interference made up by that one,
  // or by the other one.
  double LackingBeyondSteeper() const;
  double Cost(bool beyond_steeper) const;

  Insertion::Piece shaft_, bore_;
  double clearance_ = 0;
  double lacking_ = 0;          // at the corner (s.lo, z.hi); negative where that interferes
  double by_s_ = 0, by_z_ = 0;  // interference gained per unit of length ahead in s and back in z, >= 0
  double worst_ = 0;
  Point back_first_, ahead_first_;
};

}  // namespace withy

#endif  // WITHY_NUMERICS_CONTACT_PAIR_H_
