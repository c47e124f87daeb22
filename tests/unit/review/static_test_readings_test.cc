// Typing errors in a static test. The rod: 2000 mm long, one load case of 450 g, rated to lift 10 N.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "withy/review/bench_readings.h"

namespace withy {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

class StaticTestReadings : public ::testing::Test {
 protected:
  StaticTestReadings() {
    v1::LoadCase& load = *design_.add_load_cases();
    load.set_id("lift");
    load.mutable_lifted()->set_g(450);
    design_.mutable_blank()->mutable_rated_lift()->set_n(10);
    design_.add_guides()->set_id("g1");
    design_.add_guides()->set_id("g2");
    report_.mutable_fit()->set_overall_length_mm(2000);
  }

  std::vector<std::string> Refused(double lifted_g, double butt_deg = 45, const BenchReadings& more = {}) {
    BenchReadings readings = more;
    readings.lifted_g = lifted_g;
    readings.butt_angle_deg = butt_deg;
    std::vector<std::string> messages;
    for (const Refusal& refusal : RefusalsOf(design_, report_, readings, LengthUnits::kMm))
      messages.push_back(refusal.message);
    return messages;
  }

  v1::Design design_;
  v1::Report report_;
};

TEST_F(StaticTestReadings, WhatIsRightPasses) {
  EXPECT_THAT(Refused(450), IsEmpty());
  EXPECT_THAT(Refused(600, -20), IsEmpty());
  BenchReadings more;
  more.line_angle_deg = 135;
  more.clamp_mm = 300;
  more.tip_drop_mm = 1500;
  more.touched = {"g1"};
  EXPECT_THAT(Refused(450, 45, more), IsEmpty());
}

// 450 g x 28.349523125 = 12757 g: ounces typed for grams would read so. 4500 g: ten times; 4500 g x 9.80665 = 44.1 N,
// over 20 N.
TEST_F(StaticTestReadings, AnotherUnitOrPointIsNoticed) {
  EXPECT_THAT(Refused(450 * 28.349523125), ElementsAre(HasSubstr("twice"), HasSubstr("28.35 times the 450 g")));
  EXPECT_THAT(Refused(45), ElementsAre(HasSubstr("1/10 of")));
  EXPECT_THAT(Refused(4500), ElementsAre(HasSubstr("44.1 N"), HasSubstr("10 times")));
}

TEST_F(StaticTestReadings, WhatCannotBeIsRefused) {
  EXPECT_THAT(Refused(0), ElementsAre(HasSubstr("above zero")));
  EXPECT_THAT(Refused(450, 91), ElementsAre(HasSubstr("91 deg")));
  BenchReadings more;
  more.line_angle_deg = -181;
  EXPECT_THAT(Refused(450, 45, more), ElementsAre(HasSubstr("-181 deg")));
  more = {};
  more.clamp_mm = 2001;
  EXPECT_THAT(Refused(450, 45, more), ElementsAre(HasSubstr("clamp")));
  more = {};
  more.tip_drop_mm = 2001;
  EXPECT_THAT(Refused(450, 45, more), ElementsAre(HasSubstr("drops")));
  more = {};
  more.touched = {"g3"};
  EXPECT_THAT(Refused(450, 45, more), ElementsAre(HasSubstr("no such thing as 'g3'")));
}

}  // namespace
}  // namespace withy
