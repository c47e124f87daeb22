// The plugin API, declared once: the binding, the manual and the editor stubs are all made from these tables.
//
// A signature is written as editors know it from Lua annotations: `(text: string, width: integer): string[]`; a
// parameter that may be left out ends in '?'. Each module's table stands beside its functions (module_*.cc); `ctx` and
// the plugin's own table in context_api.cc and plugin_fields.cc.
#ifndef WITHY_PLUGIN_HOST_API_TABLE_H_
#define WITHY_PLUGIN_HOST_API_TABLE_H_

#include <string_view>
#include <vector>

#include "lua.hpp"

namespace withy::plugin {

// A function of a module, or a method of `ctx`.
struct ApiFunction {
  std::string_view name;
  std::string_view signature;
  std::string_view doc;              // whole sentences
  lua_CFunction function = nullptr;  // null: the module's Lua text defines it
  unsigned uses = 0;                 // of ctx: which runs have it
};

// A field of a table that the plugin writes, or a property of `ctx`.
struct ApiField {
  std::string_view name;
  std::string_view type;  // "string", "number", "boolean", "function", "table", or more for people
  std::string_view doc;
  bool required = false;
  unsigned uses = 0;  // of ctx: which runs have it
};

struct ApiModule {
  std::string_view name;  // "withy.text"
  std::string_view summary;
  std::vector<ApiFunction> functions;
};

// What `require` reaches besides the plugin's own files.
const std::vector<ApiModule>& ApiModules();

// `ctx`. `uses` is a sum of these.
inline constexpr unsigned kInCheck = 1, kInExporter = 2, kInImporter = 4, kEverywhere = 7;
const std::vector<ApiField>& ContextProperties();
const std::vector<ApiFunction>& ContextMethods();

// Tables that a plugin writes: the plugin itself, a check, an exporter, an importer, an option, what is usual for guides,
// what ctx:emit takes, where in its input an importer stumbled.
const std::vector<ApiField>& PluginFields();
const std::vector<ApiField>& CheckFields();
const std::vector<ApiField>& ExporterFields();
const std::vector<ApiField>& ImporterFields();
const std::vector<ApiField>& OptionFields();
const std::vector<ApiField>& PracticeFields();
const std::vector<ApiField>& RemarkFields();
const std::vector<ApiField>& InputPlaceFields();

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_API_TABLE_H_
