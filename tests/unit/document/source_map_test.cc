// Where fields stand: places counted by hand in small files.
#include "withy/document/source_map.h"

#include <gtest/gtest.h>

#include <string>

#include "reading.h"
#include "withy/document/document.h"

namespace withy {
namespace {

// "line:column", or "none".
std::string PlaceOf(const Document& document, const std::string& path) {
  const absl::StatusOr<FieldPath> parsed = FieldPath::Parse(path);
  EXPECT_TRUE(parsed.ok()) << path;
  const bool binary = document.form == Form::kBinary;
  const auto place = document.positions.Find(*parsed, document.design, document.bytes, binary);
  if (!place) return "none";
  return binary ? std::to_string(place->offset) : std::to_string(place->line) + ":" + std::to_string(place->column);
}

Document Read(const std::string& bytes) {
  ReadResult result = ReadDesign("test", bytes);
  EXPECT_TRUE(result.document) << bytes;
  return result.document ? *std::move(result.document) : Document();
}

TEST(SourceMap, FindsFieldsOfText) {
  const Document document = Read(
      "format: \"withy/1\"\n"                                                                       // 1
      "guides { id: \"g1\" from_tip { mm: 5 } }\n"                                                  // 2
      "guides: [{ id: \"g2\" }, { angle { deg: 1 } id: \"7\" }]\n"                                  // 3
      "identity {\n"                                                                                // 4
      "\ttags: [\"\xC3\xA9\", \"b\"] tags: \"c\"\n"                                                 // 5
      "}\n"                                                                                         // 6
      "extensions { key: \"club\" value { fields { key: \"a\" value { number_value: 1 } } } }\n");  // 7
  EXPECT_EQ(PlaceOf(document, "format"), "1:1");
  EXPECT_EQ(PlaceOf(document, "guides[g1].from_tip.mm"), "2:30");
  EXPECT_EQ(PlaceOf(document, "guides[0].from_tip"), "2:19");
  EXPECT_EQ(PlaceOf(document, "guides"), "2:1");
  EXPECT_EQ(PlaceOf(document, "guides[g2]"), "3:10");
  EXPECT_EQ(PlaceOf(document, "guides[2].angle.deg"), "3:34");
  EXPECT_EQ(PlaceOf(document, "guides[\"7\"].angle"), "3:26");
  EXPECT_EQ(PlaceOf(document, "identity.tags[1]"), "5:14");
  EXPECT_EQ(PlaceOf(document, "identity.tags[2]"), "5:19");
  EXPECT_EQ(PlaceOf(document, "extensions[club]"), "7:1");
  EXPECT_EQ(PlaceOf(document, "extensions[club].fields[a].number_value"), "7:60");
}

// A path with an id and an index: the id leads, and the index decides between two things of that id.
TEST(SourceMap, TheIdOfAPathLeads) {
  const Document document =
      Read("format: \"withy/1\"\nguides { id: \"a\" }\nguides { id: \"b\" }\nguides { id: \"a\" }\n");
  const auto line = [&](const char* id, int index) {
    const FieldPath path = FieldPath().Field("guides").Item(id, index);
    const auto place = document.positions.Find(path, document.design, document.bytes, /*binary=*/false);
    return place ? place->line : 0;
  };
  EXPECT_EQ(line("a", -1), 2);
  EXPECT_EQ(line("a", 0), 2);
  EXPECT_EQ(line("a", 2), 4);
  EXPECT_EQ(line("b", 0), 3);
  EXPECT_EQ(line("b", 99), 3);
}

TEST(SourceMap, FallsBackOnWhatEncloses) {
  const Document document = Read("format: \"withy/1\"\nguides { id: \"g1\" from_tip { mm: 5 } }\n");
  EXPECT_EQ(PlaceOf(document, "guides[g1].from_tip.inch"), "2:19");
  EXPECT_EQ(PlaceOf(document, "guides[g1].angle.deg"), "2:1");
  EXPECT_EQ(PlaceOf(document, "guides[g9]"), "2:1");  // the list begins there
  EXPECT_EQ(PlaceOf(document, "blank.mass"), "none");
}

TEST(SourceMap, FindsFieldsOfJson) {
  const Document document = Read(
      "{\n"                                                            // 1
      "  \"format\": \"withy/1\",\n"                                   // 2
      "  \"guides\": [ {\"id\": \"g1\", \"fromTip\": {\"mm\": 5}},\n"  // 3
      "    {\"id\": \"g2\"} ],\n"                                      // 4
      "  \"identity\": {\"tags\": [\"a\", \"b\"]},\n"                  // 5
      "  \"extensions\": {\"club\": {\"a\": [1, {\"b\": 2}]}}\n"       // 6
      "}\n");
  EXPECT_EQ(PlaceOf(document, "guides[g1].from_tip.mm"), "3:40");
  EXPECT_EQ(PlaceOf(document, "guides[1]"), "4:5");
  EXPECT_EQ(PlaceOf(document, "guides[g2].id"), "4:6");
  EXPECT_EQ(PlaceOf(document, "identity.tags[1]"), "5:30");
  EXPECT_EQ(PlaceOf(document, "extensions[club]"), "6:18");
  EXPECT_EQ(PlaceOf(document, "extensions[club].fields[a]"), "6:27");
  EXPECT_EQ(PlaceOf(document, "extensions[club].fields[a].list_value.values[1].struct_value.fields[b]"), "6:37");
}

TEST(SourceMap, FindsBytesOfBinary) {
  using std::string_literals::operator""s;
  // format; guides { id: "g1" }; guides { id: "g2" from_tip { mm: 1 } }: tags at 0, 9 (11), 15 (17, 21, 23).
  const Document document =
      Read("\x0A\x07withy/1\x42\x04\x0A\x02g1\x42\x0F\x0A\x02g2\x1A\x09\x09\0\0\0\0\0\0\xF0\x3F"s);
  EXPECT_FALSE(document.positions.empty());
  EXPECT_EQ(PlaceOf(document, "guides[g1]"), "9");
  EXPECT_EQ(PlaceOf(document, "guides[g2]"), "15");
  EXPECT_EQ(PlaceOf(document, "guides[g2].from_tip.mm"), "23");
}

TEST(SourceMap, IsEmptyAfterAnUpgrade) {
  const Document document = Read("format: \"withy/0\"\nname: \"x\"\n");
  EXPECT_EQ(document.version, 0);
  EXPECT_TRUE(document.positions.empty());
  EXPECT_EQ(PlaceOf(document, "format"), "none");
}

// PositionAt counts from the start of the file each time: the second method. The lines are long enough to span several
// of the blocks that the map counts in, with characters of two and three bytes across their borders.
TEST(SourceMap, ColumnsOfLongLinesAgreeWithACountFromTheStart) {
  std::string text = "format: \"withy/1\" identity { name: \"";
  while (text.size() < 20'000) text += "ä→b";
  text += "\" }\nblank { name: \"";
  while (text.size() < 40'000) text += "→";
  text += "\" serial: \"7\" }\n";
  const ReadResult read = ReadDesign("long.txtpb", text);
  ASSERT_TRUE(read.document);
  const auto found = read.document->positions.Find(FieldPath().Field("blank").Field("serial"), read.document->design,
                                                   read.document->bytes, false);
  ASSERT_TRUE(found);
  EXPECT_EQ(found->offset, text.find("serial"));
  EXPECT_EQ(*found, PositionAt(text, text.find("serial")));
}

TEST(PositionAt, CountsLinesAndCodePoints) {
  const std::string bytes =
      "\xEF\xBB\xBF"
      "a\tb\r\n\xC3\xA9\xF0\x9F\x90\x9F!\n";
  EXPECT_EQ(PositionAt(bytes, 0), (Position{0, 1, 1}));
  EXPECT_EQ(PositionAt(bytes, 3), (Position{3, 1, 1}));  // the byte order mark is no column
  EXPECT_EQ(PositionAt(bytes, 5), (Position{5, 1, 3}));  // a tab is one
  EXPECT_EQ(PositionAt(bytes, 8), (Position{8, 2, 1}));
  EXPECT_EQ(PositionAt(bytes, 14), (Position{14, 2, 3}));
  EXPECT_EQ(PositionAt(bytes, 16), (Position{16, 3, 1}));
  EXPECT_EQ(PositionAt(bytes, 99), (Position{16, 3, 1}));
}

}  // namespace
}  // namespace withy
