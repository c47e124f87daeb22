#include "read_quantity.h"

#include <cmath>
#include <utility>

namespace withy {
namespace {

// In the SI unit, for one unit of what was written.
struct Scale {
  double value = 0;
  double unit = 0;  // 0 = no unit was written
};

Scale ScaleOf(const v1::Length& q) {
  switch (q.unit_case()) {
    case v1::Length::kMm: return {Length::Mm(q.mm()).meters(), Length::Mm(1).meters()};
    case v1::Length::kInch: return {Length::Inches(q.inch()).meters(), Length::Inches(1).meters()};
    case v1::Length::kIn64: return {Length::In64(q.in64()).meters(), Length::In64(1).meters()};
    case v1::Length::UNIT_NOT_SET: break;
  }
  return {};
}

Scale ScaleOf(const v1::Mass& q) {
  switch (q.unit_case()) {
    case v1::Mass::kG: return {Mass::Grams(q.g()).kilograms(), Mass::Grams(1).kilograms()};
    case v1::Mass::kOz: return {Mass::Ounces(q.oz()).kilograms(), Mass::Ounces(1).kilograms()};
    case v1::Mass::kGrain: return {Mass::Grains(q.grain()).kilograms(), Mass::Grains(1).kilograms()};
    case v1::Mass::UNIT_NOT_SET: break;
  }
  return {};
}

Scale ScaleOf(const v1::Density& q) {
  if (q.unit_case() != v1::Density::kGPerCm3) return {};
  return {Density::GramsPerCm3(q.g_per_cm3()).kilograms_per_m3(), Density::GramsPerCm3(1).kilograms_per_m3()};
}

Scale ScaleOf(const v1::Modulus& q) {
  switch (q.unit_case()) {
    case v1::Modulus::kGpa: return {Modulus::Gigapascals(q.gpa()).pascals(), Modulus::Gigapascals(1).pascals()};
    case v1::Modulus::kMsi: return {Modulus::Msi(q.msi()).pascals(), Modulus::Msi(1).pascals()};
    case v1::Modulus::UNIT_NOT_SET: break;
  }
  return {};
}

Scale ScaleOf(const v1::Angle& q) { return q.unit_case() == v1::Angle::kDeg ? Scale{q.deg(), 1} : Scale{}; }

Scale ScaleOf(const v1::Force& q) {
  switch (q.unit_case()) {
    case v1::Force::kN: return {q.n(), 1};
    case v1::Force::kLbf: return {Force::PoundsForce(q.lbf()).newtons(), Force::PoundsForce(1).newtons()};
    case v1::Force::kKgf: return {Force::KilogramsForce(q.kgf()).newtons(), Force::KilogramsForce(1).newtons()};
    case v1::Force::UNIT_NOT_SET: break;
  }
  return {};
}

constexpr double kCubicMetersPerMl = 1e-6;

Scale ScaleOf(const v1::Volume& q) {
  switch (q.unit_case()) {
    case v1::Volume::kMl: return {q.ml() * kCubicMetersPerMl, kCubicMetersPerMl};
    case v1::Volume::kFlOz:
      return {Volume::FluidOunces(q.fl_oz()).milliliters() * kCubicMetersPerMl,
              Volume::FluidOunces(1).milliliters() * kCubicMetersPerMl};
    case v1::Volume::UNIT_NOT_SET: break;
  }
  return {};
}

Scale ScaleOf(const v1::Time& q) {
  switch (q.unit_case()) {
    case v1::Time::kSeconds: return {q.seconds(), 1};
    case v1::Time::kMinutes: return {Duration::Minutes(q.minutes()).seconds(), Duration::Minutes(1).seconds()};
    case v1::Time::kHours: return {Duration::Hours(q.hours()).seconds(), Duration::Hours(1).seconds()};
    case v1::Time::kDays: return {Duration::Days(q.days()).seconds(), Duration::Days(1).seconds()};
    case v1::Time::UNIT_NOT_SET: break;
  }
  return {};
}

bool Usable(double value, double largest) { return std::isfinite(value) && std::abs(value) <= largest; }

template <typename Message>
std::optional<double> PlusMinusOf(const Message& q, double unit, double largest) {
  if (!q.has_plus_minus()) return std::nullopt;
  const double plus_minus = q.plus_minus() * unit;
  if (!Usable(plus_minus, largest) || plus_minus < 0) return std::nullopt;
  return plus_minus;
}

template <typename T, typename Message, typename Make>
Maybe<T> Read(const Message& q, const FieldPath& owner, std::string_view name, double largest, Source otherwise,
              Make make) {
  const Scale scale = ScaleOf(q);
  if (scale.unit == 0 || !Usable(scale.value, largest)) return std::nullopt;
  const Source source = q.source() == v1::Source::UNSPECIFIED ? otherwise : SourceOf(q.source());
  return Known<T>{make(scale.value), PlusMinusOf(q, scale.unit, largest), source, owner.Field(name)};
}

double Same(double value) { return value; }

}  // namespace

Source SourceOf(v1::Source::Value source) {
  switch (source) {
    case v1::Source::MEASURED: return Source::kMeasured;
    case v1::Source::CATALOGUE: return Source::kCatalogue;
    case v1::Source::ESTIMATED: return Source::kEstimated;
    default: return Source::kPlan;
  }
}

Maybe<Length> ReadLength(const v1::Length& q, const FieldPath& owner, std::string_view name, Source otherwise) {
  return Read<Length>(q, owner, name, kLargestMetersOrKilograms, otherwise, Length::Meters);
}

Maybe<Mass> ReadMass(const v1::Mass& q, const FieldPath& owner, std::string_view name) {
  return Read<Mass>(q, owner, name, kLargestMetersOrKilograms, Source::kPlan, Mass::Kilograms);
}

Maybe<double> ReadDensity(const v1::Density& q, const FieldPath& owner, std::string_view name) {
  return Read<double>(q, owner, name, kLargestOther, Source::kPlan, Same);
}

Maybe<double> ReadModulus(const v1::Modulus& q, const FieldPath& owner, std::string_view name) {
  return Read<double>(q, owner, name, kLargestOther, Source::kPlan, Same);
}

Maybe<double> ReadAngle(const v1::Angle& q, const FieldPath& owner, std::string_view name) {
  return Read<double>(q, owner, name, kLargestOther, Source::kPlan, Same);
}

Maybe<double> ReadForce(const v1::Force& q, const FieldPath& owner, std::string_view name) {
  return Read<double>(q, owner, name, kLargestOther, Source::kPlan, Same);
}

Maybe<double> ReadVolume(const v1::Volume& q, const FieldPath& owner, std::string_view name) {
  return Read<double>(q, owner, name, kLargestOther, Source::kPlan, Same);
}

Maybe<double> ReadTime(const v1::Time& q, const FieldPath& owner, std::string_view name) {
  return Read<double>(q, owner, name, kLargestOther, Source::kPlan, Same);
}

std::optional<Length> LengthOf(const v1::Length& q) {
  const Scale scale = ScaleOf(q);
  if (scale.unit == 0 || !Usable(scale.value, kLargestMetersOrKilograms)) return std::nullopt;
  return Length::Meters(scale.value);
}

std::optional<double> PlusMinusMeters(const v1::Length& q) {
  return PlusMinusOf(q, ScaleOf(q).unit, kLargestMetersOrKilograms);
}

std::optional<double> CelsiusOf(const v1::Temperature& q) {
  double celsius = 0;
  switch (q.unit_case()) {
    case v1::Temperature::kCelsius: celsius = q.celsius(); break;
    case v1::Temperature::kFahrenheit: celsius = Temperature::Fahrenheit(q.fahrenheit()).celsius(); break;
    case v1::Temperature::UNIT_NOT_SET: return std::nullopt;
  }
  return Usable(celsius, kLargestOther) ? std::optional<double>(celsius) : std::nullopt;
}

}  // namespace withy
