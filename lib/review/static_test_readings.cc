#include "static_test_readings.h"

#include <cmath>
#include <utility>

#include "absl/strings/str_cat.h"
#include "bench_text.h"
#include "figure_text.h"
#include "withy/units/format.h"
#include "withy/units/quantity.h"

namespace withy {
namespace {

constexpr double kLikeness = 0.02;  // relative: two numbers that are meant to be one
constexpr double kOverRating = 2;   // beyond it a weight is taken for a typing error, or for an accident to come
constexpr double kMostButtDeg = 90, kMostLineDeg = 180;

std::optional<double> NewtonsOf(const v1::Force& force) {
  switch (force.unit_case()) {
    case v1::Force::kN:
      return force.n();
    case v1::Force::kLbf:
      return Force::PoundsForce(force.lbf()).newtons();
    case v1::Force::kKgf:
      return Force::KilogramsForce(force.kgf()).newtons();
    default:
      return std::nullopt;
  }
}

std::optional<double> GramsOf(const v1::Mass& mass) {
  switch (mass.unit_case()) {
    case v1::Mass::kG:
      return mass.g();
    case v1::Mass::kOz:
      return Mass::Ounces(mass.oz()).grams();
    case v1::Mass::kGrain:
      return Mass::Grains(mass.grain()).grams();
    default:
      return std::nullopt;
  }
}

class TestJudge {
 public:
  TestJudge(const v1::Design& design, const v1::Report& report, const BenchReadings& readings, LengthUnits units)
      : design_(design), report_(report), readings_(readings), units_(units) {}

  std::vector<Refusal> Run() {
    Weight(*readings_.lifted_g);
    Angle(readings_.butt_angle_deg, kMostButtDeg, "the butt", "from -90 (straight down) to 90 (straight up)");
    Angle(readings_.line_angle_deg, kMostLineDeg, "the line", "from -180 to 180, from the butt's forward axis");
    const std::optional<double> overall = WITHY_FIGURE(report_.fit(), overall_length_mm);
    if (readings_.clamp_mm) Within(*readings_.clamp_mm, 0, overall, "a clamp ", " from the butt end is off the rod");
    if (readings_.tip_drop_mm) {
      const double held = readings_.clamp_mm.value_or(0);
      const std::optional<double> longest = overall ? std::optional(*overall - held) : std::nullopt;
      Within(*readings_.tip_drop_mm, longest ? -*longest : -INFINITY, longest, "a tip that drops by ",
             " is further away than the rod reaches");
    }
    return std::move(refusals_);
  }

 private:
  void Refuse(std::string message, std::string help, bool may_be_forced) {
    refusals_.push_back({std::move(message), std::move(help), may_be_forced});
  }

  static std::string GramsText(double g) { return FormatShortest(std::round(g)) + " g"; }

  void Weight(double lifted_g) {
    if (!(lifted_g > 0 && std::isfinite(lifted_g))) {
      return Refuse("a weight lifted is a number above zero", "type what hung on the line", /*may_be_forced=*/false);
    }
    const std::optional<double> rated_n = NewtonsOf(design_.blank().rated_lift());
    const double pull_n = Force::WeightOf(Mass::Grams(lifted_g)).newtons();
    if (rated_n && *rated_n > 0 && pull_n > kOverRating * *rated_n) {
      Refuse(absl::StrCat("a weight of ", GramsText(lifted_g), " pulls with ", FormatFixed(pull_n, 1),
                          " N, more than twice the blank's ", "rated lift of ", FormatFixed(*rated_n, 1), " N"),
             "look at the unit and at the decimal point", /*may_be_forced=*/true);
    }
    for (const v1::LoadCase& load : design_.load_cases()) {
      const std::optional<double> meant_g = GramsOf(load.lifted());
      const std::string times = meant_g && *meant_g > 0 ? TimesOff(lifted_g, *meant_g, kGramsPerOunce) : "";
      if (times.empty()) continue;
      return Refuse(absl::StrCat("a weight of ", GramsText(lifted_g), " is ", times, " the ", GramsText(*meant_g),
                                 " of '", load.id(), "'"),
                    "look at the unit and at the decimal point", /*may_be_forced=*/true);
    }
  }

  void Angle(std::optional<double> deg, double most, std::string_view of, std::string_view range) {
    if (!deg || std::abs(*deg) <= most) return;
    Refuse(absl::StrCat("an angle of ", std::string(of), " of ", FormatShortest(*deg), " deg"),
           absl::StrCat("angles of ", std::string(of), " go ", std::string(range)), /*may_be_forced=*/false);
  }

  void Within(double mm, double least, std::optional<double> most, std::string_view what, std::string_view wrong) {
    if (mm >= least && (!most || mm <= *most)) return;
    Refuse(absl::StrCat(std::string(what), BenchText(mm, units_), std::string(wrong),
                        most ? ": " + BenchText(*most, units_) : ""),
           "look at the unit, and measure again", /*may_be_forced=*/false);
  }

  const v1::Design& design_;
  const v1::Report& report_;
  const BenchReadings& readings_;
  const LengthUnits units_;
  std::vector<Refusal> refusals_;
};

}  // namespace

std::string TimesOff(double number, double meant, double unit) {
  for (double factor : {unit, 10.0}) {
    const std::string times = FormatShortest(std::round(factor * 100) / 100);
    if (std::abs(number / meant / factor - 1) < kLikeness) return times + " times";
    if (std::abs(number / meant * factor - 1) < kLikeness) return "1/" + times + " of";
  }
  return "";
}

std::vector<Refusal> RefusalsOfStaticTest(const v1::Design& design, const v1::Report& report,
                                          const BenchReadings& readings, LengthUnits units) {
  if (!readings.lifted_g) return {};
  return TestJudge(design, report, readings, units).Run();
}

}  // namespace withy
