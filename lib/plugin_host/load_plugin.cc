// Reads the sources of plugins. Files are read here, by the host: a plugin's process opens none.
#include <algorithm>
#include <filesystem>
#include <system_error>

#include "absl/strings/str_cat.h"
#include "plain_text.h"
#include "withy/document/document.h"
#include "withy/plugin_host/plugin_host.h"

namespace withy {

using namespace plugin;

namespace {

namespace fs = std::filesystem;

constexpr std::size_t kLargestFile = std::size_t{1} << 20;
constexpr std::size_t kLargestPlugin = std::size_t{8} << 20;
constexpr int kMostNames = 2000;  // looked at in one plugin's folder
constexpr int kDeepest = 4;       // folders within one another
constexpr char kMain[] = "init.lua";

// What editors and file systems leave behind: ".#init.lua", "._rules.lua".
bool IsHidden(const fs::path& path) {
  return path.filename().string().front() == '.';
}

bool IsLua(const fs::path& path) {
  return path.extension() == ".lua";
}

absl::StatusOr<std::string> ReadSource(const fs::path& path) {
  ReadLimits limits;
  limits.max_bytes = kLargestFile;
  return ReadBytes(path.string(), limits);
}

class FolderReader {
 public:
  FolderReader(const std::string& path, PluginSource& source) : path_(path), source_(source) {}

  absl::Status Read(const fs::path& folder, const std::string& prefix, int depth) {
    std::error_code error;
    std::vector<fs::directory_entry> entries;
    for (fs::directory_iterator at(folder, error), end; !error && at != end; at.increment(error)) {
      if (++names_ > kMostNames)
        return absl::ResourceExhaustedError(absl::StrCat(path_, ": more than ", kMostNames, " files"));
      entries.push_back(*at);
    }
    if (error) return absl::PermissionDeniedError(absl::StrCat(folder.string(), ": ", error.message()));
    for (const fs::directory_entry& entry : entries) {
      if (absl::Status added = Add(entry, prefix, depth); !added.ok()) return added;
    }
    return absl::OkStatus();
  }

 private:
  absl::Status Add(const fs::directory_entry& entry, const std::string& prefix, int depth) {
    std::error_code error;
    const fs::file_status status = entry.symlink_status(error);
    const std::string name = entry.path().filename().string();
    if (IsHidden(entry.path())) return absl::OkStatus();
    if (fs::is_directory(status)) {
      return depth < kDeepest ? Read(entry.path(), absl::StrCat(prefix, name, "/"), depth + 1) : absl::OkStatus();
    }
    if (!IsLua(entry.path())) return absl::OkStatus();
    if (!fs::is_regular_file(status)) {
      return absl::InvalidArgumentError(
          absl::StrCat(entry.path().string(), ": not a plain file (links are not followed)"));
    }
    if (!IsPlainFileName(name)) {
      return absl::InvalidArgumentError(
          absl::StrCat(entry.path().string(), ": name the file with letters, digits, '_' and '-'"));
    }
    absl::StatusOr<std::string> text = ReadSource(entry.path());
    if (!text.ok()) return text.status();
    size_ += text->size();
    if (size_ > kLargestPlugin) {
      return absl::ResourceExhaustedError(absl::StrCat(path_, ": more than ", kLargestPlugin >> 20, " MiB of Lua"));
    }
    source_.files[absl::StrCat(prefix, name)] = *std::move(text);
    return absl::OkStatus();
  }

  const std::string& path_;
  PluginSource& source_;
  std::size_t size_ = 0;
  int names_ = 0;
};

}  // namespace

absl::StatusOr<PluginSource> LoadPlugin(const std::string& path) {
  std::error_code error;
  PluginSource source;
  source.path = path;
  const fs::file_status status = fs::status(path, error);
  if (!fs::exists(status)) return absl::NotFoundError(absl::StrCat(path, ": no such plugin"));
  if (!fs::is_directory(status)) {
    if (!fs::is_regular_file(status) || !IsLua(path)) {
      return absl::InvalidArgumentError(absl::StrCat(path, ": a plugin is a .lua file, or a folder with ", kMain));
    }
    absl::StatusOr<std::string> text = ReadSource(path);
    if (!text.ok()) return text.status();
    source.files[kMain] = *std::move(text);
    return source;
  }
  if (!fs::exists(fs::path(path) / kMain, error)) {
    return absl::InvalidArgumentError(absl::StrCat(path, ": has no ", kMain));
  }
  while (source.path.size() > 1 && source.path.back() == '/') source.path.pop_back();
  if (absl::Status read = FolderReader(path, source).Read(path, "", 1); !read.ok()) return read;
  return source;
}

absl::StatusOr<PluginFolder> LoadPluginFolder(const std::string& folder) {
  std::error_code error;
  PluginFolder found;
  if (!fs::exists(folder, error)) return found;
  std::vector<fs::path> paths;
  for (fs::directory_iterator at(folder, error), end; !error && at != end; at.increment(error)) {
    if (IsHidden(at->path())) continue;
    std::error_code unreadable;
    const bool is_plugin =
        at->is_directory(unreadable) ? fs::exists(at->path() / kMain, unreadable) : IsLua(at->path());
    if (is_plugin) paths.push_back(at->path());
    if (paths.size() > kMostNames)
      return absl::ResourceExhaustedError(absl::StrCat(folder, ": more than ", kMostNames, " plugins"));
  }
  if (error) return absl::PermissionDeniedError(absl::StrCat(folder, ": ", error.message()));
  std::sort(paths.begin(), paths.end());
  for (const fs::path& path : paths) {
    absl::StatusOr<PluginSource> plugin = LoadPlugin(path.string());
    if (plugin.ok()) {
      found.plugins.push_back(*std::move(plugin));
    } else {
      found.failures.push_back(plugin.status());
    }
  }
  return found;
}

}  // namespace withy
