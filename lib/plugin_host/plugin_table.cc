#include "plugin_table.h"

#include <algorithm>
#include <string>

#include "absl/strings/str_cat.h"
#include "frames.h"
#include "ordered_tables.h"
#include "plain_text.h"
#include "practice_table.h"
#include "safe_base.h"
#include "schema_names.h"
#include "severity_names.h"
#include "table_reader.h"
#include "withy/plugin_host/plugin_host.h"
#include "withy/units/format.h"

namespace withy::plugin {
namespace {

void CheckApi(lua_State* lua, int index) {
  if (!lua_istable(lua, index)) luaL_error(lua, "the plugin must return a table, not a %s", luaL_typename(lua, index));
  lua_pushliteral(lua, "api");
  lua_rawget(lua, index);
  if (lua_isnil(lua, -1)) luaL_error(lua, "the plugin's table has no 'api': write api = %d", kPluginApi);
  if (!lua_isinteger(lua, -1) || lua_tointeger(lua, -1) != kPluginApi) {
    luaL_error(lua, "the plugin is written for version %s of the plugin API; this withy has version %d",
               TextOf(lua, -1).c_str(), kPluginApi);
  }
  lua_pop(lua, 1);
}

std::string Slug(const TableReader& table, const char* field) {
  std::string name = table.Text(field);
  if (!IsSlug(name))
    table.Refuse(absl::StrCat("'", field, "' is lower-case letters, digits and '-', beginning with a letter"));
  return name;
}

// Reads one option from the table on top of the stack.
void ReadOption(lua_State* lua, const std::string& name, const std::string& what, host::v1::DeclaredOption& option) {
  TableReader table(lua, -1, absl::StrCat(what, ".options.", name), OptionFields());
  if (!IsIdentifier(name)) table.Refuse("an option's name is letters, digits and '_'");
  option.set_name(name);
  option.set_type(table.Text("type"));
  option.set_summary(table.Text("summary"));
  if (option.type() != "string" && option.type() != "number" && option.type() != "boolean") {
    table.Refuse("'type' is \"string\", \"number\" or \"boolean\"");
  }
  if (int type = table.Push("default"); type != LUA_TNIL) {
    if (option.type() != lua_typename(lua, type)) table.Refuse(absl::StrCat("'default' must be a ", option.type()));
    if (type == LUA_TSTRING) option.set_default_value(table.Text("default"));
    if (type == LUA_TNUMBER) option.set_default_value(FormatShortest(*table.Number("default")));
    if (type == LUA_TBOOLEAN) option.set_default_value(lua_toboolean(lua, -1) != 0 ? "true" : "false");
  }
  lua_pop(lua, 1);
}

void ReadOptions(lua_State* lua, const TableReader& table, host::v1::Entry& entry) {
  if (table.Push("options") != LUA_TNIL) {
    for (const OrderedKey& key : SortedKeys(lua, -1)) {
      if (key.is_number) table.Refuse("'options' are named");
      key.Push(lua);
      lua_rawget(lua, -2);
      ReadOption(lua, key.text, table.what(), *entry.add_options());
      lua_pop(lua, 1);
    }
  }
  lua_pop(lua, 1);
}

void AddExtension(const TableReader& table, const std::string& extension, host::v1::Entry& entry) {
  if (!IsSlug(extension))
    table.Refuse(absl::StrCat("an extension is lower-case letters and digits, without a dot: '", extension, "'"));
  entry.add_extensions(extension);
}

void ReadExtensions(lua_State* lua, const TableReader& table, host::v1::Entry& entry) {
  int size = table.PushList("extensions");
  if (size == 0) table.Refuse("'extensions' is empty");
  for (int i = 1; i <= size; ++i) {
    lua_rawgeti(lua, -1, i);
    if (lua_type(lua, -1) != LUA_TSTRING) table.Refuse("'extensions' is a list of text");
    AddExtension(table, lua_tostring(lua, -1), entry);
    lua_pop(lua, 1);
  }
  lua_pop(lua, 1);
}

// What an exporter may ask for.
constexpr std::string_view kWants[] = {"placement"};

void ReadWants(lua_State* lua, const TableReader& table, host::v1::Entry& entry) {
  const int size = table.PushList("wants");
  for (int i = 1; i <= size; ++i) {
    lua_rawgeti(lua, -1, i);
    if (lua_type(lua, -1) != LUA_TSTRING) table.Refuse("'wants' is a list of text");
    const std::string want = lua_tostring(lua, -1);
    if (std::find(std::begin(kWants), std::end(kWants), want) == std::end(kWants)) {
      table.Refuse(
          absl::StrCat("'wants': there is no '", want, "'", DidYouMean(want, {std::begin(kWants), std::end(kWants)})));
    }
    const auto& wants = entry.wants();
    if (std::find(wants.begin(), wants.end(), want) != wants.end())
      table.Refuse(absl::StrCat("'wants' '", want, "' twice"));
    entry.add_wants(want);
    lua_pop(lua, 1);
  }
  lua_pop(lua, 1);
}

host::v1::Entry ReadEntry(lua_State* lua, host::v1::Entry::Kind kind, const std::string& what) {
  host::v1::Entry entry;
  entry.set_kind(kind);
  const bool check = kind == host::v1::Entry::CHECK;
  const bool exporter = kind == host::v1::Entry::EXPORTER;
  TableReader table(lua, -1, what, check ? CheckFields() : exporter ? ExporterFields() : ImporterFields());
  entry.set_name(Slug(table, check ? "code" : "name"));
  entry.set_summary(table.Text("summary"));
  if (check) {
    std::optional<Severity> severity = SeverityNamed(table.Text("severity"));
    if (!severity) table.Refuse(absl::StrCat("'severity' is ", kSeverityChoice));
    entry.set_severity(static_cast<std::uint32_t>(*severity));
    return entry;
  }
  ReadOptions(lua, table, entry);
  if (exporter) ReadWants(lua, table, entry);
  exporter ? AddExtension(table, table.Text("extension"), entry) : ReadExtensions(lua, table, entry);
  return entry;
}

// Reads one list of entries. Names are unique among entries of one kind.
void ReadEntries(lua_State* lua, const TableReader& plugin, const char* list, host::v1::Entry::Kind kind,
                 LoadedPlugin& loaded) {
  int size = plugin.PushList(list);
  if (loaded.info.entries_size() + size > kMostEntries)
    plugin.Refuse(absl::StrCat("more than ", kMostEntries, " entries"));
  for (int i = 1; i <= size; ++i) {
    lua_rawgeti(lua, -1, i);
    std::string what = absl::StrCat(list, "[", i, "]");
    host::v1::Entry entry = ReadEntry(lua, kind, what);
    for (const host::v1::Entry& other : loaded.info.entries()) {
      if (other.kind() == kind && other.name() == entry.name())
        plugin.Refuse(absl::StrCat(what, ": there are two '", entry.name(), "'"));
    }
    lua_pushliteral(lua, "run");
    lua_rawget(lua, -2);
    loaded.runs.push_back(luaL_ref(lua, LUA_REGISTRYINDEX));
    *loaded.info.add_entries() = std::move(entry);
    lua_pop(lua, 1);
  }
  lua_pop(lua, 1);
}

// One for each technique.
void ReadPractices(lua_State* lua, const TableReader& plugin, host::v1::Info& info) {
  const int size = plugin.PushList("practices");
  if (size > kMostPractices) plugin.Refuse(absl::StrCat("more than ", kMostPractices, " practices"));
  for (int i = 1; i <= size; ++i) {
    lua_rawgeti(lua, -1, i);
    const std::string what = absl::StrCat("practices[", i, "]");
    host::v1::Practice practice = ReadPractice(lua, what);
    for (const host::v1::Practice& other : info.practices()) {
      if (other.technique() == practice.technique())
        plugin.Refuse(absl::StrCat(what, ": there are two of '", practice.technique(), "'"));
    }
    *info.add_practices() = std::move(practice);
    lua_pop(lua, 1);
  }
  lua_pop(lua, 1);
}

}  // namespace

LoadedPlugin ReadPluginTable(lua_State* lua, int index) {
  index = lua_absindex(lua, index);
  CheckApi(lua, index);
  TableReader table(lua, index, "the plugin's table", PluginFields());
  LoadedPlugin loaded;
  loaded.info.set_api(kPluginApi);
  loaded.info.set_name(Slug(table, "name"));
  loaded.info.set_version(table.Text("version"));
  loaded.info.set_license(table.Text("license"));
  loaded.info.set_summary(table.Text("summary"));
  ReadEntries(lua, table, "checks", host::v1::Entry::CHECK, loaded);
  ReadEntries(lua, table, "exporters", host::v1::Entry::EXPORTER, loaded);
  ReadEntries(lua, table, "importers", host::v1::Entry::IMPORTER, loaded);
  ReadPractices(lua, table, loaded.info);
  if (loaded.info.entries_size() + loaded.info.practices_size() == 0) {
    table.Refuse("it has no checks, exporters, importers or practices");
  }
  return loaded;
}

}  // namespace withy::plugin
