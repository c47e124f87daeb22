// Writes into a folder: the JSON Schemas, every readable design of the tree as JSON with its report and its findings,
// and manifest.json: which file is of which schema, and whether its structure is sound.
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "support/design_files.h"
#include "withy/document/document.h"
#include "withy/document/json_schema.h"
#include "withy/document/print.h"
#include "withy/review/calibration.h"
#include "withy/review/findings_json.h"
#include "withy/review/review.h"
#include "withy/review/why.h"
#include "withy/review/work_plan.h"
#include "withy/rod/resolve.h"

namespace withy::testing {
namespace {

// What a schema of the structure sees. Everything else the design may say wrongly is for `withy check`.
constexpr std::string_view kOfStructure[] = {
    "document/no-unit",      "document/place-without-origin", "document/unknown-field",
    "document/bad-value",    "document/bad-number",           "document/unknown-enum-name",
    "document/two-of-one",   "document/format-missing",       "document/format-unknown",
    "document/format-newer", "document/unknown-enum-number"};
// What is no longer there once the design was read and written again.
constexpr std::string_view kGoneWhenWritten[] = {"document/unknown-field"};

bool IsAmong(const Finding& finding, std::span<const std::string_view> codes) {
  return std::find(codes.begin(), codes.end(), finding.code) != codes.end();
}

class Material {
 public:
  explicit Material(std::filesystem::path folder) : folder_(std::move(folder)) {}

  void AddSchemas() {
    for (std::string_view name : JsonSchemaNames()) Write(std::string(name) + ".schema.json", JsonSchema(name));
  }

  void AddDesign(const std::filesystem::path& path) {
    const std::string name = TestNameOf(DesignFile{path});
    const std::string bytes = BytesOf(path);
    CheckedDesign checked;
    checked.name = path.filename().string();
    checked.bytes = bytes;
    checked.read = ReadDesign(checked.name, bytes);
    std::vector<Finding> findings = checked.read.findings;
    if (!checked.read.document) {
      // A JSON file that was not read is validated as it stands, where it is JSON and its structure is at fault.
      const bool broken =
          std::any_of(findings.begin(), findings.end(), [](const Finding& f) { return IsAmong(f, kOfStructure); });
      if (path.extension() == ".json" && broken) Add("Design", name + ".design.json", bytes, false);
      return;
    }
    const std::vector<Finding> consistency = CheckDocument(*checked.read.document);
    findings.insert(findings.end(), consistency.begin(), consistency.end());
    const bool sound = std::none_of(findings.begin(), findings.end(), [](const Finding& f) {
      return IsAmong(f, kOfStructure) && !IsAmong(f, kGoneWhenWritten);
    });
    Add("Design", name + ".design.json", WriteDesign(checked.read.document->design, Form::kJson), sound);
    checked.review = ReviewDesign(checked.read);
    Add("Report", name + ".report.json", MessageToJson(checked.review.report), true);
    const LengthUnits units = UnitsOf(checked.read.document->design);
    Add("WorkPlan", name + ".plan.json",
        MessageToJson(PlanWork(checked.read.document->design, checked.review.report, units)), true);
    const Rod rod = Resolve(*checked.read.document);
    Add("Calibration", name + ".calibration.json",
        MessageToJson(CalibrationOf(checked.read.document->design, rod, IdentifyBlank(rod, WallModel::kLinear))), true);
    for (const char* figure : {"fit.overall_length_mm", "balance"}) {
      const absl::StatusOr<v1::WhyReport> why = Why(*checked.read.document, checked.review.report, figure);
      if (why.ok()) Add("WhyReport", name + "." + figure + ".why.json", MessageToJson(*why), true);
    }
    v1::CheckReport report = EmptyCheckReport();
    *report.add_files() = CheckedFileOf(checked, Severity::kError);
    Add("CheckReport", name + ".check.json", MessageToJson(report), true);
  }

  void Finish() { Write("manifest.json", "[\n" + manifest_ + "\n]\n"); }

 private:
  void Write(const std::string& name, const std::string& bytes) {
    std::ofstream(folder_ / name, std::ios::binary) << bytes;
  }

  void Add(const std::string& schema, const std::string& name, const std::string& bytes, bool sound) {
    Write(name, bytes);
    manifest_ += std::string(manifest_.empty() ? "" : ",\n") + R"(  {"schema": ")" + schema + R"(", "file": ")" + name +
                 R"(", "sound": )" + (sound ? "true" : "false") + "}";
  }

  std::filesystem::path folder_;
  std::string manifest_;
};

}  // namespace
}  // namespace withy::testing

int main(int argc, char** argv) {
  if (argc != 2) {
    std::cerr << "usage: schema_material FOLDER\n";
    return 2;
  }
  withy::testing::Material material(argv[1]);
  material.AddSchemas();
  for (const char* folder : {"examples/designs", "examples/starts", "tests/sound", "tests/faulty"}) {
    for (const auto& file : withy::testing::DesignFilesBelow(folder)) material.AddDesign(file.path);
  }
  material.Finish();
  return 0;
}
