// What is refused before or beyond the content: limits, other kinds of file, versions, files that cannot be opened.
#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

#include <fstream>
#include <string>

#include "reading.h"
#include "withy/document/document.h"

namespace withy {
namespace {

using std::string_literals::operator""s;

std::string Repeat(const std::string& piece, int times) {
  std::string all;
  for (int i = 0; i < times; ++i) all += piece;
  return all;
}

const std::string kFormat = "format: \"withy/1\"\n";

class BadFile : public ::testing::TestWithParam<BadInput> {};
TEST_P(BadFile, IsReported) {
  ExpectFaults(GetParam());
}

INSTANTIATE_TEST_SUITE_P(
    Kinds, BadFile,
    ::testing::Values(
        BadInput{"empty", "", {{"document/empty", 1, 1, ""}}},
        BadInput{"blank", " \n\t\r\n", {{"document/empty", 1, 1, ""}}},
        BadInput{"only_a_byte_order_mark", "\xEF\xBB\xBF", {{"document/empty", 1, 1, ""}}},
        BadInput{"png", "\x89PNG\r\n\x1A\n\0\0\0\rIHDR"s, {{"document/not-a-design", 1, 1, ""}}},
        BadInput{"gzip", "\x1F\x8B\x08\0\0\0"s, {{"document/not-a-design", 1, 1, ""}}},
        BadInput{"pdf", "%PDF-1.7\n", {{"document/not-a-design", 1, 1, ""}}},
        BadInput{"program",
                 "\x7F"
                 "ELF\x02\x01\x01"s,
                 {{"document/not-a-design", 1, 1, ""}}},
        BadInput{"html", "<!DOCTYPE html>\n<html>", {{"document/not-a-design", 1, 1, ""}}},
        BadInput{"utf16",
                 "\xFF\xFE"
                 "f\0o\0r\0"s,
                 {{"document/not-a-design", 1, 1, ""}}},
        BadInput{"utf16_without_mark", "f\0o\0r\0m\0a\0t\0"s, {{"document/not-a-design", 1, 1, ""}}},
        BadInput{"list_in_json", "[{\"format\": \"withy/1\"}]", {{"document/not-a-design", 1, 1, ""}}},
        // Text as a whole, but for one control character: an error where it stands.
        BadInput{"control_character", kFormat + "identity { name: \"a\x01\" }", {{"document/syntax", 2, 20, ""}}},
        BadInput{"control_character_in_a_comment", kFormat + "# a\x1B[1m", {{"document/syntax", 2, 4, ""}}},
        BadInput{"control_character_far_on",
                 kFormat + Repeat("# 789\n", 1000) + "# \0"s,
                 {{"document/syntax", 1002, 3, ""}}},
        BadInput{"control_character_in_json",
                 "{\"format\": \"withy/1\", \"identity\": {\"name\": \"a\x01\"}}",
                 {{"document/syntax", 1, 46, "identity"}}},
        // One in three bytes.
        BadInput{"many_control_characters", Repeat("ab\x01", 100), {{"document/not-a-design", 1, 1, ""}}},
        // "Text Format Language Specification": a comment ends at a line feed. What an editor shows as
        // the second line would be part of the comment in the first.
        BadInput{"lone_carriage_returns",
                 "format: \"withy/1\"\r# c\ridentity { name: \"a\" }\r",
                 {{"document/syntax", 1, 18, ""}}},
        BadInput{"one_lone_carriage_return", kFormat + "# c\rguides { }\r\n", {{"document/syntax", 2, 4, ""}}},
        BadInput{"carriage_return_in_text", kFormat + "identity { name: \"a\rb\" }", {{"document/syntax", 2, 20, ""}}},
        BadInput{"nul_bytes", "format\0\0\0"s, {{"document/not-a-design", 1, 1, ""}}},
        BadInput{"latin1", kFormat + "identity { name: \"caf\xE9\" }", {{"document/not-utf8", 2, 22, ""}}},
        BadInput{"latin1_in_a_comment", kFormat + "# caf\xE9", {{"document/not-utf8", 2, 6, ""}}},
        BadInput{"overlong", kFormat + "# \xC0\x80", {{"document/not-utf8", 2, 3, ""}}},
        BadInput{"binary_cut_in_its_mark", "\x0A\x07wit"s, {{"document/truncated", 0, 0, ""}}}),
    NameOfCase);

INSTANTIATE_TEST_SUITE_P(
    Versions, BadFile,
    ::testing::Values(
        BadInput{"missing", "identity { name: \"x\" }", {{"document/format-missing", 1, 1, "format"}}, true},
        BadInput{"missing_in_json", "{\"identity\": {}}", {{"document/format-missing", 1, 1, "format"}}, true},
        BadInput{"unknown", "# x\nformat: \"withy-1\"", {{"document/format-unknown", 2, 1, "format"}}},
        BadInput{"newer", "\nformat: \"withy/2\" blanks { what: [1, 2] }", {{"document/format-newer", 2, 1, ""}}},
        BadInput{"newer_in_json", "{\"format\": \"withy/2\", \"x\": []}", {{"document/format-newer", 1, 2, ""}}},
        BadInput{"newer_in_binary", "\x0A\x07withy/2\x28\x01"s, {{"document/format-newer", 0, 0, ""}}},
        BadInput{"much_newer_in_binary", "\x0A\x08withy/10"s, {{"document/format-newer", 0, 0, ""}}},
        BadInput{"fault_in_version_0",
                 "format: \"withy/0\"\nnam: \"x\" unit: 5",
                 {{"document/unknown-field", 2, 1, "nam"}, {"document/bad-value", 2, 16, "unit"}}},
        BadInput{"version_0_without_its_unit",
                 "format: \"withy/0\"\noverall_length: 87",
                 {{"document/format-older", 1, 1, ""}}}),
    NameOfCase);

TEST(ReadDesign, BringsUpVersion0) {
  const ReadResult result = ReadDesign("test", "format: \"withy/0\"\nunit: \"inch\"\noverall_length: 87");
  ASSERT_TRUE(result.document);
  EXPECT_EQ(result.document->version, 0);
  EXPECT_EQ(result.document->design.format(), "withy/1");
  EXPECT_EQ(result.document->design.intent().overall_length().inch(), 87);
}

TEST(Limits, OnBytes) {
  const ReadResult result = ReadDesign("test", kFormat + "# 12345", {.max_bytes = 20});
  EXPECT_EQ(FaultsOf(result), (std::vector<Fault>{{"document/too-large", 2, 3, ""}}));
  EXPECT_FALSE(result.document);
  EXPECT_TRUE(ReadDesign("test", kFormat, {.max_bytes = kFormat.size()}).document);
}

TEST(Limits, OnItems) {
  const std::string text = kFormat + "guides { }\nguides { }\nguides { }\n";
  EXPECT_TRUE(ReadDesign("test", text, {.max_items = 4}).document);
  const ReadResult result = ReadDesign("test", text, {.max_items = 3});
  EXPECT_EQ(FaultsOf(result), (std::vector<Fault>{{"document/too-many", 4, 1, ""}}));
  EXPECT_FALSE(result.document);
  const std::string json = "{\"format\": \"withy/1\", \"guides\": [{}, {}, {}]}";
  EXPECT_EQ(FaultsOf(ReadDesign("test", json, {.max_items = 3})),
            (std::vector<Fault>{{"document/too-many", 1, 42, ""}}));
  const ReadResult binary = ReadDesign("test", "\x0A\x07withy/1\x42\0\x42\0\x42\0"s, {.max_items = 3});
  ASSERT_EQ(binary.findings.size(), 1u);
  EXPECT_EQ(binary.findings[0].code, "document/too-many");
  EXPECT_EQ(binary.findings[0].position->offset, 13u);
}

// Each level of plugin data is an entry, a value and an object: three messages.
std::string DeepText(int levels) {
  return kFormat + "extensions { key: 'a' value { " + Repeat("fields { key: 'a' value { struct_value { ", levels) +
         Repeat("} } }", levels) + "} }";
}
std::string DeepJson(int levels) {
  return "{\"format\": \"withy/1\", \"extensions\": {\"a\": {" + Repeat("\"a\": {", levels) + Repeat("}", levels) +
         "}}}";
}

TEST(Limits, OnDepthAreTheSameInEveryForm) {
  // extensions entry (1), Struct (2), then three for each level.
  for (const int levels : {1, 2, 5}) {
    const int depth = 2 + 3 * levels;
    const ReadResult whole = ReadDesign("test", DeepText(levels), {.max_depth = depth});
    ASSERT_TRUE(whole.document) << FaultsOf(whole).front();
    const std::string binary = whole.document->design.SerializeAsString();
    EXPECT_TRUE(ReadDesign("test", DeepJson(levels), {.max_depth = depth}).document);
    EXPECT_TRUE(ReadDesign("test", binary, {.max_depth = depth}).document);
    for (const std::string& bytes : {DeepText(levels), DeepJson(levels), binary}) {
      const ReadResult result = ReadDesign("test", bytes, {.max_depth = depth - 1});
      ASSERT_EQ(result.findings.size(), 1u);
      EXPECT_EQ(result.findings[0].code, "document/too-deep");
      EXPECT_FALSE(result.document);
    }
  }
}

TEST(Limits, AHundredThousandLevelsAreRefusedNotFollowed) {
  constexpr int kLevels = 100'000;
  const ReadLimits widest = {.max_depth = 1'000'000};
  std::string binary = "\x0A\x07withy/1"s + Repeat("\xA3\x38", kLevels);  // groups of field 900, one within the other
  for (const std::string& bytes :
       {DeepText(kLevels), DeepJson(kLevels), kFormat + Repeat("x { ", kLevels), kFormat + Repeat("900 { ", kLevels),
        "{\"format\": \"withy/1\", \"x\": " + Repeat("[", kLevels), kFormat + "x: " + Repeat("[", kLevels), binary}) {
    for (const ReadLimits& limits : {ReadLimits(), widest}) {
      const ReadResult result = ReadDesign("test", bytes, limits);
      EXPECT_FALSE(result.document);
      ASSERT_FALSE(result.findings.empty());
      bool too_deep = false;
      for (const Finding& finding : result.findings) too_deep = too_deep || finding.code == "document/too-deep";
      EXPECT_TRUE(too_deep) << bytes.substr(0, 60);
    }
  }
}

TEST(Limits, OnUnknownFields) {
  const ReadResult result = ReadDesign("test", kFormat + Repeat("x: 1\n", 5000));
  EXPECT_FALSE(result.document);
  EXPECT_EQ(result.findings.back().code, "document/too-many");
}

// --- files ---

TEST(ReadBytes, ReadsAFileAndSaysWhyNot) {
  const std::string folder = ::testing::TempDir();
  const std::string path = folder + "/read_bytes_test.txtpb";
  std::ofstream(path) << kFormat;
  const absl::StatusOr<std::string> bytes = ReadBytes(path);
  ASSERT_TRUE(bytes.ok());
  EXPECT_EQ(*bytes, kFormat);
  EXPECT_EQ(ReadBytes(path, {.max_bytes = 5}).status().code(), absl::StatusCode::kResourceExhausted);
  EXPECT_TRUE(ReadBytes(path, {.max_bytes = kFormat.size()}).ok());
  EXPECT_EQ(ReadBytes(folder).status().code(), absl::StatusCode::kInvalidArgument);
  EXPECT_EQ(ReadBytes(path + "x").status().code(), absl::StatusCode::kNotFound);
  EXPECT_EQ(ReadBytes(path + "/x").status().code(), absl::StatusCode::kNotFound);
  EXPECT_EQ(ReadBytes("/dev/zero", {.max_bytes = 1000}).status().code(), absl::StatusCode::kResourceExhausted);
  EXPECT_EQ(ReadBytes("/dev/null").value(), "");
  chmod(path.c_str(), 0);
  if (geteuid() != 0) {
    EXPECT_EQ(ReadBytes(path).status().code(), absl::StatusCode::kPermissionDenied);
  }
  unlink(path.c_str());
}

}  // namespace
}  // namespace withy
