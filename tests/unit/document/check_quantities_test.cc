#include <limits>

#include "checked.h"

namespace withy {
namespace {

constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
constexpr double kInf = std::numeric_limits<double>::infinity();

std::string Blank(const std::string& section) {
  return "blank { sections { id: 's' " + section + " } }";
}

TEST(CheckQuantities, WithoutAUnit) {
  ExpectFindings("intent { overall_length {} }", {{"document/no-unit", "intent.overall_length"}});
  ExpectFindings("intent { overall_length { plus_minus: 2 } }", {{"document/no-unit", "intent.overall_length"}});
  ExpectFindings(Blank("taper { stations { at { mm: 0 } wall {} } }"),
                 {{"document/no-unit", "blank.sections[s].taper.stations[0].wall"}});
}

TEST(CheckQuantities, NotFinite) {
  v1::Design design = DesignOf("");
  design.mutable_intent()->mutable_overall_length()->set_inch(kNan);
  design.mutable_intent()->mutable_reel()->mutable_mass()->set_g(kInf);
  design.mutable_intent()->mutable_balance_from_butt()->set_mm(400);
  design.mutable_intent()->mutable_balance_from_butt()->set_plus_minus(-kInf);
  design.mutable_intent()->mutable_line()->set_friction(kNan);
  const auto findings = CheckDesign(design);
  const std::vector<Expectation> expected = {{"document/bad-number", "intent.overall_length.inch"},
                                             {"document/bad-number", "intent.balance_from_butt.plus_minus"},
                                             {"document/bad-number", "intent.reel.mass.g"},
                                             {"document/bad-number", "intent.line.friction"}};
  ASSERT_EQ(findings.size(), expected.size()) << Told(findings);
  for (std::size_t i = 0; i < expected.size(); ++i) EXPECT_TRUE(Meets(findings[i], expected[i])) << Told(findings);
}

TEST(CheckQuantities, Negative) {
  ExpectFindings(
      "intent { reel { mass { oz: -7 } } }",
      {{"document/negative", "intent.reel.mass", {{"value_g", -198.446661875}, {"low_g", 30}, {"high_g", 3000}}}});
  // Where the range goes below zero, a sign is sound.
  ExpectFindings("handle { blank_butt_from_butt { mm: -2 } } guides { id: 'g' angle { deg: -90 } }", {});
}

// The suspected value, worked by hand from the definitions of the units.
struct SlipCase {
  std::string text;
  std::string at;
  std::map<std::string, double> numbers;
};

TEST(CheckQuantities, SlipsOfUnit) {
  for (const SlipCase& c : std::vector<SlipCase>{
           // 87 in written as mm: 87 * 25.4 = 2209.8.
           {"intent { overall_length { mm: 87 } }",
            "intent.overall_length",
            {{"value_mm", 87}, {"low_mm", 400}, {"high_mm", 8000}, {"suspected_mm", 2209.8}}},
           // 2209.8 mm written as inches.
           {"intent { overall_length { inch: 2209.8 } }",
            "intent.overall_length",
            {{"value_mm", 56128.92}, {"low_mm", 400}, {"high_mm", 8000}, {"suspected_mm", 2209.8}}},
           // An 8 oz reel written as 8 g: 8 * 28.349523125.
           {"intent { reel { mass { g: 8 } } }",
            "intent.reel.mass",
            {{"value_g", 8}, {"low_g", 30}, {"high_g", 3000}, {"suspected_g", 226.796185}}},
           // 220 g written as ounces.
           {"intent { reel { mass { oz: 220 } } }",
            "intent.reel.mass",
            {{"value_g", 6236.8950875}, {"low_g", 30}, {"high_g", 3000}, {"suspected_g", 220}}},
           // 225 GPa written as MPa.
           {Blank("modulus { gpa: 225000 }"),
            "blank.sections[s].modulus",
            {{"value_gpa", 225000}, {"low_gpa", 5}, {"high_gpa", 450}, {"suspected_gpa", 225}}},
           // 1550 kg/m3 written as g/cm3.
           {Blank("density { g_per_cm3: 1550 }"),
            "blank.sections[s].density",
            {{"value_g_per_cm3", 1550},
             {"low_g_per_cm3", 0.5},
             {"high_g_per_cm3", 2.6},
             {"suspected_g_per_cm3", 1.55}}},
           // 2.1 m written as mm; 2.1 in would be 53.34 mm, still outside 100 to 6000.
           {Blank("length { mm: 2.1 }"),
            "blank.sections[s].length",
            {{"value_mm", 2.1}, {"low_mm", 100}, {"high_mm", 6000}, {"suspected_mm", 2100}}},
           // A tip-top of 5.5 sixty-fourths written in inches: 5.5 / 64 * 25.4.
           {"tip_top { id: 't' tube_bore { inch: 5.5 } }",
            "tip_top.tube_bore",
            {{"value_mm", 139.7}, {"low_mm", 0.6}, {"high_mm", 15}, {"suspected_mm", 5.5}}},
           // 72 degrees Fahrenheit written as Celsius: 40 * 5 / 9.
           {"shop { temperature { celsius: 72 } }",
            "shop.temperature",
            {{"value_celsius", 72}, {"low_celsius", 5}, {"high_celsius", 45}, {"suspected_celsius", 200.0 / 9}}},
           // 60 percent for a share of 0.6.
           {"finishes { id: 'f' mix { solids: 60 } }",
            "finishes[f].mix.solids",
            {{"value", 60}, {"low", 0.01}, {"high", 1}, {"suspected", 0.6}}},
           // 20 percent of tax for a factor of 1.2.
           {"shop { tax: 20 }", "shop.tax", {{"value", 20}, {"low", 1}, {"high", 2}, {"suspected", 1.2}}},
           // 56.0 without its point.
           {"threads { id: 't' turns_per_10_mm: 560 }",
            "threads[t].turns_per_10_mm",
            {{"value", 560}, {"low", 5}, {"high", 200}, {"suspected", 56}}},
           // An inner diameter written as the wall; it would be plausible as it stands, only elsewhere.
           {Blank("taper { stations { at { mm: 0 } wall { mm: 11.2 } } }"),
            "blank.sections[s].taper.stations[0].wall",
            {{"value_mm", 11.2}, {"low_mm", 0.1}, {"high_mm", 10}, {"suspected_mm", 11.2}}},
       }) {
    ExpectFindings(c.text, {{"document/unit-slip", c.at, c.numbers}});
  }
  const auto findings = CheckText("intent { overall_length { mm: 87 } }");
  EXPECT_NE(findings[0].message.find("87 in (2209.8 mm)"), std::string::npos) << findings[0].message;
}

TEST(CheckQuantities, AsksForTheInnerDiameterFirst) {
  const auto findings = CheckText(Blank("taper { stations { at { mm: 0 } wall { mm: 11.2 } } }"));
  ASSERT_EQ(findings.size(), 1u);
  EXPECT_NE(findings[0].message.find("did you mean `inner` 11.2 mm"), std::string::npos) << findings[0].message;
}

// A tube of 12 mm at the butt and 2 mm at the tip, 2200 mm long, 0.1 mm thick, of 1.2 g/cm3:
// pi * 7 mm * 2200 mm * 0.1 mm = 4.83805 cm3, 5.80566 g.
TEST(CheckQuantities, AMassThatNoTubeOfTheTaperHas) {
  const std::string taper =
      "length { mm: 2200 } taper { stations { at { mm: 0 } outer { mm: 12 } } "
      "stations { at { mm: 2200 } outer { mm: 2 } } } ";
  const double lightest = 5.805663;  // to seven digits
  const auto found = [&](const std::string& text) {
    const auto findings = CheckText(text);
    EXPECT_EQ(findings.size(), 1u) << Told(findings);
    return findings.empty() ? Finding() : findings[0];
  };
  // 2.41 oz written as grams: 2.41 * 28.349523125 = 68.32235.
  const Finding slip = found(Blank(taper + "mass { g: 2.41 }"));
  EXPECT_EQ(slip.code, "document/unit-slip");
  EXPECT_EQ(slip.at.ToString(), "blank.sections[s].mass");
  ASSERT_EQ(slip.numbers.size(), 3u);
  EXPECT_NEAR(slip.numbers[1].value, lightest, 1e-6);
  EXPECT_NEAR(slip.numbers[2].value, 68.32235, 1e-5);
  // No unit explains a mass that is given in ounces already.
  EXPECT_EQ(found(Blank(taper + "mass { oz: 0.1 }")).code, "document/implausible");
  EXPECT_EQ(found("blank { mass { g: 4 } sections { id: 's' " + taper + " } }").at.ToString(), "blank.mass");
  ExpectFindings(Blank(taper + "mass { g: 68.3 }"), {});
  ExpectFindings(Blank("mass { g: 2.41 }"), {});
}

TEST(CheckQuantities, Implausible) {
  // 9 m of blank: neither another unit nor a moved point explains it within 100 to 6000 mm but 900 mm does; 30 turns
  // more than a pattern has, nothing does.
  ExpectFindings("wraps { id: 'w' pattern { axes: 60 } }",
                 {{"document/implausible", "wraps[w].pattern.axes", {{"value", 60}, {"low", 1}, {"high", 36}}}});
  ExpectFindings("shop { temperature { celsius: -3 } }",
                 {{"document/implausible",
                   "shop.temperature",
                   {{"value_celsius", -3}, {"low_celsius", 5}, {"high_celsius", 45}}}});
}

TEST(CheckQuantities, Absurd) {
  ExpectFindings("intent { reel { mass { g: 0 } } }",
                 {{"document/absurd", "intent.reel.mass", {{"value_g", 0}, {"low_g", 30}, {"high_g", 3000}}}});
  ExpectFindings(
      "intent { overall_length { mm: 1e9 } }",
      {{"document/absurd", "intent.overall_length", {{"value_mm", 1e9}, {"low_mm", 400}, {"high_mm", 8000}}}});
  ExpectFindings("guides { id: 'g' angle { deg: -1e6 } }",
                 {{"document/absurd", "guides[g].angle", {{"value_deg", -1e6}, {"low_deg", -360}, {"high_deg", 360}}}});
  ExpectFindings(
      "shop { temperature { celsius: -300 } }",
      {{"document/absurd", "shop.temperature", {{"value_celsius", -300}, {"low_celsius", 5}, {"high_celsius", 45}}}});
  EXPECT_EQ(CheckText("intent { reel { mass { g: 0 } } }")[0].severity, Severity::kError);
}

TEST(CheckQuantities, PlusMinus) {
  ExpectFindings(
      "intent { overall_length { inch: 87 plus_minus: -0.125 } }",
      {{"document/plus-minus", "intent.overall_length.plus_minus", {{"plus_minus_inch", -0.125}, {"value_inch", 87}}}});
  ExpectFindings("intent { reel { mass { g: 220 plus_minus: 300 } } }",
                 {{"document/plus-minus", "intent.reel.mass.plus_minus", {{"plus_minus_g", 300}, {"value_g", 220}}}});
  // A place at the very end, or an angle of nothing, may be known worse than its size.
  ExpectFindings(Blank("taper { stations { at { mm: 0 plus_minus: 0.5 } } } spine { deg: 0 plus_minus: 5 }"), {});
}

TEST(CheckQuantities, RangesInOrder) {
  ExpectFindings("intent { lure { min { oz: 1 } max { g: 10 } } }",
                 {{"document/range-order", "intent.lure", {{"min_g", 28.349523125}, {"max_g", 10}}}});
  // 0.75 oz and 0.25 oz are 21.26214 g and 7.08738 g: told in digits that mean something.
  EXPECT_EQ(CheckText("intent { lure { min { oz: 0.75 } max { oz: 0.25 } } }")[0].message,
            "from 21.26 down to 7.087 g");
  ExpectFindings("intent { lure { min { oz: 0.25 } max { g: 10 } } } blank { rated_line { min { lbf: 8 } } }", {});
}

TEST(CheckQuantities, TheCostIsLinear) {
  v1::Design design = DesignOf(Blank(""));
  auto* taper = design.mutable_blank()->mutable_sections(0)->mutable_taper();
  for (int i = 0; i < 10000; ++i) {
    auto* station = taper->add_stations();
    station->mutable_at()->set_mm(i / 10.0);
    station->mutable_outer()->set_mm(i == 9999 ? 200 : 10);  // the last one is outside 0.5 to 60
  }
  const auto findings = CheckDesign(design);
  ASSERT_EQ(findings.size(), 1u) << Told(findings);
  EXPECT_EQ(findings[0].at.ToString(), "blank.sections[s].taper.stations[9999].outer");
}

}  // namespace
}  // namespace withy
