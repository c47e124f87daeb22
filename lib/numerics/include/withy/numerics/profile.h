// A piecewise linear function of one coordinate, with jumps: tapers, bores, outer profiles. Knows no rods.
//
//   Profile taper({{0.0, 13.46}, {76.2, 13.21}, {2209.8, 2.06}});
//   taper.At(38.1)            // 13.335
//   taper.At(x, Profile::Limit::kLeft)  // at a jump: the limit from the left
//
// Knots are (coordinate, value), coordinates never decreasing; a coordinate given twice is a jump: the first value is the
// limit from the left, the second from the right. Beyond the ends the end value holds.
#ifndef WITHY_NUMERICS_PROFILE_H_
#define WITHY_NUMERICS_PROFILE_H_

#include <vector>

namespace withy {

class Profile {
 public:
  struct Knot {
    double x = 0;
    double y = 0;
    bool operator==(const Knot&) const = default;
  };
  enum class Limit { kLeft, kRight };

  Profile() = default;
  // Requires: at least one knot, coordinates finite and never decreasing (asserted in debug; callers check first).
  explicit Profile(std::vector<Knot> knots);

  bool empty() const { return knots_.empty(); }
  const std::vector<Knot>& knots() const { return knots_; }
  double begin() const { return knots_.front().x; }
  double end() const { return knots_.back().x; }
  // Value at x in O(log n); at a jump the limit from that side. Requires: not empty.
  double At(double x, Limit limit = Limit::kRight) const;
  // Smallest and largest value over the closed interval [a, b], both limits of a jump inside it included (at a only the
  // right limit, at b only the left, where a < b). Requires: not empty, a <= b.
  double Min(double a, double b) const;
  double Max(double a, double b) const;
  // The part over [a, b], with knots at a and b.
  Profile Slice(double a, double b) const;
  // The same function of a moved coordinate: Shifted(d).At(x + d) == At(x).
  Profile Shifted(double distance) const;
  // The jump nearest to x where one lies within `within`, else x itself. Lengths that were added up miss a shoulder by a
  // rounding, and with it its side.
  double OntoJump(double x, double within) const;

 private:
  std::vector<Knot> knots_;
};

}  // namespace withy

#endif  // WITHY_NUMERICS_PROFILE_H_
