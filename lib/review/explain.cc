#include "withy/review/explain.h"

#include <algorithm>
#include <string_view>

#include "absl/strings/str_cat.h"
#include "rapidjson/prettywriter.h"
#include "rapidjson/stringbuffer.h"

namespace withy {
namespace {

std::string Paragraph(std::string_view heading, std::string_view text, const TextStyle& style) {
  std::string paragraph = absl::StrCat("\n", Painted(heading, Ink::kStrong, style), "\n");
  for (const std::string& line : Wrapped(text, style.width - 2)) absl::StrAppend(&paragraph, "  ", line, "\n");
  return paragraph;
}

}  // namespace

std::string ExplainText(const Code& code, const TextStyle& style) {
  std::string text = absl::StrCat(Painted(code.name, Ink::kStrong, style), ": ",
                                  std::string(SeverityName(code.severity)), ", since ", code.since, "\n");
  for (const std::string& line : Wrapped(code.summary, style.width)) absl::StrAppend(&text, line, "\n");
  text += Paragraph("Why it matters", code.why, style);
  text += Paragraph("What to do", code.action, style);
  return text;
}

std::string CodeListText(const std::vector<Code>& codes, const TextStyle& style) {
  int name_width = 0, severity_width = 0;
  for (const Code& code : codes) {
    name_width = std::max(name_width, DisplayWidth(code.name));
    severity_width = std::max(severity_width, DisplayWidth(SeverityName(code.severity)));
  }
  std::string text;
  for (const Code& code : codes) {
    std::string left = Painted(PaddedRight(code.name, name_width), Ink::kStrong, style) + "  " +
                       PaddedRight(SeverityName(code.severity), severity_width) + "  ";
    for (const std::string& line : Wrapped(code.summary, style.width - name_width - severity_width - 4)) {
      absl::StrAppend(&text, left, line, "\n");
      left = std::string(static_cast<std::size_t>(name_width + severity_width + 4), ' ');
    }
  }
  return text;
}

std::string CodeListJson(const std::vector<Code>& codes) {
  rapidjson::StringBuffer buffer;
  rapidjson::PrettyWriter<rapidjson::StringBuffer> json(buffer);
  json.SetIndent(' ', 2);
  auto text = [&json](const char* key, std::string_view value) {
    json.Key(key);
    json.String(value.data(), static_cast<rapidjson::SizeType>(value.size()));
  };
  json.StartArray();
  for (const Code& code : codes) {
    json.StartObject();
    text("code", code.name);
    text("severity", SeverityName(code.severity));
    text("summary", code.summary);
    text("why", code.why);
    text("action", code.action);
    json.Key("since");
    json.Int(code.since);
    json.EndObject();
  }
  json.EndArray();
  return std::string(buffer.GetString(), buffer.GetSize()) + "\n";
}

}  // namespace withy
