// The manual of the plugin API, from the tables that the binding is made of.
#include <string>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "api_table.h"
#include "quantity_units.h"
#include "standard_library.h"
#include "withy/plugin_host/plugin_host.h"

namespace withy {

using namespace plugin;

namespace {

constexpr char kReading[] = R"(## Reading

`ctx.design`, `ctx.rod` and `ctx.report` are read-only and have the names of the schema.

- A name that the schema does not have is an error that names the nearest one.
- What is not known is `nil`: an absent message, a number without a value, an empty text, an enum at UNSPECIFIED. A plain
  boolean that is not set is `false`.
- A list is never `nil`. It counts from 1, is `nil` beyond its end, and works with `#`, `ipairs` and `pairs`. The same thing
  is the same object each time.
- `pairs` of anything else goes through the fields that are set, in the order of the schema.
- The name of a `oneof` gives the name of the field in it that is set.
- An enum is the name of its value: `"MEASURED"`.
- `design.extensions` holds the data of plugins by plugin name; there a missing key is `nil`.
- A quantity answers in any unit of its kind, whichever the author used; `unit` is the author's, and the number in it is
  exactly the author's. `plus_minus` is in the author's unit.

)";

constexpr char kPromises[] = R"(## Limits, and what is not promised

A plugin has bounded memory, processor time, wall time, output and number of files. Going over a bound cannot be caught: it
ends the plugin with an error that names file and line, and nothing the plugin gave is kept. A plugin that is not built in
runs in a process of its own, which can open no file and start no process.

`pairs` and `next` go through numbers in ascending order, then text in byte order; a table with any other key cannot be gone
through. `table.sort` is stable. `tostring` shows no addresses. A global that does not exist is an error. Weak tables,
finalizers and coroutines are not there. `math` functions come from the system's library: their last digit may differ between
machines, so round what you print.

)";

std::string Row(std::initializer_list<std::string> cells) {
  return absl::StrCat("| ", absl::StrJoin(cells, " | "), " |\n");
}

std::string Uses(unsigned uses) {
  std::vector<std::string> names;
  if ((uses & kInCheck) != 0) names.push_back("checks");
  if ((uses & kInExporter) != 0) names.push_back("exporters");
  if ((uses & kInImporter) != 0) names.push_back("importers");
  return absl::StrJoin(names, ", ");
}

std::string FieldTable(const std::string& title, const std::vector<ApiField>& fields) {
  std::string text =
      absl::StrCat("### ", title, "\n\n", Row({"field", "type", "", "meaning"}), Row({"---", "---", "---", "---"}));
  for (const ApiField& field : fields) {
    text += Row({absl::StrCat("`", std::string(field.name), "`"), std::string(field.type),
                 field.required ? "required" : "", std::string(field.doc)});
  }
  return text + "\n";
}

std::string ContextSection() {
  std::string text = "## The context\n\n";
  absl::StrAppend(&text, Row({"property", "type", "in", "meaning"}), Row({"---", "---", "---", "---"}));
  for (const ApiField& property : ContextProperties()) {
    text += Row({absl::StrCat("`ctx.", std::string(property.name), "`"), std::string(property.type),
                 Uses(property.uses), std::string(property.doc)});
  }
  text += "\n";
  for (const ApiFunction& method : ContextMethods()) {
    absl::StrAppend(&text, "`ctx:", std::string(method.name), std::string(method.signature), "` (", Uses(method.uses),
                    ")\n\n    ", std::string(method.doc), "\n\n");
  }
  return text;
}

std::string ModuleSection(const ApiModule& module) {
  std::string text = absl::StrCat("### ", std::string(module.name), "\n\n", std::string(module.summary), "\n\n");
  for (const ApiFunction& function : module.functions) {
    absl::StrAppend(&text, "- `", std::string(function.name), std::string(function.signature),
                    "`: ", std::string(function.doc), "\n");
  }
  return text + "\n";
}

std::string UnitsLine() {
  std::string text = "Units:";
  for (std::string_view unit : UnitNames())
    absl::StrAppend(&text, text.back() == ':' ? " `" : ", `", std::string(unit), "`");
  return text + ".\n\n";
}

// "`_G` `assert` ...", by table.
std::string LibrarySection() {
  std::string text = "## Lua's own library\n\n";
  for (const StandardTable& table : StandardTables()) {
    std::vector<std::string> names;
    for (std::string_view name : table.taken) names.emplace_back(name);
    for (const luaL_Reg& made : table.made) names.emplace_back(made.name);
    if (table.name.empty()) names.insert(names.end(), {"_G", "require"});
    std::sort(names.begin(), names.end());
    const std::string prefix = table.name.empty() ? "" : absl::StrCat(std::string(table.name), ".");
    for (std::string& name : names) name = absl::StrCat("`", prefix, name, "`");
    absl::StrAppend(&text, absl::StrJoin(names, " "), "\n\n");
  }
  return text;
}

}  // namespace

std::string PluginManual() {
  std::string text = absl::StrCat("# The plugin API, version ", kPluginApi, "\n\n",
                                  "A plugin is one `.lua` file, or a folder with `init.lua`, that returns a table.\n\n",
                                  "## What a plugin returns\n\n");
  text += FieldTable("The plugin", PluginFields()) + FieldTable("Check", CheckFields()) +
          FieldTable("Exporter", ExporterFields()) + FieldTable("Importer", ImporterFields()) +
          FieldTable("Option", OptionFields()) + FieldTable("Practice", PracticeFields());
  text += ContextSection() + FieldTable("Remark", RemarkFields()) + FieldTable("InputPlace", InputPlaceFields());
  text += kReading + UnitsLine();
  text +=
      "## The host's modules\n\n`require` reaches these and the plugin's own files (`require \"parts.rows\"` is "
      "`parts/rows.lua`).\n\n";
  for (const ApiModule& module : ApiModules()) text += ModuleSection(module);
  return text + LibrarySection() + kPromises;
}

}  // namespace withy
