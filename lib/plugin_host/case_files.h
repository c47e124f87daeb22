// The files of a plugin's cases: what is expected, compared and accepted.
#ifndef WITHY_PLUGIN_HOST_CASE_FILES_H_
#define WITHY_PLUGIN_HOST_CASE_FILES_H_

#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include "absl/status/statusor.h"

namespace withy::plugin {

using CaseFiles = std::map<std::string, std::string>;  // path below expected/, to bytes

// OK where `folder` and all below it are plain files and folders, or where there is no such folder; InvalidArgument
// with the path of the first link, pipe or device. To be asked before anything below is read or written: neither then
// leaves the folder or waits for a pipe.
absl::Status CheckPlainTree(const std::filesystem::path& folder);

// All plain files below `folder`, by path with '/'. A missing folder is empty.
absl::StatusOr<CaseFiles> ReadCaseFiles(const std::filesystem::path& folder);

// Says where the two differ, one line for each file.
std::vector<std::string> DifferencesOf(const CaseFiles& expected, const CaseFiles& actual);

// Makes `folder` hold `actual` where it held `expected`.
absl::Status WriteCaseFiles(const std::filesystem::path& folder, const CaseFiles& expected, const CaseFiles& actual);

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_CASE_FILES_H_
