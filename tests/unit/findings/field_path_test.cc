#include "withy/findings/field_path.h"

#include <gtest/gtest.h>

#include <string>

namespace withy {
namespace {

TEST(FieldPath, IsWrittenTheWayAPersonWould) {
  EXPECT_EQ(FieldPath().ToString(), "");
  EXPECT_EQ(FieldPath().Field("guides").Item("g5", 4).Field("from_tip").ToString(), "guides[g5].from_tip");
  EXPECT_EQ(FieldPath()
                .Field("blank")
                .Field("sections")
                .Item("butt", 0)
                .Field("taper")
                .Field("stations")
                .Item("", 3)
                .ToString(),
            "blank.sections[butt].taper.stations[3]");
  // An id of digits alone must not read back as an index; brackets and quotes must not end the item.
  EXPECT_EQ(FieldPath().Field("guides").Item("7", 0).ToString(), "guides[\"7\"]");
  EXPECT_EQ(FieldPath().Field("extensions").Item("a]\"b\\", -1).ToString(), "extensions[\"a]\\\"b\\\\\"]");
}

TEST(FieldPath, ReadsWhatItWrites) {
  for (const char* text :
       {"", "format", "guides[g5].from_tip", "guides[3].angle", "blank.sections[butt].taper.stations[12].at",
        "extensions[\"a]\\\"b\\\\\"]", "guides[\"7\"]", "parts[\"\"]", "a[1][x].b", "extensions[house-rules]"}) {
    const auto path = FieldPath::Parse(text);
    ASSERT_TRUE(path.ok()) << text << ": " << path.status();
    EXPECT_EQ(path->ToString(), text);
  }
  const auto path = FieldPath::Parse("guides[3].angle");
  ASSERT_TRUE(path.ok());
  ASSERT_EQ(path->steps().size(), 3u);
  EXPECT_EQ(path->steps()[1], (FieldPath::Step{.field = "", .id = "", .index = 3}));
}

TEST(FieldPath, SaysWhereItCannotBeRead) {
  const auto fails_at = [](const char* text, int character) {
    const auto path = FieldPath::Parse(text);
    ASSERT_FALSE(path.ok()) << text;
    EXPECT_EQ(path.status().code(), absl::StatusCode::kInvalidArgument);
    const std::string message(path.status().message());
    EXPECT_TRUE(message.ends_with("at character " + std::to_string(character))) << text << ": " << message;
  };
  fails_at(".a", 1);
  fails_at("a..b", 3);
  fails_at("a.", 3);
  fails_at("[1]", 1);
  fails_at("a[", 3);
  fails_at("a[]", 3);
  fails_at("a[b", 4);
  fails_at("a[b]c", 5);
  fails_at("a[\"b", 5);
  fails_at("a[\"b\\", 6);
  fails_at("a[99999999999]", 14);
  fails_at("a b", 2);
}

TEST(FieldPath, ContainsWhatIsInside) {
  const FieldPath guide = FieldPath().Field("guides").Item("g5", 4);
  EXPECT_TRUE(guide.IsWithin(FieldPath()));
  EXPECT_TRUE(guide.IsWithin(guide));
  EXPECT_TRUE(guide.Field("from_tip").IsWithin(guide));
  EXPECT_FALSE(guide.IsWithin(guide.Field("from_tip")));
  // By id where both have one, whatever the index; else by index.
  EXPECT_TRUE(guide.IsWithin(FieldPath().Field("guides").Item("g5", -1)));
  EXPECT_FALSE(guide.IsWithin(FieldPath().Field("guides").Item("g6", 4)));
  EXPECT_TRUE(guide.IsWithin(FieldPath().Field("guides").Item("", 4)));
  EXPECT_FALSE(guide.IsWithin(FieldPath().Field("guides").Item("", 5)));
  EXPECT_FALSE(guide.IsWithin(FieldPath().Field("wraps")));
}

}  // namespace
}  // namespace withy
