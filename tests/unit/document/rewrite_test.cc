// Fields changed in a file: the bytes wanted are written out by hand.
#include "withy/document/rewrite.h"

#include "gmock/gmock.h"
#include "gtest/gtest.h"

namespace withy::testing {
namespace {

FieldPath SectionPath() {
  return FieldPath().Field("blank").Field("sections").Item("b", 0);
}
FieldPath ChangePath(int index) {
  return FieldPath().Field("identity").Field("changes").Item("", index);
}

// Modulus of the first section, and one more change.
std::string Changed(const std::string& text) {
  const ReadResult read = ReadDesign("test", text);
  if (!read.document) return "unreadable";
  v1::Design edited = read.document->design;
  v1::Modulus& modulus = *edited.mutable_blank()->mutable_sections(0)->mutable_modulus();
  modulus.Clear();
  modulus.set_gpa(110);
  edited.mutable_identity()->add_changes()->set_summary("new");
  const auto bytes = RewriteFields(*read.document, edited,
                                   {SectionPath().Field("modulus"), ChangePath(edited.identity().changes_size() - 1)});
  return bytes.ok() ? *bytes : std::string(bytes.status().message());
}

TEST(RewriteFields, ReplacesWhereItStandsAndKeepsComments) {
  EXPECT_EQ(Changed(R"(format: "withy/1"
# Mine.
identity {
  name: "x"
  changes { date: "2026-05-02" summary: "first" }  # by hand
  tags: ["a", "b"]
}
blank {
  sections {
    id: "b"   # the only one
    modulus { msi: 15.5 source: ESTIMATED }  # a guess
    mass { g: 70 source: MEASURED }
  }
}
)"),
            R"(format: "withy/1"
# Mine.
identity {
  name: "x"
  changes { date: "2026-05-02" summary: "first" }  # by hand
  changes { summary: "new" }
  tags: ["a", "b"]
}
blank {
  sections {
    id: "b"   # the only one
    modulus { gpa: 110 }  # a guess
    mass { g: 70 source: MEASURED }
  }
}
)");
}

TEST(RewriteFields, AddsAtTheEndOfTheMessageAndOfTheFile) {
  EXPECT_EQ(
      Changed("format: \"withy/1\"\nblank {\n  sections {\n    id: \"b\"\n    # no more\n  }\n}\n"),
      "format: \"withy/1\"\nblank {\n  sections {\n    id: \"b\"\n    # no more\n    modulus { gpa: 110 }\n  }\n}\n"
      "identity { changes { summary: \"new\" } }\n");
}

TEST(RewriteFields, KeepsOneLineAndSquareBracketsAndLineEnds) {
  EXPECT_EQ(
      Changed("format: \"withy/1\"\r\nidentity { changes: [{ summary: \"a\" }, { summary: \"b\" }] }\r\n"
              "blank { sections: [ < id: \"b\" > ] }"),
      "format: \"withy/1\"\r\nidentity { changes: [{ summary: \"a\" }, { summary: \"b\" }, { summary: \"new\" }] }\r\n"
      "blank { sections: [ < id: \"b\" modulus { gpa: 110 } > ] }");
}

TEST(RewriteFields, Json) {
  EXPECT_EQ(Changed(R"({
  "format": "withy/1",
  "identity": {
    "changes": [
      {"summary": "a } ] \" b"}
    ]
  },
  "blank": {"sections": [{"id": "b", "modulus": {"msi": 15.5}, "mass": {"g": 70.0}}]}
}
)"),
            R"({
  "format": "withy/1",
  "identity": {
    "changes": [
      {"summary": "a } ] \" b"},
      {"summary": "new"}
    ]
  },
  "blank": {"sections": [{"id": "b", "modulus": {"gpa": 110}, "mass": {"g": 70.0}}]}
}
)");
  EXPECT_EQ(Changed("{\"format\": \"withy/1\", \"blank\": {\"sections\": [{\"id\": \"b\"}]}}"),
            "{\"format\": \"withy/1\", \"blank\": {\"sections\": [{\"id\": \"b\", \"modulus\": {\"gpa\": 110}}]}, "
            "\"identity\": {\"changes\": [{\"summary\": \"new\"}]}}");
}

TEST(RewriteFields, BinaryKeepsUnknownFields) {
  const ReadResult text = ReadDesign("test", "format: \"withy/1\" blank { sections { id: \"b\" } }");
  ASSERT_TRUE(text.document);
  // Field 1000, a varint of 7: key 1000 * 8 = 8000 = 0xC0 0x3E.
  const std::string bytes = WriteDesign(text.document->design, Form::kBinary) + "\xC0\x3E\x07";
  const std::string changed = Changed(bytes);
  EXPECT_THAT(changed, ::testing::HasSubstr("\xC0\x3E\x07"));
  const ReadResult again = ReadDesign("test", changed);
  ASSERT_TRUE(again.document);
  EXPECT_EQ(again.document->design.blank().sections(0).modulus().gpa(), 110);
}

TEST(RewriteFields, RefusesAPathThatLeadsNowhereAndMoreThanItWasTold) {
  const ReadResult read = ReadDesign("test", "format: \"withy/1\" blank { sections { id: \"b\" } }");
  v1::Design edited = read.document->design;
  EXPECT_FALSE(RewriteFields(*read.document, edited, {SectionPath().Field("modulus")}).ok());
  EXPECT_FALSE(RewriteFields(*read.document, edited, {FieldPath().Field("blank").Field("nothing")}).ok());
  edited.mutable_blank()->mutable_sections(0)->mutable_modulus()->set_gpa(110);
  EXPECT_TRUE(RewriteFields(*read.document, edited, {SectionPath().Field("modulus")}).ok());
  edited.mutable_identity()->set_name("another");
  EXPECT_FALSE(RewriteFields(*read.document, edited, {SectionPath().Field("modulus")}).ok());
}

}  // namespace
}  // namespace withy::testing
