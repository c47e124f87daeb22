// Writes into a folder: the JSON Schemas, every readable design of the tree as JSON with its report and its findings,
// and manifest.json: which file is of which schema, and whether its structure is sound.
#include <filesystem>
#include <fstream>
#include <iostream>
#include <string>
#include <string_view>

#include "support/design_files.h"
#include "withy/document/document.h"
#include "withy/document/json_schema.h"
#include "withy/document/print.h"
#include "withy/review/findings_json.h"
#include "withy/review/review.h"

namespace withy::testing {
namespace {

// What a schema of the structure sees. Everything else the design may say wrongly is for `withy check`.
constexpr std::string_view kOfStructure[] = {
    "document/no-unit",    "document/place-without-origin", "document/unknown-field",
    "document/bad-value",  "document/bad-number",           "document/unknown-enum-name",
    "document/two-of-one", "document/format-missing",       "document/format-unknown"};

bool IsOfStructure(const Finding& finding) {
  for (std::string_view code : kOfStructure) {
    if (finding.code == code) return true;
  }
  return false;
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
    CheckedDesign checked{
        .name = path.filename().string(), .bytes = bytes, .read = ReadDesign(path.filename().string(), bytes)};
    bool sound = true;
    for (const Finding& finding : checked.read.findings) sound = sound && !IsOfStructure(finding);
    // A JSON file that was not read is validated as it stands, where it is JSON and the structure is at fault.
    if (!checked.read.document || !sound) {
      if (path.extension() == ".json" && !sound) Add("Design", name + ".design.json", bytes, false);
      return;
    }
    for (const Finding& finding : CheckDocument(*checked.read.document)) sound = sound && !IsOfStructure(finding);
    Add("Design", name + ".design.json", WriteDesign(checked.read.document->design, Form::kJson), sound);
    checked.review = ReviewDesign(checked.read);
    Add("Report", name + ".report.json", MessageToJson(checked.review.report), true);
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
