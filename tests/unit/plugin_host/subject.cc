#include "subject.h"

#include <google/protobuf/text_format.h>
#include <unistd.h>

#include "absl/strings/str_cat.h"

namespace withy {
namespace {

// From the workshop of Ines Averill; invented.
constexpr char kDesign[] = R"(
  format: "withy/1"
  identity { name: "Test rod" tags: "one" tags: "two" }
  intent {
    technique: "casting"
    overall_length { inch: 87.1 plus_minus: 0.25 source: MEASURED }
    line { strength { lbf: 12 } }
  }
  blank {
    sections { id: "butt" length { inch: 87 } mass { oz: 3 } taper {
      stations { at { mm: 0 } outer { mm: 14 } wall { mm: 1 } }
      stations { at { mm: 2000 } outer { in64: 5.5 } } } }
    sections { id: "tip" length { mm: 400 } }
  }
  handle { parts { id: "grip" kind: "grip" loose: true arbors { id: "arbor1" } } }
  guides { id: "g1" from_tip { mm: 100 } }
  guides { id: "g2" from_tip { } }
  shop { thread_waste: 1.15 temperature { fahrenheit: 68 } }
  extensions { key: "club" value { fields { key: "member" value { bool_value: true } }
    fields { key: "years" value { list_value { values { number_value: 2024 } values { number_value: 2025 } } } }
    fields { key: "nested" value { struct_value { fields { key: "a" value { string_value: "x" } } } } } } }
)";

constexpr char kRod[] = R"(
  technique: "casting" overall_length_mm: 2212.34
  blank { at_mm: 0 diameter_mm: 14 } blank { at_mm: 2000 diameter_mm: 2.2 }
  guides { id: "g1" from_tip_mm: 100 locked: true }
)";

constexpr char kReport[] = R"(
  fit { overall_length_mm: 2212.34 }
  guides { guides { id: "g1" from_tip_mm: 100 } guides { id: "g2" } }
  unknown { figure: "balance.mass_g" measure: "weigh the grip" }
)";

void Parse(const char* text, google::protobuf::Message& message) {
  if (!google::protobuf::TextFormat::ParseFromString(text, &message)) std::abort();
}

std::string ThisProgram() {
  char path[4096] = "";
  ssize_t size = readlink("/proc/self/exe", path, sizeof path - 1);
  return std::string(path, size > 0 ? static_cast<std::size_t>(size) : 0);
}

constexpr char kHead[] = R"(api = 1, name = "test", version = "1", license = "Apache-2.0", summary = "Test",)";

}  // namespace

TestSubject::TestSubject() {
  Parse(kDesign, design);
  Parse(kRod, rod);
  Parse(kReport, report);
}

PluginSource Plugin(const std::string& text, bool built_in) {
  return {built_in ? "built-in" : "/plugins/test", built_in, {{"init.lua", text}}};
}

PluginSource CheckPlugin(const std::string& body, bool built_in) {
  return Plugin(
      absl::StrCat("return {", kHead,
                   "checks = {{ code = 'probe', severity = 'warning', summary = 'Probe', run = function(ctx) ", body,
                   " end }} }"),
      built_in);
}

PluginSource ExportPlugin(const std::string& body, bool built_in) {
  return Plugin(absl::StrCat("return {", kHead,
                             "exporters = {{ name = 'probe', extension = 'txt', summary = 'Probe', options = {",
                             "paper = { type = 'string', default = 'A4', summary = 'Paper' },",
                             "copies = { type = 'number', default = 1, summary = 'Copies' },",
                             "mono = { type = 'boolean', default = false, summary = 'Black and white' },",
                             "note = { type = 'string', summary = 'Note' } }, run = function(ctx) ", body, " end }} }"),
                built_in);
}

PluginSource ImportPlugin(const std::string& body, bool built_in) {
  return Plugin(
      absl::StrCat("return {", kHead,
                   "importers = {{ name = 'probe', extensions = { 'csv' }, summary = 'Probe', run = function(ctx) ",
                   body, " end }} }"),
      built_in);
}

PluginHostOptions Options() {
  PluginHostOptions options;
  options.child_program = ThisProgram();
  return options;
}

PluginHost Host() {
  return PluginHost(Options());
}

std::string Eval(const std::string& expression) {
  TestSubject subject;
  PluginSource plugin =
      ExportPlugin(absl::StrCat("ctx:write('out', tostring((function() return ", expression, " end)()))"));
  auto files = Host().Export(plugin, "probe", "rod", {}, subject.get());
  return files.ok() ? files->at(0).bytes : absl::StrCat("error: ", std::string(files.status().message()));
}

std::string FailureOf(const std::string& body, bool built_in) {
  TestSubject subject;
  PluginHost::CheckResult result = Host().RunChecks(CheckPlugin(body, built_in), subject.get());
  return result.failures.empty() ? "" : std::string(result.failures.front().message());
}

}  // namespace withy
