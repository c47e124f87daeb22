#include "withy/plugin_host/plugin_cases.h"

#include <algorithm>
#include <filesystem>
#include <optional>
#include <system_error>

#include "absl/strings/str_cat.h"
#include "case_files.h"
#include "google/protobuf/struct.pb.h"
#include "google/protobuf/util/json_util.h"
#include "withy/document/document.h"
#include "withy/plugin_host/wanted.h"
#include "withy/review/review.h"
#include "withy/units/format.h"

namespace withy {

using namespace plugin;

namespace {

namespace fs = std::filesystem;

// Options by exporter or importer.
using OptionsByEntry = std::map<std::string, OptionValues>;

std::string OptionText(const google::protobuf::Value& value) {
  if (value.kind_case() == google::protobuf::Value::kNumberValue) return FormatShortest(value.number_value());
  if (value.kind_case() == google::protobuf::Value::kBoolValue) return value.bool_value() ? "true" : "false";
  return value.string_value();
}

absl::StatusOr<OptionsByEntry> ReadOptions(const fs::path& path) {
  OptionsByEntry options;
  std::error_code error;
  if (!fs::exists(path, error)) return options;
  absl::StatusOr<std::string> bytes = ReadBytes(path.string());
  if (!bytes.ok()) return bytes.status();
  google::protobuf::Struct entries;
  if (auto parsed = google::protobuf::util::JsonStringToMessage(*bytes, &entries); !parsed.ok()) {
    return absl::InvalidArgumentError(absl::StrCat(path.string(), ": ", parsed.ToString()));
  }
  for (const auto& [entry, values] : entries.fields()) {
    for (const auto& [name, value] : values.struct_value().fields()) options[entry][name] = OptionText(value);
  }
  return options;
}

std::string FindingLines(const Finding& finding) {
  std::string text = absl::StrCat(std::string(SeverityName(finding.severity)), "[", finding.code, "]");
  if (!finding.at.empty()) absl::StrAppend(&text, " at ", finding.at.ToString());
  if (finding.position) absl::StrAppend(&text, " at line ", finding.position->line, ":", finding.position->column);
  absl::StrAppend(&text, ": ", finding.message, "\n");
  for (const Number& number : finding.numbers)
    absl::StrAppend(&text, "  ", number.name, " = ", FormatShortest(number.value), "\n");
  if (!finding.help.empty()) absl::StrAppend(&text, "  help: ", finding.help, "\n");
  return text;
}

std::string FindingsText(const std::vector<Finding>& findings) {
  std::string text;
  for (const Finding& finding : findings) text += FindingLines(finding);
  return text;
}

std::string ErrorText(const absl::Status& status) {
  return absl::StrCat(std::string(status.message()), "\n");
}

// Runs the cases of one plugin.
class CaseRunner {
 public:
  CaseRunner(const PluginHost& host, const PluginSource& plugin, const PluginInfo& info)
      : host_(host), plugin_(plugin), info_(info) {}

  // What comes out of the case in `folder`.
  absl::StatusOr<CaseFiles> Run(const fs::path& folder) const {
    absl::StatusOr<OptionsByEntry> options = ReadOptions(folder / "options.json");
    if (!options.ok()) return options.status();
    std::error_code error;
    std::vector<fs::path> paths;
    for (fs::directory_iterator at(folder, error), end; !error && at != end; at.increment(error))
      paths.push_back(at->path());
    std::sort(paths.begin(), paths.end());
    for (const fs::path& path : paths) {
      if (path.stem() != "design" && path.stem() != "input") continue;
      absl::StatusOr<std::string> bytes = ReadBytes(path.string());
      if (!bytes.ok()) return bytes.status();
      return path.stem() == "design" ? RunOnDesign(path, *std::move(bytes), *options)
                                     : RunOnInput(path, *bytes, *options);
    }
    return absl::InvalidArgumentError(
        absl::StrCat(folder.string(), ": has neither a design nor an input (design.txtpb, input.csv)"));
  }

 private:
  absl::StatusOr<CaseFiles> RunOnDesign(const fs::path& path, std::string bytes, const OptionsByEntry& options) const {
    ReadResult read = ReadDesign(path.string(), std::move(bytes));
    if (!read.document) {
      return absl::InvalidArgumentError(absl::StrCat(path.string(), ": cannot be read",
                                                     read.findings.empty() ? "" : ": ",
                                                     read.findings.empty() ? "" : read.findings.front().message));
    }
    const ReviewOptions as_reviewed = {.practices = info_.practices};
    const Review review = ReviewDesign(read, as_reviewed);
    const PluginSubject subject = {read.document->design, review.rod, review.report};
    const std::string stem = path.parent_path().filename().string();
    CaseFiles files;
    if (!info_.practices.empty()) files["findings.txt"] = FindingsText(OfPractices(review, read));
    if (Has(PluginEntry::Kind::kCheck)) files["findings.txt"] += Checked(subject);
    for (const PluginEntry& entry : info_.entries) {
      if (entry.kind != PluginEntry::Kind::kExporter) continue;
      v1::Report report = review.report;
      AddWanted(entry, *read.document, as_reviewed, report);
      AddExport(entry.name, stem, OptionsOf(options, entry.name), {subject.design, subject.rod, report}, files);
    }
    return files;
  }

  // What withy finds with the plugin's practices and not without them.
  static std::vector<Finding> OfPractices(const Review& review, const ReadResult& read) {
    const std::vector<Finding> without = ReviewDesign(read).findings;
    std::vector<Finding> found;
    std::copy_if(
        review.findings.begin(), review.findings.end(), std::back_inserter(found),
        [&](const Finding& finding) { return std::find(without.begin(), without.end(), finding) == without.end(); });
    return found;
  }

  std::string Checked(const PluginSubject& subject) const {
    PluginHost::CheckResult result = host_.RunChecks(plugin_, subject);
    std::string text = FindingsText(result.findings);
    for (const absl::Status& failure : result.failures) absl::StrAppend(&text, "failed: ", ErrorText(failure));
    return text;
  }

  void AddExport(const std::string& name, const std::string& stem, const OptionValues& options,
                 const PluginSubject& subject, CaseFiles& files) const {
    absl::StatusOr<std::vector<OutputFile>> written = host_.Export(plugin_, name, stem, options, subject);
    if (!written.ok()) {
      files[name + "/error.txt"] = ErrorText(written.status());
      return;
    }
    for (OutputFile& file : *written) files[absl::StrCat(name, "/", file.name)] = std::move(file.bytes);
  }

  absl::StatusOr<CaseFiles> RunOnInput(const fs::path& path, const std::string& bytes,
                                       const OptionsByEntry& options) const {
    const std::string extension = path.extension().string().substr(path.has_extension() ? 1 : 0);
    CaseFiles files;
    bool read = false;
    for (const PluginEntry& entry : info_.entries) {
      if (std::find(entry.extensions.begin(), entry.extensions.end(), extension) == entry.extensions.end()) continue;
      read = true;
      AddImport(entry.name, path.filename().string(), bytes, OptionsOf(options, entry.name), files);
    }
    if (!read)
      return absl::InvalidArgumentError(absl::StrCat(path.string(), ": no importer of the plugin reads .", extension));
    return files;
  }

  void AddImport(const std::string& name, const std::string& input_name, const std::string& bytes,
                 const OptionValues& options, CaseFiles& files) const {
    absl::StatusOr<PluginHost::ImportResult> imported = host_.Import(plugin_, name, input_name, bytes, options);
    if (!imported.ok()) {
      files[name + "/error.txt"] = ErrorText(imported.status());
      return;
    }
    files[name + "/design.txtpb"] = WriteDesign(imported->design, Form::kText);
    if (!imported->findings.empty()) files[name + "/findings.txt"] = FindingsText(imported->findings);
  }

  bool Has(PluginEntry::Kind kind) const {
    return std::any_of(info_.entries.begin(), info_.entries.end(),
                       [&](const PluginEntry& entry) { return entry.kind == kind; });
  }

  static OptionValues OptionsOf(const OptionsByEntry& options, const std::string& entry) {
    auto found = options.find(entry);
    return found == options.end() ? OptionValues() : found->second;
  }

  const PluginHost& host_;
  const PluginSource& plugin_;
  const PluginInfo& info_;
};

PluginCaseResult RunCase(const CaseRunner& runner, const fs::path& folder, bool accept) {
  PluginCaseResult result;
  result.name = folder.filename().string();
  absl::StatusOr<CaseFiles> actual = runner.Run(folder);
  absl::StatusOr<CaseFiles> expected = ReadCaseFiles(folder / "expected");
  result.status = !actual.ok() ? actual.status() : expected.status();
  if (!result.status.ok()) return result;
  result.differences = DifferencesOf(*expected, *actual);
  if (accept && !result.differences.empty()) result.status = WriteCaseFiles(folder / "expected", *expected, *actual);
  return result;
}

}  // namespace

absl::StatusOr<std::vector<PluginCaseResult>> RunPluginCases(const PluginHost& host, const std::string& folder,
                                                             bool accept) {
  absl::StatusOr<PluginSource> plugin = LoadPlugin(folder);
  if (!plugin.ok()) return plugin.status();
  plugin->under_test = true;
  absl::StatusOr<PluginInfo> info = host.Describe(*plugin);
  if (!info.ok()) return info.status();
  if (absl::Status plain = CheckPlainTree(fs::path(folder) / "cases"); !plain.ok()) return plain;
  std::error_code error;
  std::vector<fs::path> folders;
  for (fs::directory_iterator at(fs::path(folder) / "cases", error), end; !error && at != end; at.increment(error)) {
    if (at->is_directory(error)) folders.push_back(at->path());
  }
  if (folders.empty()) return absl::NotFoundError(absl::StrCat(folder, ": has no cases (cases/NAME/design.txtpb)"));
  std::sort(folders.begin(), folders.end());
  std::vector<PluginCaseResult> results;
  const CaseRunner runner(host, *plugin, *info);
  for (const fs::path& path : folders) results.push_back(RunCase(runner, path, accept));
  return results;
}

}  // namespace withy
