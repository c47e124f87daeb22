#include "section_mass.h"

#include <cmath>
#include <numbers>
#include <optional>
#include <string>

#include "absl/strings/str_cat.h"
#include "consistency_codes.h"
#include "quantities.h"
#include "withy/units/format.h"
#include "withy/units/quantity.h"

namespace withy {
namespace {

constexpr Length kThinnestWall = Length::Mm(0.1);
constexpr Density kLightest = Density::GramsPerCm3(1.2);

// Of the stretch that the taper tells of; nothing where it tells of none.
Mass LightestTube(const v1::Section& section) {
  double outside_mm2 = 0;
  const v1::Station* last = nullptr;
  for (const v1::Station& station : section.taper().stations()) {
    if (last != nullptr) {
      const std::optional<double> from = InFirstUnit(last->at()), to = InFirstUnit(station.at());
      const std::optional<double> wide = InFirstUnit(last->outer()), narrow = InFirstUnit(station.outer());
      if (!from || !to || !wide || !narrow || !(*to > *from) || !(*wide > 0) || !(*narrow > 0)) return Mass();
      outside_mm2 += std::numbers::pi * (*wide + *narrow) / 2 * (*to - *from);
    }
    last = &station;
  }
  const double ml = Volume::CubicMm(outside_mm2 * kThinnestWall.mm()).milliliters();
  return Mass::Grams(ml * kLightest.grams_per_cm3());
}

void Compare(const v1::Mass& stated, Mass lightest, const Spot& spot, std::vector<Finding>& findings) {
  const std::optional<double> grams = InFirstUnit(stated);
  if (!grams || !(*grams > 0) || !std::isfinite(lightest.grams()) || *grams >= lightest.grams()) return;
  std::string message = absl::StrCat(FormatGrams(Mass::Grams(*grams), 2), " is less than the lightest tube of these ",
                                     "diameters has, ", FormatGrams(lightest, 1));
  std::vector<Number> numbers = {{"value_g", *grams}, {"lightest_g", lightest.grams()}};
  const Mass meant = Mass::Ounces(stated.g());
  const bool slip = stated.has_g() && meant >= lightest;
  if (slip) {
    absl::StrAppend(&message, "; did you mean ", FormatShortest(stated.g()), " oz (", FormatGrams(meant, 1), ")?");
    numbers.push_back({"suspected_g", meant.grams()});
  }
  findings.push_back(
      MakeFinding(slip ? kUnitSlip : kImplausible, spot.Path().Field("mass"), std::move(message), std::move(numbers)));
}

}  // namespace

void CheckSectionMass(const v1::Section& section, const Spot& spot, std::vector<Finding>& findings) {
  if (section.has_mass()) Compare(section.mass(), LightestTube(section), spot, findings);
}

void CheckBlankMass(const v1::Blank& blank, const Spot& spot, std::vector<Finding>& findings) {
  if (!blank.has_mass()) return;
  Mass lightest;
  for (const v1::Section& section : blank.sections()) {
    if (section.spare_for().empty()) lightest += LightestTube(section);
  }
  Compare(blank.mass(), lightest, spot, findings);
}

}  // namespace withy
