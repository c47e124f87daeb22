#include "withy/review/findings_sarif.h"

#include <cmath>
#include <string>
#include <vector>

#include "absl/container/flat_hash_map.h"
#include "absl/strings/ascii.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "rapidjson/prettywriter.h"
#include "rapidjson/stringbuffer.h"
#include "withy/review/review.h"

namespace withy {
namespace {

using Writer = rapidjson::PrettyWriter<rapidjson::StringBuffer>;

void Key(Writer& json, std::string_view key) {
  json.Key(key.data(), static_cast<rapidjson::SizeType>(key.size()));
}

void Text(Writer& json, std::string_view key, std::string_view text) {
  Key(json, key);
  json.String(text.data(), static_cast<rapidjson::SizeType>(text.size()));
}

// The standard's message and multiformatMessageString objects: {"text": "..."}.
void Message(Writer& json, std::string_view key, std::string_view text) {
  Key(json, key);
  json.StartObject();
  Text(json, "text", text);
  json.EndObject();
}

std::string_view LevelOf(std::string_view severity) {
  if (severity == "error" || severity == "warning") return severity;
  return severity == "advice" ? "note" : "none";
}

// A file name as a URI reference (RFC 3986): absolute names become file: URIs.
std::string UriOf(std::string_view name) {
  std::string uri = !name.empty() && name.front() == '/' ? "file://" : "";
  for (char c : name) {
    auto byte = static_cast<unsigned char>(c);
    bool plain = absl::ascii_isalnum(byte) || c == '-' || c == '.' || c == '_' || c == '~' || c == '/';
    uri += plain ? std::string(1, c) : absl::StrFormat("%%%02X", byte);
  }
  return uri;
}

// The codes that have results, each once, in the order met.
class Rules {
 public:
  explicit Rules(const v1::CheckReport& report) {
    for (const v1::CheckedFile& file : report.files()) {
      for (const v1::FindingRecord& finding : file.findings()) Add(finding.code());
      for (const v1::FindingRecord& finding : file.waived()) Add(finding.code());
    }
  }

  int IndexOf(const std::string& code) const { return index_.at(code); }

  void Write(Writer& json) const {
    Key(json, "rules");
    json.StartArray();
    for (const std::string& name : names_) WriteRule(json, name);
    json.EndArray();
  }

 private:
  void Add(const std::string& code) {
    if (index_.emplace(code, static_cast<int>(names_.size())).second) names_.push_back(code);
  }

  static void WriteRule(Writer& json, const std::string& name) {
    json.StartObject();
    Text(json, "id", name);
    if (const Code* code = FindCode(name, nullptr)) {
      Message(json, "shortDescription", code->summary);
      Message(json, "fullDescription", code->why);
      Message(json, "help", code->action);
      Key(json, "defaultConfiguration");
      json.StartObject();
      Text(json, "level", LevelOf(SeverityName(code->severity)));
      json.EndObject();
    }
    json.EndObject();
  }

  std::vector<std::string> names_;
  absl::flat_hash_map<std::string, int> index_;
};

void WriteLocation(Writer& json, const std::string& file, const v1::FindingRecord& finding) {
  json.StartObject();
  Key(json, "physicalLocation");
  json.StartObject();
  Key(json, "artifactLocation");
  json.StartObject();
  Text(json, "uri", UriOf(file));
  json.EndObject();
  if (finding.has_offset()) {
    Key(json, "region");
    json.StartObject();
    if (finding.has_line()) {
      Key(json, "startLine");
      json.Uint(finding.line());
      Key(json, "startColumn");
      json.Uint(finding.column());
    } else {
      Key(json, "byteOffset");
      json.Uint(finding.offset());
    }
    json.EndObject();
  }
  json.EndObject();
  if (!finding.at().empty()) {
    Key(json, "logicalLocations");
    json.StartArray();
    json.StartObject();
    Text(json, "fullyQualifiedName", finding.at());
    json.EndObject();
    json.EndArray();
  }
  json.EndObject();
}

// What SARIF has no name for: the numbers, the place on the rod, the help.
void WriteProperties(Writer& json, const v1::FindingRecord& finding) {
  Key(json, "properties");
  json.StartObject();
  Text(json, "help", finding.help());
  if (finding.has_from_tip_mm() && std::isfinite(finding.from_tip_mm())) {
    Key(json, "from_tip_mm");
    json.Double(finding.from_tip_mm());
  }
  Key(json, "numbers");
  json.StartObject();
  for (const v1::NamedNumber& number : finding.numbers()) {
    Key(json, number.name());
    if (number.has_value() && std::isfinite(number.value())) {
      json.Double(number.value());
    } else {
      json.Null();
    }
  }
  json.EndObject();
  json.EndObject();
}

void WriteResult(Writer& json, const Rules& rules, const std::string& file, const v1::FindingRecord& finding,
                 bool waived) {
  json.StartObject();
  Text(json, "ruleId", finding.code());
  Key(json, "ruleIndex");
  json.Int(rules.IndexOf(finding.code()));
  Text(json, "kind", finding.severity() == "cannot tell" ? "open" : "fail");
  Text(json, "level", LevelOf(finding.severity()));
  Message(json, "message", finding.message());
  Key(json, "locations");
  json.StartArray();
  WriteLocation(json, file, finding);
  json.EndArray();
  if (waived) {
    Key(json, "suppressions");
    json.StartArray();
    json.StartObject();
    Text(json, "kind", "inSource");
    json.EndObject();
    json.EndArray();
  }
  WriteProperties(json, finding);
  json.EndObject();
}

void WriteInvocation(Writer& json, const v1::CheckReport& report) {
  Key(json, "invocations");
  json.StartArray();
  json.StartObject();
  bool complete = true;
  Key(json, "toolExecutionNotifications");
  json.StartArray();
  for (const v1::CheckedFile& file : report.files()) {
    for (const std::string& failure : file.failures()) {
      complete = false;
      json.StartObject();
      Text(json, "level", "error");
      Message(json, "message", absl::StrCat(file.file(), ": ", failure));
      json.EndObject();
    }
  }
  json.EndArray();
  Key(json, "executionSuccessful");
  json.Bool(complete);
  json.EndObject();
  json.EndArray();
}

void WriteTool(Writer& json, const Rules& rules, std::string_view version) {
  Key(json, "tool");
  json.StartObject();
  Key(json, "driver");
  json.StartObject();
  Text(json, "name", "withy");
  Text(json, "version", version);
  rules.Write(json);
  json.EndObject();
  json.EndObject();
}

void WriteRun(Writer& json, const v1::CheckReport& report, std::string_view version) {
  Rules rules(report);
  json.StartObject();
  WriteTool(json, rules, version);
  Text(json, "columnKind", "unicodeCodePoints");
  WriteInvocation(json, report);
  Key(json, "results");
  json.StartArray();
  for (const v1::CheckedFile& file : report.files()) {
    for (const v1::FindingRecord& finding : file.findings()) WriteResult(json, rules, file.file(), finding, false);
    for (const v1::FindingRecord& finding : file.waived()) WriteResult(json, rules, file.file(), finding, true);
  }
  json.EndArray();
  json.EndObject();
}

}  // namespace

std::string FindingsSarif(const v1::CheckReport& report, std::string_view version) {
  rapidjson::StringBuffer buffer;
  Writer json(buffer);
  json.SetIndent(' ', 2);
  json.StartObject();
  Text(json, "$schema", "https://json.schemastore.org/sarif-2.1.0.json");
  Text(json, "version", "2.1.0");
  Key(json, "runs");
  json.StartArray();
  WriteRun(json, report, version);
  json.EndArray();
  json.EndObject();
  return std::string(buffer.GetString(), buffer.GetSize()) + "\n";
}

}  // namespace withy
