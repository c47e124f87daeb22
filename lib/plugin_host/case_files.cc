#include "case_files.h"

#include <algorithm>
#include <fstream>
#include <system_error>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_split.h"
#include "plain_text.h"
#include "withy/document/document.h"

namespace withy::plugin {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t kLongestShown = 120;  // bytes of a line that differs

std::string FirstDifference(const std::string& expected, const std::string& actual) {
  std::vector<std::string> left = absl::StrSplit(expected, '\n');
  std::vector<std::string> right = absl::StrSplit(actual, '\n');
  for (std::size_t i = 0; i < std::max(left.size(), right.size()); ++i) {
    if (i < left.size() && i < right.size() && left[i] == right[i]) continue;
    auto shown = [&](const std::vector<std::string>& lines) {
      return i < lines.size() ? absl::StrCat("'", AsPlainLine(lines[i], kLongestShown), "'") : "the end";
    };
    return absl::StrCat("line ", i + 1, ": expected ", shown(left), ", got ", shown(right));
  }
  return "";
}

absl::Status NotPlain(const fs::path& path) {
  return absl::InvalidArgumentError(
      absl::StrCat(path.string(), ": not a plain file or folder (links are not followed); put a copy there"));
}

}  // namespace

absl::Status CheckPlainTree(const fs::path& folder) {
  std::error_code error;
  const fs::file_status top = fs::symlink_status(folder, error);
  if (!fs::exists(top)) return absl::OkStatus();
  if (!fs::is_directory(top)) return NotPlain(folder);
  for (fs::recursive_directory_iterator at(folder, error), end; !error && at != end; at.increment(error)) {
    std::error_code unreadable;
    const fs::file_status status = at->symlink_status(unreadable);
    if (!fs::is_regular_file(status) && !fs::is_directory(status)) return NotPlain(at->path());
  }
  if (error) return absl::PermissionDeniedError(absl::StrCat(folder.string(), ": ", error.message()));
  return absl::OkStatus();
}

absl::StatusOr<CaseFiles> ReadCaseFiles(const fs::path& folder) {
  CaseFiles files;
  std::error_code error;
  if (!fs::exists(folder, error)) return files;
  for (fs::recursive_directory_iterator at(folder, error), end; !error && at != end; at.increment(error)) {
    std::error_code unreadable;
    if (!fs::is_regular_file(at->symlink_status(unreadable))) continue;
    absl::StatusOr<std::string> bytes = ReadBytes(at->path().string());
    if (!bytes.ok()) return bytes.status();
    files[at->path().lexically_relative(folder).generic_string()] = *std::move(bytes);
  }
  if (error) return absl::PermissionDeniedError(absl::StrCat(folder.string(), ": ", error.message()));
  return files;
}

std::vector<std::string> DifferencesOf(const CaseFiles& expected, const CaseFiles& actual) {
  std::vector<std::string> differences;
  for (const auto& [name, bytes] : expected) {
    auto found = actual.find(name);
    if (found == actual.end()) {
      differences.push_back(absl::StrCat("expected/", name, ": did not come out"));
    } else if (found->second != bytes) {
      differences.push_back(absl::StrCat("expected/", name, ": ", FirstDifference(bytes, found->second)));
    }
  }
  for (const auto& [name, bytes] : actual) {
    if (expected.count(name) == 0) {
      differences.push_back(
          absl::StrCat("expected/", name, ": came out and is not there: ", FirstDifference("", bytes)));
    }
  }
  return differences;
}

absl::Status WriteCaseFiles(const fs::path& folder, const CaseFiles& expected, const CaseFiles& actual) {
  std::error_code error;
  for (const auto& [name, bytes] : expected) {
    if (actual.count(name) == 0) fs::remove(folder / name, error);
  }
  for (const auto& [name, bytes] : actual) {
    fs::create_directories((folder / name).parent_path(), error);
    fs::remove(folder / name, error);  // a hard link's other name keeps its bytes
    std::ofstream file(folder / name, std::ios::binary);
    file.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    file.close();
    if (!file) return absl::DataLossError(absl::StrCat((folder / name).string(), ": cannot be written"));
  }
  return absl::OkStatus();
}

}  // namespace withy::plugin
