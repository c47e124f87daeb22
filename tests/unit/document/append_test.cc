// Adding to the log: what was there stays byte for byte, and the new entry stands behind it. Meaning is judged by the
// parsers of the Protocol Buffers library; layouts are written by hand.
#include "withy/document/append.h"

#include <gmock/gmock.h>
#include <google/protobuf/text_format.h>
#include <google/protobuf/util/json_util.h>
#include <google/protobuf/util/message_differencer.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

#include "support/random_design.h"

namespace withy {
namespace {

using google::protobuf::TextFormat;
using google::protobuf::util::JsonStringToMessage;
using google::protobuf::util::MessageDifferencer;
using ::testing::HasSubstr;

v1::Entry CutEntry(const std::string& id) {
  v1::Entry entry;
  entry.set_id(id);
  entry.set_date("2026-03-22T18:50");
  entry.set_by("Ines Averill");
  entry.mutable_cut()->set_section("blank");
  entry.mutable_cut()->set_at_end(v1::End::BUTT);
  entry.mutable_cut()->mutable_amount()->set_inch(3);
  entry.mutable_cut()->mutable_amount()->set_source(v1::Source::MEASURED);
  return entry;
}

Document Read(const std::string& bytes) {
  ReadResult read = ReadDesign("rod", bytes);
  EXPECT_TRUE(read.document) << bytes;
  return read.document ? *std::move(read.document) : Document();
}

std::string Append(const std::string& bytes, const std::vector<v1::Entry>& entries = {CutEntry("e9")}) {
  const absl::StatusOr<std::string> appended = AppendLog(Read(bytes), entries);
  EXPECT_TRUE(appended.ok()) << appended.status();
  return appended.ok() ? *appended : "";
}

v1::Design Parsed(const std::string& bytes, Form form) {
  v1::Design design;
  switch (form) {
    case Form::kText:
      EXPECT_TRUE(TextFormat::ParseFromString(bytes, &design));
      break;
    case Form::kJson:
      EXPECT_TRUE(JsonStringToMessage(bytes, &design).ok());
      break;
    case Form::kBinary:
      EXPECT_TRUE(design.ParseFromString(bytes));
      break;
  }
  return design;
}

// `after` is `before` with something put in at one place.
bool IsInsertion(const std::string& before, const std::string& after) {
  if (after.size() <= before.size()) return false;
  const std::size_t same = static_cast<std::size_t>(
      std::mismatch(before.begin(), before.end(), after.begin(), after.end()).first - before.begin());
  const std::size_t rest = before.size() - same;
  // What was put in may begin with what comes behind it: any split will do.
  for (std::size_t back = 0; back <= same; ++back) {
    if (after.compare(after.size() - rest - back, rest + back, before, same - back, rest + back) == 0) return true;
    if (back > 200) break;
  }
  return false;
}

void ExpectAppended(const std::string& bytes, Form form) {
  const std::string after = Append(bytes);
  EXPECT_TRUE(IsInsertion(bytes, after));
  v1::Design expected = Parsed(bytes, form);
  *expected.add_log() = CutEntry("e9");
  EXPECT_TRUE(MessageDifferencer::Equals(Parsed(after, form), expected)) << after;
}

// Designs below `folder` of the source tree, as they are.
std::vector<std::string> FilesIn(const std::string& folder) {
  std::vector<std::string> files;
  for (const auto& entry : std::filesystem::directory_iterator(std::filesystem::path(WITHY_SOURCE_DIR) / folder)) {
    std::ifstream file(entry.path(), std::ios::binary);
    files.emplace_back(std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>());
  }
  EXPECT_FALSE(files.empty());
  return files;
}

class AppendToFiles : public ::testing::TestWithParam<const char*> {};

TEST_P(AppendToFiles, KeepsAllAndAddsTheEntryInEveryForm) {
  for (const std::string& bytes : FilesIn(GetParam())) {
    ExpectAppended(bytes, Form::kText);
    const v1::Design design = Read(bytes).design;
    for (Form form : {Form::kText, Form::kJson, Form::kBinary}) ExpectAppended(WriteDesign(design, form), form);
  }
}

// fmt has nothing to say of what was laid out before.
TEST_P(AppendToFiles, IsLaidOutAsFmtDoes) {
  for (const std::string& bytes : FilesIn(GetParam())) {
    const std::string after = Append(*FormatBytes(Read(bytes)));
    EXPECT_EQ(*FormatBytes(Read(after)), after);
  }
}

INSTANTIATE_TEST_SUITE_P(Tree, AppendToFiles, ::testing::Values("examples/designs", "examples/starts"));

constexpr char kEntryText[] = R"(log {
  id: "e9" date: "2026-03-22T18:50" by: "Ines Averill"
  cut { section: "blank" at_end: BUTT amount { inch: 3 source: MEASURED } }
}
)";

TEST(AppendText, StandsBehindTheLastEntryOfTheLog) {
  EXPECT_EQ(Append("format: \"withy/1\"\nlog { id: \"e1\" note: \"a\" }  # read twice\n\nshop {}  # mine\n"),
            std::string("format: \"withy/1\"\nlog { id: \"e1\" note: \"a\" }  # read twice\n") + kEntryText +
                "\nshop {}  # mine\n");
}

TEST(AppendText, WithoutALogStandsAtTheEnd) {
  EXPECT_EQ(Append("format: \"withy/1\"\nshop {}\n"), std::string("format: \"withy/1\"\nshop {}\n\n") + kEntryText);
  EXPECT_EQ(Append("format: \"withy/1\"\nshop {}\n\n"), std::string("format: \"withy/1\"\nshop {}\n\n") + kEntryText);
}

TEST(AppendText, AFileWithoutItsLastLineEndGetsOne) {
  EXPECT_EQ(Append("format: \"withy/1\"\nlog { id: \"e1\" }"),
            std::string("format: \"withy/1\"\nlog { id: \"e1\" }\n") + kEntryText);
  EXPECT_EQ(Append("format: \"withy/1\"  # mine"), std::string("format: \"withy/1\"  # mine\n\n") + kEntryText);
}

TEST(AppendText, LinesEndAsTheFilesDo) {
  const std::string after = Append("format: \"withy/1\"\r\nlog { id: \"e1\" }\r\n");
  EXPECT_THAT(after, HasSubstr("{ id: \"e1\" }\r\nlog {\r\n  id: \"e9\""));
  EXPECT_EQ(std::count(after.begin(), after.end(), '\n'), std::count(after.begin(), after.end(), '\r'));
}

TEST(AppendText, AByteOrderMarkStaysWhereItIs) {
  const std::string bytes =
      "\xEF\xBB\xBF"
      "format: \"withy/1\"\n";
  EXPECT_EQ(Append(bytes), bytes + "\n" + kEntryText);
}

// A list and entries of their own may stand in one file; the reader joins them in the order of the file.
TEST(AppendText, GoesBehindALogWrittenAsAList) {
  const std::string bytes = "format: \"withy/1\"\nlog: [{ id: \"e1\" }, { id: \"e2\" }];\n";
  EXPECT_EQ(Append(bytes), bytes + kEntryText);
  ExpectAppended(bytes, Form::kText);
}

TEST(AppendText, WhatSharesTheLineOfTheLastEntryStaysWhole) {
  ExpectAppended("format: \"withy/1\" log { id: \"e1\" } shop {} # mine", Form::kText);
  ExpectAppended("log < id: \"e1\" >, format: \"withy/1\"", Form::kText);
}

// What looks like a log within text, a comment, plugin data or another message is none.
TEST(AppendText, OnlyTheLogOfTheDesignCounts) {
  const std::string bytes = R"(format: "withy/1"
identity { description: "log { }" }
# log { id: "e0" }
extensions { key: "log" value { fields { key: "log" value { string_value: "x" } } } }
)";
  EXPECT_EQ(Append(bytes), bytes + "\n" + kEntryText);
}

TEST(AppendText, SeveralEntriesStandInTheirOrder) {
  v1::Entry note;
  note.set_id("e10");
  note.set_note("a \"quoted\" remark\nin two lines");
  const std::string after = Append("format: \"withy/1\"\n", {CutEntry("e9"), note});
  EXPECT_EQ(after, std::string("format: \"withy/1\"\n\n") + kEntryText +
                       "log {\n  id: \"e10\"\n  note: \"a \\\"quoted\\\" remark\\nin two lines\"\n}\n");
}

v1::Entry EntryOfId(const std::string& id) {
  v1::Entry entry;
  entry.set_id(id);
  return entry;
}

// What does not fit on a line is laid out below its head like what does.
TEST(AppendText, ALongEntryTakesSeveralLines) {
  v1::Entry entry = EntryOfId("e2");
  v1::Weighed& weighed = *entry.mutable_weighed();
  weighed.mutable_mass()->set_g(200);
  for (const char* id : {"tip", "wrap-epoxy", "w-guides", "w-tip", "w-check", "keeper", "check", "cap", "band"}) {
    weighed.add_missing(id);
  }
  weighed.set_with_reel(true);
  EXPECT_THAT(Append("format: \"withy/1\"\n", {entry}),
              HasSubstr("log {\n  id: \"e2\"\n  weighed {\n    mass { g: 200 }\n    with_reel: true\n"));
}

TEST(AppendJson, GoesBehindTheLastItem) {
  EXPECT_EQ(Append("{\n  \"log\": [\n    {\n      \"id\": \"e1\"\n    }\n  ],\n  \"format\": \"withy/1\"\n}\n",
                   {EntryOfId("e2")}),
            "{\n  \"log\": [\n    {\n      \"id\": \"e1\"\n    },\n    {\n      \"id\": \"e2\"\n    }\n  ],\n"
            "  \"format\": \"withy/1\"\n}\n");
}

TEST(AppendJson, MakesTheListWhereThereIsNone) {
  const std::string after = "{\n  \"format\": \"withy/1\",\n  \"log\": [\n    {\n      \"id\": \"e2\"\n    }\n  ]\n}\n";
  const v1::Entry entry = EntryOfId("e2");
  EXPECT_EQ(Append("{\n  \"format\": \"withy/1\"\n}\n", {entry}), after);
  EXPECT_EQ(Append("{\n  \"format\": \"withy/1\",\n  \"log\": []\n}\n", {entry}), after);
  EXPECT_EQ(Append("{\n  \"format\": \"withy/1\",\n  \"log\": null\n}\n", {entry}), after);
}

TEST(AppendJson, OneLineStaysOneLine) {
  v1::Entry entry = EntryOfId("e2");
  entry.set_note("two  blanks");
  EXPECT_EQ(Append(R"({"format":"withy/1","log":[{"id":"e1"}],"shop":{}})", {entry}),
            R"({"format":"withy/1","log":[{"id":"e1"},{"note": "two  blanks","id": "e2"}],"shop":{}})");
  ExpectAppended("\n\t{\"log\" :\t[ ] , \"format\":\"withy/1\"}  ", Form::kJson);
}

TEST(AppendJson, KeysOfTheSameNameFurtherInAreLeftAlone) {
  ExpectAppended(R"({"format": "withy/1", "extensions": {"log": {"log": [1, 2]}}, "identity": {"name": "log"}})",
                 Form::kJson);
}

// Designs that make no sense as rods, in every form.
TEST(Append, HoldsForRandomDesigns) {
  RandomDesigns designs(11, {.fill = 0.3});
  for (int i = 0; i < 60; ++i) {
    const v1::Design design = designs.Next();
    for (Form form : {Form::kText, Form::kJson, Form::kBinary}) {
      const std::string bytes = WriteDesign(design, form);
      ReadResult read = ReadDesign("rod", bytes);
      if (!read.document) continue;
      const absl::StatusOr<std::string> after = AppendLog(*read.document, {CutEntry("e9")});
      ASSERT_TRUE(after.ok()) << after.status() << bytes;
      v1::Design expected = read.document->design;
      *expected.add_log() = CutEntry("e9");
      EXPECT_EQ(DesignDigest(Read(*after).design), DesignDigest(expected));
    }
  }
}

TEST(Append, ADesignOfVersionZeroHasNoLog) {
  const Document document = Read("format: \"withy/0\"\n");
  EXPECT_EQ(AppendLog(document, {CutEntry("e1")}).status().code(), absl::StatusCode::kFailedPrecondition);
}

// Text that no form can be read back with.
TEST(Append, WhatCannotBeReadBackIsRefused) {
  v1::Entry entry;
  entry.set_note("\xFF");
  EXPECT_FALSE(AppendLog(Read("{\"format\": \"withy/1\"}"), {entry}).ok());
}

TEST(NextEntryId, IsFreeInTheWholeDesign) {
  v1::Design design;
  EXPECT_EQ(NextEntryId(design), "e1");
  design.add_log()->set_id("e4");
  design.add_log()->set_id("e2");
  design.add_log()->set_id("first fit");
  EXPECT_EQ(NextEntryId(design), "e5");
  design.mutable_handle()->add_parts()->set_id("e5");
  EXPECT_EQ(NextEntryId(design), "e6");
}

}  // namespace
}  // namespace withy
