#include "withy/document/upgrade.h"

#include <gmock/gmock.h>
#include <google/protobuf/text_format.h>
#include <google/protobuf/util/message_differencer.h>
#include <gtest/gtest.h>

#include "support/random_design.h"

namespace withy {
namespace {

using google::protobuf::TextFormat;
using google::protobuf::util::MessageDifferencer;
using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::IsEmpty;
using ::testing::UnorderedElementsAre;

template <typename Message>
Message Parse(const std::string& text) {
  Message message;
  EXPECT_TRUE(TextFormat::ParseFromString(text, &message)) << text;
  return message;
}

std::vector<std::string> PathsLost(const v1::Design& design, v0::Design* old = nullptr) {
  std::vector<Loss> losses;
  v0::Design written = DowngradeTo0(design, &losses);
  if (old != nullptr) *old = std::move(written);
  std::vector<std::string> paths;
  for (const Loss& loss : losses) paths.push_back(loss.at.ToString());
  return paths;
}

TEST(FormatVersion, ReadsWhatAFileSays) {
  EXPECT_EQ(FormatVersion("withy/0"), 0);
  EXPECT_EQ(FormatVersion("withy/1"), 1);
  EXPECT_EQ(FormatVersion("withy/999999"), 999999);
  for (const char* wrong : {"", "withy", "withy/", "withy/-1", "withy/+1", "withy/01", "withy/1.0", "withy/1 ",
                            "Withy/1", "withy/1000000", "withy-report/1"}) {
    EXPECT_EQ(FormatVersion(wrong), std::nullopt) << wrong;
  }
  EXPECT_EQ(FormatVersion(CurrentFormat()), kCurrent);
}

TEST(UpgradeFrom0, KeepsTheAuthorsNumbersAndUnit) {
  const auto old =
      Parse<v0::Design>(R"(format: "withy/0" unit: "inch" overall_length: 87.1 guides_from_tip: [4.1, 9])");
  const absl::StatusOr<v1::Design> design = UpgradeFrom0(old);
  ASSERT_TRUE(design.ok());
  EXPECT_TRUE(MessageDifferencer::Equals(*design, Parse<v1::Design>(R"(
    format: "withy/1" intent { overall_length { inch: 87.1 } }
    guides { id: "g1" from_tip { inch: 9 } } guides { id: "g2" from_tip { inch: 4.1 } })")));
}

TEST(UpgradeFrom0, RefusesLengthsInAnUnknownUnit) {
  for (const char* text : {"overall_length: 3", "guides_from_tip: 3 unit: 'cm'", "blank { length: 0 } unit: 'Inch'",
                           "blank { stations {} }"}) {
    EXPECT_EQ(UpgradeFrom0(Parse<v0::Design>(text)).status().code(), absl::StatusCode::kInvalidArgument) << text;
  }
  EXPECT_TRUE(UpgradeFrom0(Parse<v0::Design>("name: 'a' blank { mass_g: 3 }")).ok());
}

TEST(DowngradeTo0, ListsTheOutermostFieldThatIsLost) {
  const auto design = Parse<v1::Design>(R"(
    format: "withy/1"
    identity { name: "a" revision: 2 }
    intent { technique: "fly" overall_length { mm: 2700 plus_minus: 3 } reel { mass { g: 90 } } }
    blank {
      sections { id: "blank" length { mm: 2690 } spine { deg: 10 }
                 taper { reading { source: MEASURED } stations { at { mm: 0 } outer { mm: 9 } wall { mm: 1 } } } }
      sections { id: "tip" }
    }
    guides { id: "g1" from_tip { mm: 900 } locked: true }
    guides { id: "stripper" from_tip { mm: 700 } }
    guides { id: "later" }
    handle { parts { id: "grip" } })");
  v0::Design old;
  EXPECT_THAT(PathsLost(design, &old),
              UnorderedElementsAre("identity.revision", "intent.overall_length.plus_minus", "intent.reel",
                                   "blank.sections[blank].spine", "blank.sections[blank].taper.reading",
                                   "blank.sections[blank].taper.stations[0].wall", "blank.sections[tip]",
                                   "guides[g1].locked", "guides[stripper].id", "guides[later]", "handle"));
  EXPECT_TRUE(MessageDifferencer::Equals(old, Parse<v0::Design>(R"(
    format: "withy/0" name: "a" unit: "mm" technique: "fly" overall_length: 2700
    blank { length: 2690 stations { outer_mm: 9 } } guides_from_tip: [700, 900])")));
}

// 1 inch = 25.4 mm (1959), 1 oz = 28.349523125 g; 64/64 inch = 25.4 mm.
TEST(DowngradeTo0, ConvertsToOneUnitAndSaysSo) {
  const auto design = Parse<v1::Design>(R"(
    format: "withy/1"
    intent { overall_length { inch: 87 } }
    blank { sections { id: "blank" length { mm: 254 } mass { oz: 2 source: MEASURED }
            taper { stations { at { inch: 0 } outer { in64: 64 } } } } })");
  v0::Design old;
  EXPECT_THAT(PathsLost(design, &old),
              UnorderedElementsAre("blank.sections[blank].length", "blank.sections[blank].taper.stations[0].outer",
                                   "blank.sections[blank].mass"));
  EXPECT_EQ(old.unit(), "inch");
  EXPECT_DOUBLE_EQ(old.overall_length(), 87);
  EXPECT_DOUBLE_EQ(old.blank().length(), 10);
  EXPECT_DOUBLE_EQ(old.blank().stations(0).outer_mm(), 25.4);
  EXPECT_DOUBLE_EQ(old.blank().mass_g(), 56.69904625);
}

TEST(DowngradeTo0, UnknownFieldsAndPluginDataAreLosses) {
  auto design = Parse<v1::Design>(R"(format: "withy/1" blank { name: "b" } extensions { key: "p" value {} })");
  v1::Blank* blank = design.mutable_blank();
  blank->GetReflection()->MutableUnknownFields(blank)->AddVarint(99, 1);
  EXPECT_THAT(PathsLost(design), UnorderedElementsAre("blank.99", "extensions"));
}

TEST(DowngradeTo0, APlainDesignLosesNothing) {
  EXPECT_THAT(PathsLost(Parse<v1::Design>("format: 'withy/1' blank {}")), IsEmpty());
  EXPECT_THAT(PathsLost(Parse<v1::Design>("format: 'withy/1' identity { name: 'a' description: 'b' }")), IsEmpty());
  EXPECT_THAT(PathsLost(Parse<v1::Design>("format: 'withy/1' guides {}")), ElementsAre("guides[0]"));
}

// What is not listed as lost is there again: the design that comes back differs only where a loss was told.
TEST(DowngradeTo0, TellsEveryDifference) {
  RandomDesigns designs(31);
  for (int i = 0; i < 40; ++i) {
    const v1::Design design = designs.Next();
    std::vector<Loss> losses;
    const v0::Design old = DowngradeTo0(design, &losses);
    const absl::StatusOr<v1::Design> back = UpgradeFrom0(old);
    ASSERT_TRUE(back.ok());
    std::string difference;
    MessageDifferencer differencer;
    differencer.ReportDifferencesToString(&difference);
    EXPECT_EQ(differencer.Compare(design, *back), losses.empty()) << difference;
    if (design.has_handle()) {
      std::vector<std::string> paths;
      for (const Loss& loss : losses) paths.push_back(loss.at.ToString());
      EXPECT_THAT(paths, Contains("handle"));
    }
  }
}

}  // namespace
}  // namespace withy
