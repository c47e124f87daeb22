// What calibrate answers and writes: units of the bench, and nothing that was measured altered.
#include "withy/review/calibration.h"

#include <map>
#include <vector>

#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "support/design_files.h"
#include "withy/review/calibration_text.h"
#include "withy/rod/resolve.h"

namespace withy::testing {
namespace {

using google::protobuf::Message;
using ::testing::HasSubstr;
using ::testing::Not;

struct Bench {
  Document document;
  Rod rod;
  Identification found;
};

Bench Read(const std::string& bytes) {
  ReadResult read = ReadDesign("bench.txtpb", bytes);
  Bench bench;
  if (!read.document) {
    ADD_FAILURE() << "unreadable";
    return bench;
  }
  bench.document = *std::move(read.document);
  bench.rod = Resolve(bench.document);
  bench.found = IdentifyBlank(bench.rod, WallModel::kLinear);
  return bench;
}

std::string ExampleText() {
  return BytesOf(std::filesystem::path(WITHY_SOURCE_DIR) / "examples/blanks/bench.txtpb");
}

// Every message below `message` that says `source: MEASURED`, as text, with where it stands.
void CollectMeasured(const Message& message, const std::string& at, std::vector<std::string>& measured) {
  const auto& reflection = *message.GetReflection();
  std::vector<const google::protobuf::FieldDescriptor*> fields;
  reflection.ListFields(message, &fields);
  for (const auto* field : fields) {
    if (field->name() == "source" && reflection.GetEnumValue(message, field) == v1::Source::MEASURED) {
      measured.push_back(at + " " + message.ShortDebugString());
    }
    if (field->cpp_type() != google::protobuf::FieldDescriptor::CPPTYPE_MESSAGE || field->is_map()) continue;
    const int count = field->is_repeated() ? reflection.FieldSize(message, field) : 1;
    for (int i = 0; i < count; ++i) {
      CollectMeasured(field->is_repeated() ? reflection.GetRepeatedMessage(message, field, i)
                                           : reflection.GetMessage(message, field),
                      at + "." + field->name() + std::to_string(i), measured);
    }
  }
}

// The truth that the readings of the example were made from by another method: see its comment.
TEST(Calibration, FindsTheTubeThatTheExampleWasMadeFrom) {
  const Bench bench = Read(ExampleText());
  const v1::Calibration answer = CalibrationOf(bench.document.design, bench.rod, bench.found);
  EXPECT_EQ(answer.state(), "found") << answer.verdict();
  const std::map<std::string, double> truth = {
      {"modulus", 108}, {"density", 1.54}, {"wall at butt", 1.1}, {"wall at tip", 0.52}};
  ASSERT_EQ(answer.figures_size(), 4);
  for (const v1::CalibratedFigure& figure : answer.figures()) {
    EXPECT_NEAR(figure.value(), truth.at(figure.kind()), figure.plus_minus()) << figure.ShortDebugString();
  }
  for (const v1::CalibrationReading& reading : answer.readings()) {
    EXPECT_NEAR(reading.fitted(), reading.measured(), reading.plus_minus()) << reading.ShortDebugString();
  }
}

TEST(Calibration, WritesEstimatesAndAltersNothingThatWasMeasured) {
  const Bench bench = Read(ExampleText());
  const auto bytes =
      WithCalibration(bench.document, bench.rod, bench.found, {.date = "2026-05-03", .author = "Ines Averill"});
  ASSERT_TRUE(bytes.ok()) << bytes.status();
  const Bench after = Read(*bytes);
  std::vector<std::string> measured, still;
  CollectMeasured(bench.document.design, "", measured);
  CollectMeasured(after.document.design, "", still);
  EXPECT_GT(measured.size(), 5u);
  EXPECT_EQ(measured, still);
  // Every line that was there is there, but for the row that got a wall.
  std::size_t at = 0;
  for (std::size_t begin = 0, end; (end = ExampleText().find('\n', begin)) != std::string::npos; begin = end + 1) {
    const std::string line = ExampleText().substr(begin, end - begin);
    if (line.find("mm: 2100 } outer") != std::string::npos) continue;
    at = bytes->find(line, at);
    ASSERT_NE(at, std::string::npos) << line;
  }
  const v1::Section& section = after.document.design.blank().sections(0);
  EXPECT_EQ(section.modulus().source(), v1::Source::ESTIMATED);
  EXPECT_EQ(section.density().source(), v1::Source::ESTIMATED);
  EXPECT_GT(section.modulus().plus_minus(), 0);
  EXPECT_EQ(section.taper().stations(7).wall().source(), v1::Source::ESTIMATED);
  EXPECT_FALSE(section.taper().stations(3).has_wall());
  const auto& changes = after.document.design.identity().changes();
  ASSERT_EQ(changes.size(), 2);
  EXPECT_EQ(changes[1].date(), "2026-05-03");
  EXPECT_THAT(changes[1].summary(), HasSubstr("drop hang-250"));
  // What was written is an estimate, and calibrating again finds the same.
  EXPECT_EQ(after.found.state, IdentificationState::kFound);
  EXPECT_NEAR(*after.found.figures[0].value / *bench.found.figures[0].value, 1, 1e-6);
  // So that there is nothing to write, on whatever day.
  const auto again = WithCalibration(after.document, after.rod, after.found, {.date = "2026-06-01", .author = "Ines"});
  ASSERT_TRUE(again.ok()) << again.status();
  EXPECT_EQ(*again, *bytes);
}

// A row between the ends that has an estimated wall is brought onto the new line, one that gives the bore as a bore; a
// measured one stays.
TEST(Calibration, RowsBetweenKeepToTheWallThatWasFound) {
  std::string text = ExampleText();
  const auto put = [&](const std::string& row, const std::string& what) {
    text.insert(text.find(row) + row.size(), what);
  };
  put("outer { mm: 11.3 }", " wall { mm: 1.9 source: ESTIMATED }");
  put("outer { mm:  8.4 }", " inner { mm: 5 source: ESTIMATED }");
  const Bench bench = Read(text);
  const auto bytes = WithCalibration(bench.document, bench.rod, bench.found, {});
  ASSERT_TRUE(bytes.ok()) << bytes.status();
  const Bench after = Read(*bytes);
  const auto& rows = after.document.design.blank().sections(0).taper().stations();
  const double butt = 1.10, tip = rows[7].wall().mm();
  EXPECT_NEAR(rows[2].wall().mm(), butt + (tip - butt) * 600 / 2100, 2e-3);
  EXPECT_NEAR(rows[4].inner().mm(), 8.4 - 2 * (butt + (tip - butt) * 1200 / 2100), 4e-3);
  EXPECT_FALSE(rows[4].has_wall());
}

TEST(Calibration, WritesNothingThatWasNotFound) {
  std::string text = ExampleText();
  const std::size_t wall = text.find(" wall { mm: 1.10");
  text.erase(wall, text.find('}', wall) + 1 - wall);
  const Bench bench = Read(text);
  EXPECT_EQ(bench.found.state, IdentificationState::kNotEnough);
  EXPECT_FALSE(WithCalibration(bench.document, bench.rod, bench.found, {}).ok());
  const v1::Calibration answer = CalibrationOf(bench.document.design, bench.rod, bench.found);
  EXPECT_GT(answer.open_size(), 0);
  EXPECT_GT(answer.next_size(), 0);
}

// Nothing to go by: no blank, no diameters, a table that falls back.
TEST(Calibration, SaysWhatEveryReadingRestsOn) {
  EXPECT_EQ(Read("format: \"withy/1\"").found.state, IdentificationState::kCannotTell);
  const Bench bare = Read("format: \"withy/1\" blank { sections { id: \"s\" length { mm: 2000 } } }");
  EXPECT_EQ(bare.found.state, IdentificationState::kCannotTell);
  EXPECT_THAT(bare.found.verdict, HasSubstr("calliper the diameters of s"));
  const Bench no_readings = Read(
      "format: \"withy/1\" blank { sections { id: \"s\" length { mm: 2000 } taper { stations { at { mm: 0 } outer { "
      "mm: 12 } } "
      "stations { at { mm: 2000 } outer { mm: 2 } } } } }");
  EXPECT_EQ(no_readings.found.state, IdentificationState::kNotEnough);
  EXPECT_FALSE(no_readings.found.next.empty());
  EXPECT_FALSE(no_readings.found.figures[0].value) << "invented";
}

TEST(Calibration, TextFitsEightyColumns) {
  const Bench bench = Read(ExampleText());
  const std::string text = CalibrationText("bench.txtpb", bench.document.design,
                                           CalibrationOf(bench.document.design, bench.rod, bench.found), {});
  std::size_t begin = 0;
  for (std::size_t end; (end = text.find('\n', begin)) != std::string::npos; begin = end + 1) {
    EXPECT_LE(DisplayWidth(text.substr(begin, end - begin)), 80) << text.substr(begin, end - begin);
  }
  EXPECT_THAT(text, Not(HasSubstr("nan")));
}

}  // namespace
}  // namespace withy::testing
