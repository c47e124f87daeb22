// Quantities: a number enters and leaves only by naming a unit.
//
//   Length blank = Length::Inches(87);
//   double mm = blank.mm();            // 2209.8
//   Length twice = blank * 2;
//   Length bad = 87;                   // does not compile
//
// Inside, a quantity is a double in the unit that the schema names first (mm, g, ml, N, GPa ...): a number that came in by
// that unit goes out by it unchanged. Every conversion factor is a ratio of two numbers that are exact in binary wherever
// the definition allows it (an inch is 254/10 mm, not 25.4), so that a value converted and converted back differs by at
// most an ulp or two (tested to 1e-12 relative), and an inch in binary fractions comes back as it went in.
//
// Sources of the constants: international yard and pound agreement (1959) through NIST SP 811 (2008) appendix B; standard
// gravity 9.80665 m/s2, 3rd CGPM 1901. `kStandardGravity` and the constants below are the only place they stand.
#ifndef WITHY_UNITS_QUANTITY_H_
#define WITHY_UNITS_QUANTITY_H_

#include <compare>
#include <numbers>

namespace withy {

inline constexpr double kStandardGravity = 9.80665;        // m/s2, exact
inline constexpr double kGramsPerOunce = 28.349523125;     // avoirdupois, exact
inline constexpr double kGramsPerGrain = 0.06479891;       // exact, 1/7000 lb
inline constexpr double kMillilitersPerFluidOunce = 29.5735295625;  // US, exact, 231 in3 / 128
inline constexpr double kNewtonsPerPoundForce = 4.4482216152605;    // exact
inline constexpr double kPascalsPerPsi = 6894.757293168361;         // lbf/in2, rounded to double

// One kind of quantity; `Kind` is the class derived from it. The arithmetic is that of a vector space over double. NaN and
// infinity pass through: whoever takes a number from outside checks it first.
template <typename Kind>
class Quantity {
 public:
  constexpr Quantity() = default;
  constexpr auto operator<=>(const Quantity&) const = default;
  constexpr Kind operator-() const { return Quantity(-value_); }
  constexpr Kind operator+(Quantity other) const { return Quantity(value_ + other.value_); }
  constexpr Kind operator-(Quantity other) const { return Quantity(value_ - other.value_); }
  constexpr Kind operator*(double factor) const { return Quantity(value_ * factor); }
  constexpr Kind operator/(double divisor) const { return Quantity(value_ / divisor); }
  constexpr double operator/(Quantity other) const { return value_ / other.value_; }
  constexpr Quantity& operator+=(Quantity other) { value_ += other.value_; return *this; }
  constexpr Quantity& operator-=(Quantity other) { value_ -= other.value_; return *this; }
  friend constexpr Kind operator*(double factor, Quantity quantity) { return quantity * factor; }

 protected:
  explicit constexpr Quantity(double value) : value_(value) {}
  double value_ = 0;

  friend Kind;
};

class Length : public Quantity<Length> {
 public:
  constexpr Length() = default;
  constexpr Length(Quantity<Length> q) : Quantity(q) {}
  static constexpr Length Mm(double mm) { return Quantity(mm); }
  static constexpr Length Meters(double m) { return Mm(m * 1000); }
  static constexpr Length Centimeters(double cm) { return Mm(cm * 10); }
  static constexpr Length Inches(double inches) { return Mm(inches * 254 / 10); }
  static constexpr Length Feet(double feet) { return Mm(feet * 3048 / 10); }
  static constexpr Length In64(double sixty_fourths) { return Inches(sixty_fourths / 64); }
  constexpr double mm() const { return value_; }
  constexpr double meters() const { return value_ / 1000; }
  constexpr double centimeters() const { return value_ / 10; }
  constexpr double inches() const { return value_ * 10 / 254; }
  constexpr double feet() const { return value_ * 10 / 3048; }
  constexpr double in64() const { return inches() * 64; }
};

class Mass : public Quantity<Mass> {
 public:
  constexpr Mass() = default;
  constexpr Mass(Quantity<Mass> q) : Quantity(q) {}
  static constexpr Mass Grams(double g) { return Quantity(g); }
  static constexpr Mass Kilograms(double kg) { return Grams(kg * 1000); }
  static constexpr Mass Ounces(double oz) { return Grams(oz * kGramsPerOunce); }
  static constexpr Mass Pounds(double lb) { return Ounces(lb * 16); }
  static constexpr Mass Grains(double grains) { return Grams(grains * kGramsPerGrain); }
  constexpr double grams() const { return value_; }
  constexpr double kilograms() const { return value_ / 1000; }
  constexpr double ounces() const { return value_ / kGramsPerOunce; }
  constexpr double pounds() const { return ounces() / 16; }
  constexpr double grains() const { return value_ / kGramsPerGrain; }
};

class Volume : public Quantity<Volume> {
 public:
  constexpr Volume() = default;
  constexpr Volume(Quantity<Volume> q) : Quantity(q) {}
  static constexpr Volume Milliliters(double ml) { return Quantity(ml); }
  static constexpr Volume Liters(double l) { return Milliliters(l * 1000); }
  static constexpr Volume CubicMm(double mm3) { return Milliliters(mm3 / 1000); }
  static constexpr Volume FluidOunces(double fl_oz) { return Milliliters(fl_oz * kMillilitersPerFluidOunce); }
  constexpr double milliliters() const { return value_; }
  constexpr double liters() const { return value_ / 1000; }
  constexpr double cubic_mm() const { return value_ * 1000; }
  constexpr double fluid_ounces() const { return value_ / kMillilitersPerFluidOunce; }
};

class Angle : public Quantity<Angle> {
 public:
  constexpr Angle() = default;
  constexpr Angle(Quantity<Angle> q) : Quantity(q) {}
  static constexpr Angle Degrees(double deg) { return Quantity(deg); }
  static constexpr Angle Radians(double rad) { return Degrees(rad * 180 / std::numbers::pi); }
  constexpr double degrees() const { return value_; }
  constexpr double radians() const { return value_ * std::numbers::pi / 180; }
};

class Force : public Quantity<Force> {
 public:
  constexpr Force() = default;
  constexpr Force(Quantity<Force> q) : Quantity(q) {}
  static constexpr Force Newtons(double n) { return Quantity(n); }
  static constexpr Force PoundsForce(double lbf) { return Newtons(lbf * kNewtonsPerPoundForce); }
  static constexpr Force KilogramsForce(double kgf) { return Newtons(kgf * kStandardGravity); }
  // The weight of a mass under standard gravity.
  static constexpr Force WeightOf(Mass mass) { return KilogramsForce(mass.kilograms()); }
  constexpr double newtons() const { return value_; }
  constexpr double pounds_force() const { return value_ / kNewtonsPerPoundForce; }
  constexpr double kilograms_force() const { return value_ / kStandardGravity; }
};

// Of elasticity. 1 msi = 10^6 lbf/in2.
class Modulus : public Quantity<Modulus> {
 public:
  constexpr Modulus() = default;
  constexpr Modulus(Quantity<Modulus> q) : Quantity(q) {}
  static constexpr Modulus Gigapascals(double gpa) { return Quantity(gpa); }
  static constexpr Modulus Pascals(double pa) { return Gigapascals(pa / 1e9); }
  static constexpr Modulus Msi(double msi) { return Gigapascals(msi * kPascalsPerPsi / 1000); }
  constexpr double gigapascals() const { return value_; }
  constexpr double pascals() const { return value_ * 1e9; }
  constexpr double msi() const { return value_ * 1000 / kPascalsPerPsi; }
};

class Density : public Quantity<Density> {
 public:
  constexpr Density() = default;
  constexpr Density(Quantity<Density> q) : Quantity(q) {}
  static constexpr Density GramsPerCm3(double g_per_cm3) { return Quantity(g_per_cm3); }
  static constexpr Density KilogramsPerM3(double kg_per_m3) { return GramsPerCm3(kg_per_m3 / 1000); }
  constexpr double grams_per_cm3() const { return value_; }
  constexpr double kilograms_per_m3() const { return value_ * 1000; }
};

// A span of time at the bench (the schema's Time). A day is 24 hours.
class Duration : public Quantity<Duration> {
 public:
  constexpr Duration() = default;
  constexpr Duration(Quantity<Duration> q) : Quantity(q) {}
  static constexpr Duration Seconds(double s) { return Quantity(s); }
  static constexpr Duration Minutes(double minutes) { return Seconds(minutes * 60); }
  static constexpr Duration Hours(double hours) { return Seconds(hours * 3600); }
  static constexpr Duration Days(double days) { return Seconds(days * 86400); }
  constexpr double seconds() const { return value_; }
  constexpr double minutes() const { return value_ / 60; }
  constexpr double hours() const { return value_ / 3600; }
  constexpr double days() const { return value_ / 86400; }
};

// A reading of a thermometer: a point on a scale, so it is compared but neither added nor scaled.
class Temperature {
 public:
  constexpr Temperature() = default;  // 0 degrees Celsius
  static constexpr Temperature Celsius(double celsius) { return Temperature(celsius); }
  static constexpr Temperature Fahrenheit(double fahrenheit) { return Temperature((fahrenheit - 32) * 5 / 9); }
  constexpr double celsius() const { return celsius_; }
  constexpr double fahrenheit() const { return celsius_ * 9 / 5 + 32; }
  constexpr auto operator<=>(const Temperature&) const = default;

 private:
  explicit constexpr Temperature(double celsius) : celsius_(celsius) {}
  double celsius_ = 0;
};

}  // namespace withy

#endif  // WITHY_UNITS_QUANTITY_H_
