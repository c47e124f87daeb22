// Designs kept as files for a test: found in a folder, read and reviewed as `withy check` does.
#ifndef WITHY_TESTS_SUPPORT_DESIGN_FILES_H_
#define WITHY_TESTS_SUPPORT_DESIGN_FILES_H_

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <ostream>
#include <string>
#include <vector>

#include "withy/document/document.h"
#include "withy/review/review.h"

namespace withy::testing {

// A path that GoogleTest prints and names a test after.
struct DesignFile {
  std::filesystem::path path;
  friend std::ostream& operator<<(std::ostream& out, const DesignFile& file) { return out << file.path.string(); }
};

// Every design below `folder` of the source tree, in order of name. Expected reports and notes are left out.
inline std::vector<DesignFile> DesignFilesBelow(const std::string& folder) {
  std::vector<DesignFile> files;
  for (const auto& entry :
       std::filesystem::recursive_directory_iterator(std::filesystem::path(WITHY_SOURCE_DIR) / folder)) {
    const std::string name = entry.path().filename().string();
    const std::string ending = entry.path().extension().string();
    const bool design = ending == ".txtpb" || ending == ".binpb" || ending == ".json";
    if (design && !name.ends_with(".expected.json")) files.push_back({entry.path()});
  }
  std::sort(files.begin(), files.end(), [](const DesignFile& a, const DesignFile& b) { return a.path < b.path; });
  return files;
}

// "sections_taper_order" from ".../sections/taper-order.txtpb".
inline std::string TestNameOf(const DesignFile& file) {
  std::string name = file.path.parent_path().filename().string() + "_" + file.path.stem().string();
  std::replace_if(
      name.begin(), name.end(), [](unsigned char c) { return !std::isalnum(c); }, '_');
  return name;
}

inline std::string BytesOf(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

struct Reviewed {
  Review review;
  int exit_status = 0;  // of `withy check`
};

// Reads and reviews a file. An unreadable one has the findings of reading alone, and exit status 3.
inline Reviewed ReviewFile(const std::filesystem::path& path, const ReadLimits& limits = {}) {
  ReadResult read = ReadDesign(path.filename().string(), BytesOf(path), limits);
  Reviewed reviewed;
  if (!read.document) {
    reviewed.review.findings = std::move(read.findings);
    reviewed.exit_status = 3;
    return reviewed;
  }
  reviewed.review = ReviewDesign(read);
  ApplyWaivers(*read.document, {}, reviewed.review);
  switch (VerdictOf(reviewed.review, Severity::kError).kind) {
    case Verdict::Kind::kClean:
      reviewed.exit_status = 0;
      break;
    case Verdict::Kind::kFindings:
      reviewed.exit_status = 1;
      break;
    case Verdict::Kind::kCannotTell:
      reviewed.exit_status = 4;
      break;
  }
  return reviewed;
}

}  // namespace withy::testing

#endif  // WITHY_TESTS_SUPPORT_DESIGN_FILES_H_
