#include "plugins.h"

#include <chrono>
#include <cstdlib>

#include "absl/strings/numbers.h"
#include "absl/strings/str_cat.h"
#include "arguments.h"
#include "exit_status.h"
#include "io.h"

namespace withy {
namespace {

constexpr OptionSpec kPluginOptions[] = {
    {.name = "--plugin",
     .value = "PATH",
     .summary = "take this plugin along: a .lua file or a folder (repeatable)",
     .completes = Completes::kFile,
     .repeatable = true},
    {.name = "--no-plugins", .summary = "only what is built in"},
    {.name = "--plugin-memory", .value = "MIB", .summary = "memory a plugin may use (256)", .most = 1 << 20},
    {.name = "--plugin-cpu", .value = "SECONDS", .summary = "processor time a plugin may use (10)", .most = 86'400},
    {.name = "--plugin-wall", .value = "SECONDS", .summary = "time a plugin may take (20)", .most = 86'400},
    {.name = "--plugin-output", .value = "MIB", .summary = "output a plugin may give (64)", .most = 1 << 20},
    {.name = "--plugin-files", .value = "N", .summary = "files a plugin may write (64)", .most = 100'000},
};

std::string FullName(const FoundEntry& found) {
  return absl::StrCat(found.info.name, "/", found.entry.name);
}

void LoadNamed(const Options& options, FoundPlugins& found) {
  for (const std::string& path : options.Values("--plugin")) {
    absl::StatusOr<PluginSource> plugin = LoadPlugin(path);
    if (plugin.ok()) {
      found.plugins.push_back(*std::move(plugin));
    } else {
      found.failures.emplace_back(plugin.status().message());
    }
  }
}

void LoadUsers(FoundPlugins& found) {
  std::string folder = UserPluginFolder();
  if (folder.empty()) return;
  absl::StatusOr<PluginFolder> users = LoadPluginFolder(folder);
  if (!users.ok()) {
    found.failures.emplace_back(users.status().message());
    return;
  }
  for (const absl::Status& failure : users->failures) found.failures.emplace_back(failure.message());
  for (PluginSource& plugin : users->plugins) found.plugins.push_back(std::move(plugin));
}

// "  --set paper=string", and under it "size of the page (A4)".
std::string SettingText(const PluginOption& option, const TextStyle& style) {
  std::string text = absl::StrCat("  --set ", Visible(option.name), "=", Visible(option.type), "\n");
  std::string summary = option.summary;
  if (option.has_default) absl::StrAppend(&summary, " (", option.default_value, ")");
  for (const std::string& line : Wrapped(summary, style.width - 8)) absl::StrAppend(&text, "        ", line, "\n");
  return text;
}

absl::Status CheckSetting(const FoundEntry& found, const std::string& name, const std::string& value) {
  std::vector<std::string_view> known;
  for (const PluginOption& option : found.entry.options) {
    known.push_back(option.name);
    if (option.name != name) continue;
    double number = 0;
    bool fits = option.type == "number"    ? absl::SimpleAtod(value, &number)
                : option.type == "boolean" ? value == "true" || value == "false"
                                           : true;
    if (fits) return absl::OkStatus();
    std::string wanted = option.type == "boolean" ? "true or false" : "a number";
    return absl::InvalidArgumentError(absl::StrCat("--set: ", name, "=", value, ": this setting is ", wanted));
  }
  return absl::InvalidArgumentError(
      absl::StrCat("--set: '", found.entry.name, "' has no setting '", name, "'", DidYouMean(name, known)));
}

}  // namespace

std::span<const OptionSpec> PluginOptions() {
  return kPluginOptions;
}

PluginHost PluginHostFrom(const Options& options) {
  PluginHostOptions host;
  host.child_program = "/proc/self/exe";
  PluginLimits& limits = host.limits;
  auto mib = [&](std::string_view name, std::size_t bytes) {
    return static_cast<std::size_t>(options.Number(name, static_cast<long>(bytes >> 20))) << 20;
  };
  auto seconds = [&](std::string_view name, std::chrono::milliseconds time) {
    return std::chrono::milliseconds(1000 * options.Number(name, static_cast<long>(time.count() / 1000)));
  };
  limits.memory_bytes = mib("--plugin-memory", limits.memory_bytes);
  limits.output_bytes = mib("--plugin-output", limits.output_bytes);
  limits.cpu = seconds("--plugin-cpu", limits.cpu);
  limits.wall = seconds("--plugin-wall", limits.wall);
  limits.files = static_cast<int>(options.Number("--plugin-files", limits.files));
  return PluginHost(host);
}

std::string UserPluginFolder() {
  const char* data = std::getenv("XDG_DATA_HOME");
  if (data && data[0] == '/') return absl::StrCat(data, "/withy/plugins");
  const char* home = std::getenv("HOME");
  return home && *home ? absl::StrCat(home, "/.local/share/withy/plugins") : "";
}

FoundPlugins FindPlugins(const Options& options) {
  FoundPlugins found;
  LoadNamed(options, found);
  if (!options.Has("--no-plugins")) LoadUsers(found);
  for (const PluginSource& plugin : BuiltInPlugins()) found.plugins.push_back(plugin);
  return found;
}

ReviewOptions ReviewOptionsFrom(const FoundPlugins& found, const PluginHost& host, std::vector<std::string>* failures) {
  ReviewOptions review;
  for (const PluginSource& plugin : found.plugins) {
    if (plugin.built_in) continue;  // what withy itself holds for usual is in the library
    absl::StatusOr<PluginInfo> info = host.Describe(plugin);
    if (info.ok()) {
      review.practices.insert(review.practices.end(), info->practices.begin(), info->practices.end());
    } else if (failures != nullptr) {
      failures->emplace_back(info.status().message());
    }
  }
  return review;
}

ReviewOptions ReviewOptionsFrom(const Options& options, Io& io, bool* failed) {
  FoundPlugins found = FindPlugins(options);
  ReviewOptions review = ReviewOptionsFrom(found, PluginHostFrom(options), &found.failures);
  for (const std::string& failure : found.failures) io.Complain(failure);
  *failed = !found.failures.empty();
  return review;
}

std::vector<FoundEntry> FindEntries(PluginEntry::Kind kind, const Options& options, Io& io) {
  FoundPlugins found = FindPlugins(options);
  for (const std::string& failure : found.failures) io.Complain(failure);
  PluginHost host = PluginHostFrom(options);
  std::vector<FoundEntry> entries;
  for (const PluginSource& plugin : found.plugins) {
    absl::StatusOr<PluginInfo> info = host.Describe(plugin);
    if (!info.ok()) {
      io.Complain(std::string(info.status().message()));
      continue;
    }
    for (const PluginEntry& entry : info->entries) {
      if (entry.kind == kind) entries.push_back({plugin, *info, entry});
    }
  }
  return entries;
}

absl::StatusOr<FoundEntry> FindEntry(PluginEntry::Kind kind, const std::string& name, const Options& options, Io& io) {
  std::vector<FoundEntry> entries = FindEntries(kind, options, io);
  std::vector<std::string_view> names;
  std::vector<const FoundEntry*> matches;
  for (const FoundEntry& found : entries) {
    names.push_back(found.entry.name);
    if (found.entry.name == name || FullName(found) == name) matches.push_back(&found);
  }
  std::string what = kind == PluginEntry::Kind::kExporter ? "exporter" : "importer";
  if (matches.size() == 1) return *matches.front();
  if (matches.empty()) return absl::NotFoundError(absl::StrCat("no ", what, " '", name, "'", DidYouMean(name, names)));
  std::string message = absl::StrCat("several plugins have an ", what, " '", name, "'; say which:");
  for (const FoundEntry* match : matches) absl::StrAppend(&message, " ", FullName(*match));
  return absl::InvalidArgumentError(message);
}

std::string EntryList(const std::vector<FoundEntry>& entries) {
  int width = 0;
  for (const FoundEntry& found : entries) width = std::max(width, DisplayWidth(found.entry.name));
  std::string text;
  for (const FoundEntry& found : entries) {
    absl::StrAppend(&text, PaddedRight(Visible(found.entry.name), width), "  ", Visible(found.entry.summary), " (",
                    Visible(found.info.name), " ", Visible(found.info.version), ")\n");
  }
  return text;
}

int HelpForEntry(PluginEntry::Kind kind, const Options& options, Io& io) {
  absl::StatusOr<FoundEntry> found = FindEntry(kind, options.operands().front(), options, io);
  if (!found.ok()) {
    io.Complain(std::string(found.status().message()));
    return kUsage;
  }
  io.Out("\n");
  std::string what = absl::StrCat(found->entry.name, ": ", found->entry.summary);
  for (const std::string& line : Wrapped(what, io.out_style().width)) io.Out(line + "\n");
  io.Out(absl::StrCat("\nSettings of ", Visible(found->entry.name), "\n"));
  if (found->entry.options.empty()) io.Out("  none\n");
  for (const PluginOption& option : found->entry.options) io.Out(SettingText(option, io.out_style()));
  return kDone;
}

absl::StatusOr<OptionValues> SetValues(const FoundEntry& found, const Options& options) {
  OptionValues values;
  for (const std::string& setting : options.Values("--set")) {
    std::size_t equals = setting.find('=');
    if (equals == std::string::npos || equals == 0) {
      return absl::InvalidArgumentError(absl::StrCat("--set: '", setting, "' is not NAME=VALUE"));
    }
    std::string name = setting.substr(0, equals), value = setting.substr(equals + 1);
    if (absl::Status status = CheckSetting(found, name, value); !status.ok()) return status;
    if (!values.emplace(name, value).second)
      return absl::InvalidArgumentError(absl::StrCat("--set: ", name, " is set twice"));
  }
  return values;
}

int PluginFailed(const absl::Status& status, Io& io) {
  io.Complain(std::string(status.message()));
  return absl::IsFailedPrecondition(status) ? kNoOutput : kIncomplete;
}

}  // namespace withy
