#include "faulty/expected.h"

#include <cmath>
#include <sstream>

#include "rapidjson/document.h"
#include "rapidjson/error/en.h"
#include "support/design_files.h"

namespace withy::testing {
namespace {

bool ReadFinding(const rapidjson::Value& value, ExpectedFinding& finding) {
  if (!value.IsObject()) return false;
  for (const char* name : {"code", "severity", "at"}) {
    if (!value.HasMember(name) || !value[name].IsString()) return false;
  }
  finding.code = value["code"].GetString();
  finding.severity = value["severity"].GetString();
  finding.at = value["at"].GetString();
  if (value.HasMember("from_tip_mm")) {
    if (!value["from_tip_mm"].IsNumber()) return false;
    finding.from_tip_mm = value["from_tip_mm"].GetDouble();
  }
  if (!value.HasMember("numbers")) return true;
  if (!value["numbers"].IsObject()) return false;
  for (const auto& number : value["numbers"].GetObject()) {
    if (!number.value.IsNumber()) return false;
    finding.numbers[number.name.GetString()] = number.value.GetDouble();
  }
  return true;
}

// Bounds that the file lowers; the others stay.
void ReadLimitsOf(const rapidjson::Value& json, ReadLimits& limits) {
  if (!json.HasMember("limits") || !json["limits"].IsObject()) return;
  const auto number = [&](const char* name, auto& limit) {
    const rapidjson::Value& from = json["limits"];
    if (from.HasMember(name) && from[name].IsInt()) limit = from[name].GetInt();
  };
  number("max_bytes", limits.max_bytes);
  number("max_depth", limits.max_depth);
  number("max_items", limits.max_items);
}

bool SameNumber(double expected, double found) {
  const double tolerance = expected == 0 ? 1e-9 : 1e-6 * std::abs(expected);
  return std::abs(found - expected) <= tolerance;
}

bool SameNumbers(const std::map<std::string, double>& expected, const std::vector<Number>& found) {
  if (expected.size() != found.size()) return false;
  for (const Number& number : found) {
    const auto it = expected.find(number.name);
    if (it == expected.end() || !SameNumber(it->second, number.value)) return false;
  }
  return true;
}

bool Same(const ExpectedFinding& expected, const Finding& found) {
  if (expected.from_tip_mm && !(found.from_tip_mm && SameNumber(*expected.from_tip_mm, *found.from_tip_mm)))
    return false;
  return expected.code == found.code && expected.severity == SeverityName(found.severity) &&
         expected.at == found.at.ToString() && SameNumbers(expected.numbers, found.numbers);
}

}  // namespace

std::filesystem::path ExpectedPathOf(const std::filesystem::path& design) {
  return design.parent_path() / (design.stem().string() + ".expected.json");
}

Expected ReadExpected(const std::filesystem::path& path, std::string& problem) {
  Expected expected;
  const std::string bytes = BytesOf(path);
  rapidjson::Document json;
  json.Parse(bytes.data(), bytes.size());
  if (json.HasParseError()) {
    problem = rapidjson::GetParseError_En(json.GetParseError());
  } else if (!json.IsObject() || !json.HasMember("exit") || !json["exit"].IsInt() || !json.HasMember("findings") ||
             !json["findings"].IsArray()) {
    problem = "needs \"exit\" and \"findings\"";
  } else {
    expected.exit_status = json["exit"].GetInt();
    ReadLimitsOf(json, expected.limits);
    for (const auto& value : json["findings"].GetArray()) {
      if (!ReadFinding(value, expected.findings.emplace_back()))
        problem = "a finding needs code, severity, at and numbers";
    }
  }
  return expected;
}

std::string AsExpected(const Finding& finding) {
  std::ostringstream out;
  out.precision(9);
  out << "{ \"code\": \"" << finding.code << "\", \"severity\": \"" << SeverityName(finding.severity)
      << "\", \"at\": \"" << finding.at.ToString() << "\", \"numbers\": {";
  const char* separator = " ";
  for (const Number& number : finding.numbers) {
    out << separator << '"' << number.name << "\": " << number.value;
    separator = ", ";
  }
  out << " }";
  if (finding.from_tip_mm) out << ", \"from_tip_mm\": " << *finding.from_tip_mm;
  out << " }   // " << finding.message;
  return out.str();
}

std::string Differences(const Expected& expected, const std::vector<Finding>& found) {
  std::ostringstream out;
  std::vector<bool> taken(found.size(), false);
  for (const ExpectedFinding& wanted : expected.findings) {
    std::size_t i = 0;
    while (i < found.size() && (taken[i] || !Same(wanted, found[i]))) ++i;
    if (i < found.size()) {
      taken[i] = true;
    } else {
      out << "missing: " << wanted.severity << '[' << wanted.code << "] at '" << wanted.at << "'\n";
    }
  }
  for (std::size_t i = 0; i < found.size(); ++i) {
    if (!taken[i]) out << "not expected: " << AsExpected(found[i]) << '\n';
  }
  return out.str();
}

}  // namespace withy::testing
