// The binary reader, judged by protobuf's own writer and parser on sound input, and on the rest by bytes made by hand
// from "Encoding" (protobuf.dev): tag = field number * 8 + wire type.
#include <google/protobuf/util/message_differencer.h>
#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "reading.h"
#include "support/random_design.h"
#include "withy/document/document.h"

namespace withy {
namespace {

using google::protobuf::util::MessageDifferencer;
using std::string_literals::operator""s;

const std::string kBegin = "\x0A\x07withy/1"s;  // field 1, length-delimited, 7 bytes

TEST(ReadBinary, AgreesWithTheParserOfProtocolBuffersOnRandomDesigns) {
  RandomDesigns designs(/*seed=*/20260316, {.unknown_enums = true, .unknown_fields = true});
  for (int i = 0; i < 60; ++i) {
    const v1::Design design = designs.Next();
    const ReadResult result = ReadDesign("test", design.SerializeAsString());
    ASSERT_TRUE(result.document) << FaultsOf(result).front();
    EXPECT_EQ(result.document->form, Form::kBinary);
    EXPECT_TRUE(MessageDifferencer::Equals(result.document->design, design));  // unknown fields count
  }
}

TEST(ReadBinary, ASoundFileHasNoFindings) {
  const ReadResult text = ReadDesign("casting.txtpb", DataFile("casting.txtpb"));
  ASSERT_TRUE(text.document);
  const ReadResult result = ReadDesign("test", text.document->design.SerializeAsString());
  ASSERT_TRUE(result.document);
  EXPECT_EQ(FaultsOf(result), std::vector<Fault>{});
  EXPECT_TRUE(MessageDifferencer::Equals(result.document->design, text.document->design));
}

// A fault and the byte it is reported at.
struct BinaryFault {
  std::string name;
  std::string rest;  // behind kBegin, whose 9 bytes count
  std::string code;
  std::size_t offset = 0;
  std::string path;
  bool readable = false;
  friend std::ostream& operator<<(std::ostream& out, const BinaryFault& fault) { return out << fault.name; }
};

class BadBinary : public ::testing::TestWithParam<BinaryFault> {};
TEST_P(BadBinary, IsReportedAtItsByte) {
  const ReadResult result = ReadDesign("test", kBegin + GetParam().rest);
  ASSERT_EQ(result.findings.size(), 1u);
  const Finding& finding = result.findings.front();
  EXPECT_EQ(finding.code, GetParam().code);
  EXPECT_EQ(finding.position, (Position{GetParam().offset, 0, 0}));
  EXPECT_EQ(finding.at.ToString(), GetParam().path);
  EXPECT_EQ(result.document.has_value(), GetParam().readable);
}

// Field numbers used: Design 2 identity, 5 blank, 8 guides, 19 extensions; Guide 1 id, 3 from_tip, 6 locked; Length 1
// mm, 2 inch; Identity 2 name, 6 revision, 9 units.
const std::string kDouble = "\0\0\0\0\0\0\xF0\x3F"s;  // 1.0
INSTANTIATE_TEST_SUITE_P(
    Faults, BadBinary,
    ::testing::Values(BinaryFault{"cut_in_a_length", "\x2A\x05\x0A"s, "document/truncated", 12, ""},
                      BinaryFault{"cut_in_a_varint", "\x12\x82"s, "document/truncated", 11, ""},
                      BinaryFault{"cut_in_a_tag", "\x92"s, "document/truncated", 10, ""},
                      BinaryFault{"runs_past_its_message",
                                  "\x12\x02\x12\x05"
                                  "abcde"s,
                                  "document/wire-format", 13, "identity"},
                      BinaryFault{"field_number_zero", "\x02\x01"s, "document/wire-format", 9, ""},
                      BinaryFault{"wire_type_7", "\x17"s, "document/wire-format", 9, ""},
                      BinaryFault{"group_not_begun", "\xA4\x3E"s, "document/wire-format", 9, ""},
                      BinaryFault{"other_wire_type", "\x28\x05"s, "document/wire-format", 9, "blank"},
                      BinaryFault{"endless_varint", "\x12\x0D\x30" + std::string(11, '\xFF') + "\x01",
                                  "document/wire-format", 12, "identity"},
                      BinaryFault{"number_over_32_bits", "\x12\x06\x30\xFF\xFF\xFF\xFF\x7F"s, "document/bad-number", 12,
                                  "identity.revision"},
                      BinaryFault{"two_files_run_together", kBegin, "document/duplicate-field", 9, "format"},
                      BinaryFault{"second_message", "\x2A\x00\x2A\x00"s, "document/duplicate-field", 11, "blank"},
                      BinaryFault{"two_units", "\x42\x18\x0A\x02g5\x1A\x12\x09" + kDouble + "\x11" + kDouble,
                                  "document/two-of-one", 26, "guides[g5].from_tip.inch"},
                      BinaryFault{"infinite", "\x42\x0B\x1A\x09\x09\0\0\0\0\0\0\xF0\x7F"s, "document/bad-number", 14,
                                  "guides[0].from_tip.mm"},
                      BinaryFault{"not_a_number", "\x42\x0B\x1A\x09\x09\x01\0\0\0\0\0\xF8\xFF"s, "document/bad-number",
                                  14, "guides[0].from_tip.mm"},
                      BinaryFault{"not_utf8",
                                  "\x12\x05\x12\x03"
                                  "a\xFF"
                                  "b"s,
                                  "document/not-utf8", 14, "identity.name"},
                      BinaryFault{"entry_without_value",
                                  "\x9A\x01\x03\x0A\x01"
                                  "a"s,
                                  "document/bad-value", 15, "extensions"},
                      BinaryFault{"one_key_twice",
                                  "\x9A\x01\x05\x0A\x01"
                                  "a\x12\0\x9A\x01\x05\x0A\x01"
                                  "a\x12\0"s,
                                  "document/duplicate-key", 17, "extensions[a]"},
                      // Only the key and the value of a map entry are kept ("Encoding": an entry is a message of two
                      // fields, of which parsers make a map), so field 9 of one is lost wherever it is written.
                      BinaryFault{"unknown_field_of_a_map_entry",
                                  "\x9A\x01\x07\x0A\x01"
                                  "a\x12\0\x48\x01"s,
                                  "document/unknown-number", 17, "extensions[a].9", true},
                      // Struct { fields { key: "b" value { bool_value: false } 9: 1 } }
                      BinaryFault{"unknown_field_of_an_entry_of_an_extension",
                                  "\x9A\x01\x10\x0A\x01"
                                  "a\x12\x0B\x0A\x09\x0A\x01"
                                  "b\x12\x02\x20\0\x48\x01"s,
                                  "document/unknown-number", 26, "extensions[a].fields[b].9", true},
                      BinaryFault{"other_number_of_null",
                                  "\x9A\x01\x0E\x0A\x01"
                                  "a\x12\x09\x0A\x07\x0A\x01"
                                  "b\x12\x02\x08\x05"s,
                                  "document/unknown-enum-number", 25, "extensions[a].fields[b].null_value", true},
                      BinaryFault{"unknown_enum_number", "\x12\x02\x48\x63"s, "document/unknown-enum-number", 12,
                                  "identity.units", true},
                      BinaryFault{"unknown_field", "\x42\x07\x0A\x02g5\xA0\x38\x01"s, "document/unknown-number", 15,
                                  "guides[g5].900", true}),
    [](const auto& info) { return info.param.name; });

TEST(ReadBinary, CutAtEveryByteIsAPlacedErrorOrADesign) {
  const ReadResult text = ReadDesign("fly.txtpb", DataFile("fly.txtpb"));
  ASSERT_TRUE(text.document);
  const std::string whole = text.document->design.SerializeAsString();
  int sound = 0;
  for (std::size_t length = 0; length < whole.size(); ++length) {
    const ReadResult result = ReadDesign("test", whole.substr(0, length));
    if (result.document) {
      ++sound;  // cut between two fields of the design itself: nothing in the bytes tells
      continue;
    }
    ASSERT_FALSE(result.findings.empty()) << length;
    ASSERT_TRUE(result.findings.front().position) << length;
  }
  EXPECT_LT(sound, 200);
}

// One byte changed: never a crash, and what is taken without a finding, the bare parser takes alike.
TEST(ReadBinary, AgreesWithTheParserOfProtocolBuffersOnMutations) {
  const ReadResult text = ReadDesign("casting.txtpb", DataFile("casting.txtpb"));
  ASSERT_TRUE(text.document);
  const std::string whole = text.document->design.SerializeAsString();
  RandomDesigns random(/*seed=*/7);
  int sound = 0;
  for (int i = 0; i < 4000; ++i) {
    std::string bytes = whole;
    bytes[kBegin.size() + random.Below(bytes.size() - kBegin.size())] = static_cast<char>(random.Below(256));
    const ReadResult result = ReadDesign("test", bytes);
    if (!result.document) continue;
    v1::Design expected;
    ASSERT_TRUE(expected.ParseFromString(bytes));
    EXPECT_TRUE(MessageDifferencer::Equals(result.document->design, expected));
    ++sound;
  }
  EXPECT_GT(sound, 400);
}

}  // namespace
}  // namespace withy
