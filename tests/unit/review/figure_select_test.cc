// Inputs of a declared figure, chosen by what stands in its brackets. Expected paths are read off the design below.
#include "figure_select.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "declared_path.h"
#include "google/protobuf/text_format.h"
#include "item_names.h"
#include "withy/v1/design.pb.h"
#include "withy/v1/report.pb.h"

namespace withy {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

template <typename Message>
Message Parsed(const std::string& text) {
  Message message;
  EXPECT_TRUE(google::protobuf::TextFormat::ParseFromString(text, &message));
  return message;
}

class FigureSelect : public ::testing::Test {
 protected:
  // Of `declared` for the figure at `figure`.
  std::vector<std::string> Found(std::string_view declared, const std::string& figure, bool in_report = false) {
    const FigureContext context(report_, *FieldPath::Parse(figure));
    const google::protobuf::Message& root =
        in_report ? static_cast<const google::protobuf::Message&>(report_) : design_;
    std::vector<std::string> paths;
    for (const FieldPath& path : Select(declared, root, context).there) paths.push_back(path.ToString());
    return paths;
  }

  v1::Design design_ = Parsed<v1::Design>(R"(
    blank { sections { id: "butt" mass { g: 40 } } sections { id: "tip" mass { g: 20 } }
            cuts { section: "butt" at_end: BUTT amount { mm: 1 } } cuts { section: "butt" at_end: TIP amount { mm: 2 } }
            cuts { section: "tip" amount { mm: 3 } } }
    handle { parts { id: "seat" mass { g: 30 } weights { unit_mass { g: 7 } } } parts { id: "cap" mass { g: 5 } } }
    tip_top { id: "top" mass { g: 0.3 } }
    threads { id: "red" diameter { mm: 0.2 } } threads { id: "blue" diameter { mm: 0.3 } }
    log { id: "e1" weighed { what: "seat" what: "cap" mass { g: 35 } } } log { id: "e2" weighed { mass { g: 99 } } })");
  v1::Report report_ = Parsed<v1::Report>(R"(
    sections { sections { id: "butt" } sections { id: "tip" } }
    fit { parts { id: "seat" start_mm: 1 } cut_plan { host: "seat" stages { take_mm: 4 } stages { take_mm: 5 } } }
    wraps { wraps { id: "w" thread: "blue" turns: 7 } wraps { id: "w" thread: "red" turns: 8 } threads { id: "red" } }
    balance { parts { id: "seat" at: "handle.parts[seat]" } parts { id: "seat" at: "handle.parts[seat].weights" }
              parts { id: "top" at: "tip_top" } })");
};

TEST_F(FigureSelect, AllItemsOrTheOneItIsAbout) {
  EXPECT_THAT(Found("handle.parts[].mass", "fit.parts[seat].start_mm"),
              ElementsAre("handle.parts[seat].mass", "handle.parts[cap].mass"));
  EXPECT_THAT(Found("handle.parts[=].mass", "fit.parts[seat].start_mm"), ElementsAre("handle.parts[seat].mass"));
  EXPECT_THAT(Found("handle.parts[=].mass", "sections.sections[tip].mass_g"), IsEmpty());
}

TEST_F(FigureSelect, ThePartThatAMessageNamesCountsToo) {
  EXPECT_THAT(Found("handle.parts[=].mass", "fit.cut_plan.shorter_per_mm"), ElementsAre("handle.parts[seat].mass"));
  EXPECT_THAT(Found("handle.parts[id=.fit.cut_plan.host].mass", "fit.overall_length_mm"),
              ElementsAre("handle.parts[seat].mass"));
}

TEST_F(FigureSelect, TheSameItemWithoutAnId) {
  EXPECT_THAT(Found("fit.cut_plan.stages[=].take_mm", "fit.cut_plan.stages[1].total_mm", true),
              ElementsAre("fit.cut_plan.stages[1].take_mm"));
}

TEST_F(FigureSelect, ByAFieldAndByAWord) {
  EXPECT_THAT(Found("blank.cuts[section=&at_end!=TIP].amount", "sections.sections[butt].cut_butt_mm"),
              ElementsAre("blank.cuts[0].amount"));
  EXPECT_THAT(Found("blank.cuts[section=&at_end=TIP].amount", "sections.sections[butt].cut_tip_mm"),
              ElementsAre("blank.cuts[1].amount"));
  EXPECT_THAT(Found("blank.cuts[section=&at_end!=TIP].amount", "sections.sections[tip].cut_butt_mm"),
              ElementsAre("blank.cuts[2].amount"));  // no end said is the butt's
}

TEST_F(FigureSelect, ByAFieldOfItsOwnItem) {
  EXPECT_THAT(Found("threads[id=.thread].diameter", "wraps.wraps[0].turns"), ElementsAre("threads[blue].diameter"));
  EXPECT_THAT(Found("wraps.wraps[thread=].turns", "wraps.threads[red].length_mm", true),
              ElementsAre("wraps.wraps[1].turns"));  // the second "w"
}

TEST_F(FigureSelect, OneOfSeveralNamesAndNone) {
  EXPECT_THAT(Found("log[weighed.what=].weighed.mass", "fit.parts[seat].start_mm"),
              ElementsAre("log[e1].weighed.mass"));
  EXPECT_THAT(Found("log[weighed.what=none].weighed.mass", "balance.mass_g"), ElementsAre("log[e2].weighed.mass"));
}

TEST_F(FigureSelect, WhatIsNoListMayBeAskedWhetherItIsMeant) {
  EXPECT_THAT(Found("tip_top[=].mass", "balance.parts[top].mass_g"), ElementsAre("tip_top.mass"));
  EXPECT_THAT(Found("tip_top[=].mass", "balance.parts[0].mass_g"), IsEmpty());
}

TEST_F(FigureSelect, WithinWhatTheItemIsAbout) {
  EXPECT_THAT(Found("@Part.mass", "balance.parts[0].mass_g"), ElementsAre("handle.parts[seat].mass"));
  EXPECT_THAT(Found("@Part.mass", "balance.parts[1].mass_g"), IsEmpty());  // weights, no part
  EXPECT_THAT(Found("@Weights.unit_mass", "balance.parts[1].mass_g"),
              ElementsAre("handle.parts[seat].weights.unit_mass"));
}

TEST_F(FigureSelect, ItemsOfOneIdAreToldApart) {
  EXPECT_EQ(Unambiguous(*FieldPath::Parse("balance.parts[1].mass_g"), report_).ToString(), "balance.parts[1].mass_g");
  EXPECT_EQ(Unambiguous(*FieldPath::Parse("balance.parts[0].mass_g"), report_).ToString(),
            "balance.parts[seat].mass_g");
  EXPECT_EQ(ByNumber(Unambiguous(*FieldPath::Parse("balance.parts[seat].mass_g"), report_)), "balance.parts[0].mass_g");
}

TEST_F(FigureSelect, NamesAsDeclared) {
  const auto& type = *v1::Report::descriptor();
  EXPECT_EQ(DeclaredName(*FieldPath::Parse("fit.parts[seat].arbors[0].turns"), type), "fit.parts[].arbors[].turns");
  EXPECT_EQ(DeclaredName(*FieldPath::Parse("sections.sections[0].at_mm[3]"), type), "sections.sections[].at_mm");
  EXPECT_EQ(Plain("handle.parts[=].mass", *v1::Design::descriptor()), "handle.parts[].mass");
  EXPECT_EQ(Plain("tip_top[=].mass", *v1::Design::descriptor()), "tip_top.mass");
  EXPECT_THAT(AlternativesOf("a|b.c|d"), ElementsAre("a", "b.c", "d"));
}

}  // namespace
}  // namespace withy
