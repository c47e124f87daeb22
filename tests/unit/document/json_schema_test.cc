#include "withy/document/json_schema.h"

#include <gtest/gtest.h>
#include <rapidjson/document.h>
#include <rapidjson/pointer.h>

#include <string>

namespace withy {
namespace {

rapidjson::Document Parsed(std::string_view name) {
  rapidjson::Document json;
  json.Parse(JsonSchema(name).c_str());
  EXPECT_FALSE(json.HasParseError()) << name;
  return json;
}

// Calls `visit(key, value)` on every member below `value`.
template <typename Visit>
void ForEachMember(const rapidjson::Value& value, const Visit& visit) {
  if (value.IsArray()) {
    for (const auto& item : value.GetArray()) ForEachMember(item, visit);
  } else if (value.IsObject()) {
    for (const auto& member : value.GetObject()) {
      visit(std::string(member.name.GetString()), member.value);
      ForEachMember(member.value, visit);
    }
  }
}

TEST(JsonSchema, IsThereForWhatIsAFile) {
  EXPECT_EQ(JsonSchemaNames(),
            (std::vector<std::string_view>{"Design", "Report", "CheckReport", "WorkPlan", "WhyReport", "Calibration"}));
  EXPECT_EQ(JsonSchema("Length"), "");
  EXPECT_EQ(JsonSchema(""), "");
}

TEST(JsonSchema, EveryReferenceLeadsSomewhere) {
  for (std::string_view name : JsonSchemaNames()) {
    const rapidjson::Document json = Parsed(name);
    int references = 0;
    ForEachMember(json, [&](const std::string& key, const rapidjson::Value& value) {
      if (key != "$ref") return;
      ++references;
      EXPECT_NE(rapidjson::Pointer(value.GetString() + 1).Get(json), nullptr) << value.GetString();
    });
    EXPECT_GE(references, 2) << name;
  }
}

TEST(JsonSchema, EveryMessageAndFieldIsDescribed) {
  for (std::string_view name : JsonSchemaNames()) {
    const rapidjson::Document json = Parsed(name);
    for (const auto& message : json["$defs"].GetObject()) {
      EXPECT_GT(message.value["description"].GetStringLength(), 3u) << message.name.GetString();
      for (const auto& field : message.value["properties"].GetObject()) {
        EXPECT_GT(field.value["description"].GetStringLength(), 1u)
            << message.name.GetString() << '.' << field.name.GetString();
      }
    }
  }
}

TEST(JsonSchema, RangesAndReferencesAreSaid) {
  const rapidjson::Document json = Parsed("Design");
  const auto description = [&](const char* pointer) {
    return std::string(rapidjson::Pointer(pointer).Get(json)->GetString());
  };
  // As blank.proto and guides.proto say.
  EXPECT_NE(description("/$defs/Section/properties/length/description").find("100 to 6000 mm"), std::string::npos);
  EXPECT_NE(description("/$defs/Guide/properties/model/description").find("The id of a GuideModel."),
            std::string::npos);
  EXPECT_EQ(description("/$defs/Design/properties/format/const"), "withy/1");
}

}  // namespace
}  // namespace withy
