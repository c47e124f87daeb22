#include "absl/strings/str_cat.h"
#include "commands.h"
#include "exit_status.h"
#include "io.h"
#include "plugins.h"
#include "rapidjson/prettywriter.h"
#include "rapidjson/stringbuffer.h"

namespace withy {
namespace {

constexpr Example kExamples[] = {
    {"withy plugin list", "the plugins of this machine and what each can do"},
    {"withy plugin list --plugin house-rules", "one that is not installed, too"},
    {"withy plugin list --json", "for programs"},
};

constexpr OptionSpec kOptions[] = {{"--json", "", "print JSON: an array of plugins with their entries and settings"}};

const std::span<const OptionSpec> kGroups[] = {kOptions, PluginOptions()};

std::string_view KindName(PluginEntry::Kind kind) {
  switch (kind) {
    case PluginEntry::Kind::kCheck:
      return "check";
    case PluginEntry::Kind::kExporter:
      return "exporter";
    case PluginEntry::Kind::kImporter:
      return "importer";
  }
  return "";
}

// Of whichever figure it gives: a plugin's practice has one source.
std::string SourceOf(const Practice& practice) {
  for (const auto& range :
       {practice.butt_guide_from_reel, practice.butt_guide_from_butt, practice.butt_ring, practice.running_ring}) {
    if (range) return range->source;
  }
  return practice.guides ? practice.guides->source : "";
}

std::string PluginText(const PluginSource& plugin, const PluginInfo& info, const TextStyle& style) {
  std::string text = absl::StrCat(Painted(Visible(info.name), Ink::kStrong, style), " ", Visible(info.version), ", ",
                                  Visible(info.license), ": ", Visible(info.summary), "\n  ",
                                  plugin.built_in ? "built in" : Visible(plugin.path), "\n");
  for (const PluginEntry& entry : info.entries) {
    absl::StrAppend(&text, "  ", PaddedRight(KindName(entry.kind), 8), "  ", Visible(entry.name), ": ",
                    Visible(entry.summary), "\n");
  }
  for (const Practice& practice : info.practices) {
    absl::StrAppend(&text, "  ", PaddedRight("practice", 8), "  ", Visible(practice.technique), ": ",
                    Visible(SourceOf(practice)), "\n");
  }
  return text;
}

using Json = rapidjson::PrettyWriter<rapidjson::StringBuffer>;

void Text(Json& json, const char* key, std::string_view text) {
  json.Key(key);
  json.String(text.data(), static_cast<rapidjson::SizeType>(text.size()));
}

void WriteEntry(Json& json, const PluginEntry& entry) {
  json.StartObject();
  Text(json, "kind", KindName(entry.kind));
  Text(json, "name", entry.name);
  Text(json, "summary", entry.summary);
  if (!entry.severity.empty()) Text(json, "severity", entry.severity);
  json.Key("settings");
  json.StartArray();
  for (const PluginOption& option : entry.options) {
    json.StartObject();
    Text(json, "name", option.name);
    Text(json, "type", option.type);
    Text(json, "summary", option.summary);
    if (option.has_default) Text(json, "default", option.default_value);
    json.EndObject();
  }
  json.EndArray();
  json.EndObject();
}

void WritePlugin(Json& json, const PluginSource& plugin, const PluginInfo& info) {
  json.StartObject();
  Text(json, "name", info.name);
  Text(json, "version", info.version);
  Text(json, "license", info.license);
  Text(json, "summary", info.summary);
  Text(json, "path", plugin.built_in ? "" : plugin.path);
  json.Key("entries");
  json.StartArray();
  for (const PluginEntry& entry : info.entries) WriteEntry(json, entry);
  json.EndArray();
  json.Key("practices");
  json.StartArray();
  for (const Practice& practice : info.practices) {
    json.StartObject();
    Text(json, "technique", practice.technique);
    Text(json, "source", SourceOf(practice));
    json.EndObject();
  }
  json.EndArray();
  json.EndObject();
}

int Run(const Options& options, Io& io) {
  FoundPlugins found = FindPlugins(options);
  PluginHost host = PluginHostFrom(options);
  rapidjson::StringBuffer buffer;
  Json json(buffer);
  json.SetIndent(' ', 2);
  json.StartArray();
  std::string text;
  for (const PluginSource& plugin : found.plugins) {
    absl::StatusOr<PluginInfo> info = host.Describe(plugin);
    if (!info.ok()) {
      found.failures.emplace_back(info.status().message());
      continue;
    }
    text += PluginText(plugin, *info, io.out_style());
    WritePlugin(json, plugin, *info);
  }
  json.EndArray();
  io.Out(options.Has("--json") ? std::string(buffer.GetString(), buffer.GetSize()) + "\n" : text);
  for (const std::string& failure : found.failures) io.Complain(failure);
  io.Note(UserPluginFolder().empty() ? "no plugin folder: neither XDG_DATA_HOME nor HOME is set"
                                     : absl::StrCat("plugins are looked for in ", UserPluginFolder()));
  return found.failures.empty() ? kDone : kIncomplete;
}

}  // namespace

const Command kPluginList = {
    .name = "plugin list",
    .operands = "",
    .least_operands = 0,
    .most_operands = 0,
    .completes = Completes::kNothing,
    .summary = "List plugins, and what each can do",
    .details = "",
    .examples = kExamples,
    .options = kGroups,
    .run = Run,
};

}  // namespace withy
