// Quantities: a number enters and leaves only by naming a unit.
//
//   Length blank = Length::Inches(87);
//   double mm = blank.mm();            // 2209.8
//   Length twice = blank * 2;
//   Length bad = 87;                   // does not compile
//
// Inside, a quantity is a double in its SI unit. Every conversion factor is a ratio of two numbers that are exact in
// binary wherever the definition allows it (an inch is 254/10 mm, not 25.4), so that a value converted and converted
// back differs by at most an ulp or two (tested to 1e-12 relative).
//
// Sources of the constants: international yard and pound agreement (1959) through NIST SP 811 (2008) appendix B; standard
// gravity 9.80665 m/s2, 3rd CGPM 1901. `kStandardGravity` and the constants below are the only place they stand.
#ifndef WITHY_UNITS_QUANTITY_H_
#define WITHY_UNITS_QUANTITY_H_

#include <compare>

namespace withy {

inline constexpr double kStandardGravity = 9.80665;        // m/s2, exact
inline constexpr double kGramsPerOunce = 28.349523125;     // avoirdupois, exact
inline constexpr double kGramsPerGrain = 0.06479891;       // exact, 1/7000 lb
inline constexpr double kMillilitresPerFluidOunce = 29.5735295625;  // US, exact, 231 in3 / 128
inline constexpr double kNewtonsPerPoundForce = 4.4482216152605;    // exact
inline constexpr double kPascalsPerPsi = 6894.757293168361;         // lbf/in2, rounded to double

// One kind of quantity. `Kind` is an empty tag; the arithmetic is that of a vector space over double.
template <typename Kind>
class Quantity {
 public:
  constexpr Quantity() = default;
  constexpr auto operator<=>(const Quantity&) const = default;
  constexpr Quantity operator-() const { return Quantity(-si_); }
  constexpr Quantity operator+(Quantity other) const { return Quantity(si_ + other.si_); }
  constexpr Quantity operator-(Quantity other) const { return Quantity(si_ - other.si_); }
  constexpr Quantity operator*(double factor) const { return Quantity(si_ * factor); }
  constexpr Quantity operator/(double divisor) const { return Quantity(si_ / divisor); }
  constexpr double operator/(Quantity other) const { return si_ / other.si_; }
  constexpr Quantity& operator+=(Quantity other) { si_ += other.si_; return *this; }
  constexpr Quantity& operator-=(Quantity other) { si_ -= other.si_; return *this; }

 protected:
  explicit constexpr Quantity(double si) : si_(si) {}
  double si_ = 0;

  friend Kind;
};


class Length : public Quantity<Length> {
 public:
  constexpr Length() = default;
  constexpr Length(Quantity<Length> q) : Quantity(q) {}
  static constexpr Length Meters(double m) { return Length(Quantity(m)); }
  static constexpr Length Mm(double mm) { return Length(Quantity(mm / 1000)); }
  static constexpr Length Inches(double inches) { return Length(Quantity(inches * 254 / 10000)); }
  static constexpr Length Feet(double feet) { return Length(Quantity(feet * 3048 / 10000)); }
  static constexpr Length In64(double sixty_fourths) { return Inches(sixty_fourths / 64); }
  constexpr double meters() const { return si_; }
  constexpr double mm() const { return si_ * 1000; }
  constexpr double inches() const { return si_ * 10000 / 254; }
  constexpr double in64() const { return inches() * 64; }
};

class Mass : public Quantity<Mass> {
 public:
  constexpr Mass() = default;
  constexpr Mass(Quantity<Mass> q) : Quantity(q) {}
  static constexpr Mass Kilograms(double kg) { return Mass(Quantity(kg)); }
  static constexpr Mass Grams(double g) { return Mass(Quantity(g / 1000)); }
  static constexpr Mass Ounces(double oz) { return Grams(oz * kGramsPerOunce); }
  static constexpr Mass Grains(double grains) { return Grams(grains * kGramsPerGrain); }
  constexpr double kilograms() const { return si_; }
  constexpr double grams() const { return si_ * 1000; }
  constexpr double ounces() const { return grams() / kGramsPerOunce; }
  constexpr double grains() const { return grams() / kGramsPerGrain; }
};

}  // namespace withy

#endif  // WITHY_UNITS_QUANTITY_H_
