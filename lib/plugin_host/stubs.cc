// Stubs for editors: the API as Lua annotations, with the messages of the schema as classes.
#include <set>
#include <string>
#include <vector>

#include "absl/strings/ascii.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "api_table.h"
#include "google/protobuf/struct.pb.h"
#include "quantity_units.h"
#include "withy/plugin_host/plugin_host.h"

namespace withy {

using namespace plugin;

namespace {

using google::protobuf::Descriptor;
using google::protobuf::FieldDescriptor;

// The names of the parameters in "(text: string, width?: integer): string".
std::string ParameterNames(std::string_view signature) {
  std::vector<std::string> names;
  std::string inside(signature.substr(1, signature.find(')') - 1));
  std::size_t from = 0;
  while (from < inside.size()) {
    std::size_t stop = std::min(inside.find(", ", from), inside.size());
    std::string name = inside.substr(from, inside.find(':', from) - from);
    if (!name.empty() && name.back() == '?') name.pop_back();
    names.push_back(std::move(name));
    from = stop + 2;
  }
  return absl::StrJoin(names, ", ");
}

// The classes that the tables of a plugin are known by.
std::string ClassOf(const std::string& name, const std::vector<ApiField>& fields) {
  std::string text = absl::StrCat("---@class withy.", name, "\n");
  for (const ApiField& field : fields) {
    absl::StrAppend(&text, "---@field ", std::string(field.name), field.required ? " " : "? ", std::string(field.type), " ",
                    std::string(field.doc), "\n");
  }
  return text + "\n";
}

std::string FunctionStub(const std::string& owner, const ApiFunction& function) {
  return absl::StrCat("---", std::string(function.doc), "\n---@type fun", std::string(function.signature), "\n", owner,
                      std::string(function.name), " = function(", ParameterNames(function.signature), ") end\n\n");
}

std::string ModuleStub(const ApiModule& module) {
  std::string variable(module.name.substr(module.name.find('.') + 1));
  std::string text = absl::StrCat("---", std::string(module.summary), "\n---@class ", std::string(module.name), "\nlocal ", variable,
                                  "_module = {}\n\n");
  for (const ApiFunction& function : module.functions) text += FunctionStub(variable + "_module.", function);
  return text;
}

std::string ContextStub() {
  std::string text = "---@class withy.Context\n";
  for (const ApiField& property : ContextProperties()) {
    const bool message = absl::ascii_isupper(static_cast<unsigned char>(property.type.front()));
    absl::StrAppend(&text, "---@field ", std::string(property.name), message ? " withy." : " ", std::string(property.type), " ",
                    std::string(property.doc), "\n");
  }
  text += "local context = {}\n\n";
  for (const ApiFunction& method : ContextMethods()) {
    absl::StrAppend(&text, "---", std::string(method.doc), "\nfunction context:", std::string(method.name), "(",
                    ParameterNames(method.signature), ") end\n\n");
  }
  return text;
}

std::string TypeOf(const FieldDescriptor& field) {
  if (field.is_map()) return "table<string, table>";
  std::string type;
  switch (field.cpp_type()) {
    case FieldDescriptor::CPPTYPE_MESSAGE: type = absl::StrCat("withy.", field.message_type()->name()); break;
    case FieldDescriptor::CPPTYPE_STRING:
    case FieldDescriptor::CPPTYPE_ENUM: type = "string"; break;
    case FieldDescriptor::CPPTYPE_BOOL: type = "boolean"; break;
    case FieldDescriptor::CPPTYPE_DOUBLE:
    case FieldDescriptor::CPPTYPE_FLOAT: type = "number"; break;
    default: type = "integer";
  }
  return field.is_repeated() ? type + "[]" : type;
}

void AddMessage(const Descriptor& type, std::set<const Descriptor*>& done, std::string& text) {
  if (!done.insert(&type).second || type.file() == google::protobuf::Struct::descriptor()->file()) return;
  absl::StrAppend(&text, "---@class withy.", type.name(), "\n");
  if (IsQuantity(type)) text += "---@field unit? string the author's unit\n";
  for (int i = 0; i < type.field_count(); ++i) {
    const FieldDescriptor& field = *type.field(i);
    const bool always = field.is_repeated() || (!field.has_presence() && field.cpp_type() == FieldDescriptor::CPPTYPE_BOOL);
    absl::StrAppend(&text, "---@field ", field.name(), always ? " " : "? ", TypeOf(field), "\n");
  }
  text += "\n";
  for (int i = 0; i < type.field_count(); ++i) {
    const Descriptor* below = type.field(i)->message_type();
    if (below != nullptr && !type.field(i)->is_map()) AddMessage(*below, done, text);
  }
}

}  // namespace

std::string PluginStubs() {
  std::string text = absl::StrCat("---@meta\n-- The plugin API of withy, version ", kPluginApi,
                                  ", for editors. Made by `withy plugin stubs`; not to be edited, and not run by anything.\n\n");
  text += ClassOf("Plugin", PluginFields()) + ClassOf("Check", CheckFields()) + ClassOf("Exporter", ExporterFields()) +
          ClassOf("Importer", ImporterFields()) + ClassOf("Option", OptionFields()) + ClassOf("Remark", RemarkFields()) +
          ClassOf("InputPlace", InputPlaceFields());
  text += ContextStub();
  for (const ApiModule& module : ApiModules()) text += ModuleStub(module);
  std::set<const Descriptor*> done;
  for (const Descriptor* root : {v1::Design::descriptor(), v1::Rod::descriptor(), v1::Report::descriptor()}) {
    AddMessage(*root, done, text);
  }
  return text;
}

}  // namespace withy
