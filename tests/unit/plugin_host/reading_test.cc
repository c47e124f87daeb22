// What a plugin reads: the design as written, the rod, the report. Expectations are worked by hand from subject.cc.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "subject.h"

namespace withy {
namespace {

using testing::HasSubstr;

TEST(Reading, AQuantityAnswersInEveryUnitOfItsKind) {
  // An inch is 25.4 mm, an ounce 28.349523125 g, a grain 1/7000 lb = 1/437.5 oz.
  EXPECT_EQ(Eval("ctx.design.blank.sections[1].length.mm"), "2209.8");
  EXPECT_EQ(Eval("ctx.design.blank.sections[1].length.in64"), "5568.0");  // 87 x 64
  EXPECT_EQ(Eval("ctx.design.blank.sections[1].mass.g"), "85.048569375");
  EXPECT_EQ(Eval("math.abs(ctx.design.blank.sections[1].mass.grain - 1312.5) < 1e-9"), "true");
  EXPECT_EQ(Eval("ctx.design.blank.sections[1].taper.stations[2].outer.inch"), "0.0859375");  // 5.5/64
  EXPECT_EQ(Eval("ctx.design.shop.temperature.celsius"), "20.0");                             // (68 - 32) x 5/9
  EXPECT_EQ(Eval("math.abs(ctx.design.intent.line.strength.n - 53.378659383126) < 1e-9"), "true");
}

TEST(Reading, TheAuthorsOwnUnitGivesTheAuthorsNumber) {
  EXPECT_EQ(Eval("ctx.design.intent.overall_length.inch == 87.1"), "true");
  EXPECT_EQ(Eval("ctx.design.intent.overall_length.unit"), "inch");
  EXPECT_EQ(Eval("ctx.design.intent.overall_length.plus_minus"), "0.25");
  EXPECT_EQ(Eval("ctx.design.intent.overall_length.source"), "MEASURED");
  EXPECT_EQ(Eval("ctx.design.blank.sections[1].length.source"), "nil");
  EXPECT_EQ(Eval("ctx.design.intent.overall_length"), "87.1 inch");
}

TEST(Reading, AWrongUnitIsAnError) {
  EXPECT_THAT(Eval("ctx.design.blank.sections[1].length.g"),
              HasSubstr("Length has no unit 'g'; it has mm, inch, in64"));
  EXPECT_THAT(Eval("ctx.design.blank.sections[1].mass.mm"), HasSubstr("Mass has no unit 'mm'"));
}

TEST(Reading, AMisspeltNameIsAnErrorWithTheNearest) {
  EXPECT_THAT(Eval("ctx.design.blank.sections[1].lenght"),
              HasSubstr("Section has no field 'lenght'; did you mean 'length'?"));
  EXPECT_THAT(Eval("ctx.report.fit.overal_length_mm"), HasSubstr("did you mean 'overall_length_mm'?"));
  EXPECT_THAT(Eval("ctx.rod.guides[1].from_tip"), HasSubstr("did you mean 'from_tip_mm'?"));
  EXPECT_THAT(Eval("ctx.desing"), HasSubstr("did you mean 'design'?"));
  EXPECT_THAT(Eval("ctx.design.blank[1]"), HasSubstr("is not a list"));
}

TEST(Reading, WhatIsNotKnownIsNil) {
  EXPECT_EQ(Eval("ctx.design.intent.reel"), "nil");
  EXPECT_EQ(Eval("ctx.design.blank.name"), "nil");
  EXPECT_EQ(Eval("ctx.design.shop.margin"), "nil");
  EXPECT_EQ(Eval("ctx.design.guides[2].from_tip.mm"), "nil");  // a quantity without a unit
  EXPECT_EQ(Eval("ctx.report.balance"), "nil");
  EXPECT_EQ(Eval("ctx.design.handle.parts[1].clamps_on"), "false");
  EXPECT_EQ(Eval("ctx.design.handle.parts[1].loose"), "true");
}

TEST(Reading, AListIsNeverNilAndCountsFromOne) {
  EXPECT_EQ(Eval("#ctx.design.blank.sections"), "2");
  EXPECT_EQ(Eval("#ctx.design.wraps"), "0");
  EXPECT_EQ(Eval("ctx.design.blank.sections[0]"), "nil");
  EXPECT_EQ(Eval("ctx.design.blank.sections[3]"), "nil");
  EXPECT_EQ(Eval("ctx.design.identity.tags[2]"), "two");
  EXPECT_EQ(Eval("(function() local ids = {} for i, s in ipairs(ctx.design.blank.sections) do ids[i] = s.id end "
                 "return table.concat(ids, ' ') end)()"),
            "butt tip");
  EXPECT_EQ(
      Eval("(function() local ids = {} for i, s in pairs(ctx.design.blank.sections) do ids[#ids + 1] = i .. s.id end "
           "return table.concat(ids, ' ') end)()"),
      "1butt 2tip");
  EXPECT_THAT(Eval("ctx.design.blank.sections.butt"), HasSubstr("a list has no field 'butt'"));
}

TEST(Reading, TheSameThingIsTheSameObject) {
  EXPECT_EQ(Eval("rawequal(ctx.design.blank.sections[1], ctx.design.blank.sections[1])"), "true");
  EXPECT_EQ(Eval("rawequal(ctx.design.blank.sections, ctx.design.blank.sections)"), "true");
  EXPECT_EQ(Eval("rawequal(ctx:find('tip'), ctx.design.blank.sections[2])"), "true");
  EXPECT_EQ(Eval("rawequal(ctx:get('blank.sections[tip]'), ctx.design.blank.sections[2])"), "true");
}

TEST(Reading, NothingCanBeWritten) {
  EXPECT_THAT(FailureOf("ctx.design.blank.name = 'x'"), HasSubstr("read-only"));
  EXPECT_THAT(FailureOf("ctx.design.guides[1] = nil"), HasSubstr("read-only"));
  EXPECT_THAT(FailureOf("ctx.extra = 1"), HasSubstr("read-only"));
  EXPECT_THAT(FailureOf("rawset(ctx.design, 'x', 1)"), HasSubstr("table expected"));
  EXPECT_EQ(Eval("getmetatable(ctx.design)"), "nil");
}

TEST(Reading, PairsOfAMessageGivesTheFieldsThatAreSetInOrderOfTheSchema) {
  EXPECT_EQ(Eval("(function() local names = {} for name in pairs(ctx.design.intent) do names[#names + 1] = name end "
                 "return table.concat(names, ' ') end)()"),
            "technique overall_length line");
}

TEST(Reading, AOneofGivesTheNameOfItsSetField) {
  EXPECT_EQ(Eval("ctx.design.blank.sections[1].taper.stations[1].inside"), "wall");
  EXPECT_EQ(Eval("ctx.design.blank.sections[1].taper.stations[2].inside"), "nil");
}

TEST(Reading, ExtensionsAreReadOnlyTables) {
  EXPECT_EQ(Eval("ctx.design.extensions.club.member"), "true");
  EXPECT_EQ(Eval("ctx.design.extensions.club.years[2]"), "2025.0");
  EXPECT_EQ(Eval("#ctx.design.extensions.club.years"), "2");
  EXPECT_EQ(Eval("ctx.design.extensions.club.nested.a"), "x");
  EXPECT_EQ(Eval("ctx.design.extensions.club.nothing"), "nil");
  EXPECT_EQ(Eval("ctx.design.extensions.other"), "nil");
}

TEST(Reading, GetTakesPathsOfReportDesignAndRod) {
  EXPECT_EQ(Eval("ctx:get('fit.overall_length_mm')"), "2212.34");
  EXPECT_EQ(Eval("ctx:get('guides[g1].from_tip.mm')"), "100.0");
  EXPECT_EQ(Eval("ctx:get('guides[0].from_tip.mm')"), "100.0");
  EXPECT_EQ(Eval("ctx:get('guides.guides[g1].from_tip_mm')"), "100.0");  // the report's
  EXPECT_EQ(Eval("ctx:get('rod.guides[g1].locked')"), "true");
  EXPECT_EQ(Eval("ctx:get('intent.reel.mass.g')"), "nil");
  EXPECT_EQ(Eval("ctx:get('guides[g2].from_tip')"), "nil");
  EXPECT_EQ(Eval("ctx:get('guides[g9].from_tip')"), "nil");
  EXPECT_EQ(Eval("ctx:get('extensions[club].nested.a')"), "x");
  EXPECT_THAT(Eval("ctx:get('fit.overal_length_mm')"), HasSubstr("did you mean 'overall_length_mm'?"));
  EXPECT_THAT(Eval("ctx:get('intent.reel.mas')"), HasSubstr("did you mean 'mass'?"));
  EXPECT_THAT(Eval("ctx:get('guides.from_tip')"), HasSubstr("guides"));
  EXPECT_THAT(Eval("ctx.get('fit')"), HasSubstr("ctx:get(...)"));
}

TEST(Reading, FindGivesTheThingWithAnId) {
  EXPECT_EQ(Eval("ctx:find('arbor1')"), "design.handle.parts[grip].arbors[arbor1]");
  EXPECT_EQ(Eval("ctx:find('nobody')"), "nil");
}

}  // namespace
}  // namespace withy
