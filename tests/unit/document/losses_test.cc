#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "withy/document/document.h"

namespace withy {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

Document Read(const std::string& bytes) {
  ReadResult result = ReadDesign("test", bytes);
  EXPECT_TRUE(result.document.has_value()) << bytes;
  return result.document.value_or(Document());
}

std::vector<std::string> Losses(const Document& document, Form form) {
  std::vector<std::string> texts;
  for (const Loss& loss : LossesInForm(document, form)) {
    texts.push_back(loss.at.ToString() + "|" + loss.what + (loss.comment ? "|comment" : ""));
  }
  return texts;
}

TEST(LossesInForm, CleanDesignLosesNothing) {
  const Document document = Read("format: \"withy/1\"\nintent { technique: \"fly\" }\n");
  for (const Form form : {Form::kText, Form::kJson, Form::kBinary}) EXPECT_THAT(Losses(document, form), IsEmpty());
}

TEST(LossesInForm, CommentsButNotTheLinesThatNameTheSchema) {
  const std::string head = "# proto-file: withy/v1/design.proto\n# proto-message: withy.v1.Design\n";
  EXPECT_THAT(Losses(Read(head + "format: \"withy/1\"\n"), Form::kJson), IsEmpty());
  EXPECT_THAT(Losses(Read(head + "# mine\nformat: \"withy/1\"\n"), Form::kJson), ElementsAre("|1 comment|comment"));
  EXPECT_THAT(Losses(Read("format: \"withy/1\" # a\n# proto-file: b\n"), Form::kBinary),
              ElementsAre("|2 comments|comment"));
}

// What WriteDesign writes reads back without a loss.
TEST(LossesInForm, OwnTextHasNoCommentsOfTheAuthor) {
  v1::Design design;
  design.set_format("withy/1");
  EXPECT_THAT(Losses(Read(WriteDesign(design, Form::kText)), Form::kJson), IsEmpty());
}

TEST(LossesInForm, MisspeltNameIsLostInEveryForm) {
  const Document document = Read("format: \"withy/1\"\nguides { id: \"g1\" lenght { mm: 3 } }\n");
  for (const Form form : {Form::kText, Form::kJson, Form::kBinary}) {
    EXPECT_THAT(Losses(document, form), ElementsAre("guides[g1].lenght|unknown field 'lenght'"));
  }
}

TEST(LossesInForm, NumberedFieldIsLostInJsonOnly) {
  v1::Design design;
  design.set_format("withy/1");
  v1::Guide* guide = design.add_guides();
  guide->set_id("g1");
  guide->GetReflection()->MutableUnknownFields(guide)->AddVarint(77, 5);
  for (const Form form : {Form::kText, Form::kBinary}) {
    const Document document = Read(WriteDesign(design, form));
    EXPECT_THAT(Losses(document, Form::kText), IsEmpty());
    EXPECT_THAT(Losses(document, Form::kBinary), IsEmpty());
    EXPECT_THAT(Losses(document, Form::kJson), ElementsAre("guides[g1].77|unknown field '77'"));
    EXPECT_EQ(DesignDigest(document.design), DesignDigest(design));
  }
}

// "\x9A\x01" is field 19, `extensions`; its entry holds key "a", an empty value, and field 9.
TEST(LossesInForm, FieldOfAMapEntryIsLostInEveryForm) {
  const Document binary =
      Read(std::string("\x0A\x07withy/1\x9A\x01\x07\x0A\x01"
                       "a\x12\0\x48\x01",
                       19));
  const Document text = Read("format: \"withy/1\"\nextensions { key: \"a\" value { } 9: 1 }\n");
  for (const Form form : {Form::kText, Form::kJson, Form::kBinary}) {
    EXPECT_THAT(Losses(binary, form), ElementsAre("extensions[a].9|unknown field '9'"));
    EXPECT_THAT(Losses(text, form), ElementsAre("extensions[a].9|unknown field '9'"));
  }
  EXPECT_FALSE(FormatBytes(binary).ok());  // written anew; a text file is only laid out
}

// JSON has one null; the other forms keep the number.
TEST(LossesInForm, OtherNumberOfNullIsLostInJsonOnly) {
  const Document document =
      Read("format: \"withy/1\"\nextensions { key: \"a\" value { fields { key: \"b\" value { null_value: 5 } } } }\n");
  EXPECT_THAT(Losses(document, Form::kJson),
              ElementsAre("extensions[a].fields[b].null_value|unknown field 'null_value'"));
  for (const Form form : {Form::kText, Form::kBinary}) {
    EXPECT_THAT(Losses(document, form), IsEmpty());
    const Document again = Read(WriteDesign(document.design, form));
    EXPECT_EQ(again.design.extensions().at("a").fields().at("b").null_value(), 5);
  }
}

TEST(LossesInForm, UnknownEnumNumberSurvivesEverywhere) {
  v1::Design design;
  design.set_format("withy/1");
  design.add_guides()->set_foot_towards(static_cast<v1::End::Value>(9));
  for (const Form form : {Form::kText, Form::kJson, Form::kBinary}) {
    const Document document = Read(WriteDesign(design, form));
    EXPECT_EQ(document.design.guides(0).foot_towards(), 9);
    for (const Form other : {Form::kText, Form::kJson, Form::kBinary}) EXPECT_THAT(Losses(document, other), IsEmpty());
  }
}

}  // namespace
}  // namespace withy
