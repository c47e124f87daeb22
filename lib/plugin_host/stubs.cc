// Stubs for editors: the API as Lua annotations, with the messages of the schema as classes.
#include <set>
#include <string>
#include <vector>

#include "absl/strings/ascii.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "absl/strings/str_split.h"
#include "api_table.h"
#include "google/protobuf/struct.pb.h"
#include "quantity_units.h"
#include "withy/plugin_host/plugin_host.h"

namespace withy {

using namespace plugin;

namespace {

using google::protobuf::Descriptor;
using google::protobuf::FieldDescriptor;

// "Node[]" as the editor knows it: classes are in the namespace of withy.
std::string Qualified(std::string_view type) {
  const bool is_class = absl::ascii_isupper(static_cast<unsigned char>(type.front()));
  return absl::StrCat(is_class ? "withy." : "", std::string(type));
}

struct Signature {
  std::vector<std::string> names;  // of the parameters
  std::string annotations;         // a line for each parameter and result
};

// Takes "(text: string, width?: integer): string" apart.
Signature ReadSignature(std::string_view text) {
  Signature signature;
  const std::size_t close = text.find(')');
  const std::string inside(text.substr(1, close - 1));
  for (const std::string& parameter : std::vector<std::string>(absl::StrSplit(inside, ", ", absl::SkipEmpty()))) {
    const std::string name = parameter.substr(0, parameter.find(':'));
    const std::string type = parameter.substr(parameter.find(": ") + 2);
    absl::StrAppend(&signature.annotations, "---@param ", name, " ", Qualified(type), "\n");
    signature.names.push_back(name.back() == '?' ? name.substr(0, name.size() - 1) : name);
  }
  if (close + 3 > text.size()) return signature;
  const std::string results(text.substr(close + 3));
  for (const std::string& type : std::vector<std::string>(absl::StrSplit(results, ", "))) {
    absl::StrAppend(&signature.annotations, "---@return ", Qualified(type), "\n");
  }
  return signature;
}

// A table that a plugin writes.
std::string ClassOf(const std::string& name, const std::vector<ApiField>& fields) {
  std::string text = absl::StrCat("---@class withy.", name, "\n");
  for (const ApiField& field : fields) {
    absl::StrAppend(&text, "---@field ", std::string(field.name), field.required ? " " : "? ", Qualified(field.type),
                    " ", std::string(field.doc), "\n");
  }
  return text + "\n";
}

// `owner` ends in '.' or ':'.
std::string FunctionStub(const std::string& owner, const ApiFunction& function) {
  const Signature signature = ReadSignature(function.signature);
  return absl::StrCat("---", std::string(function.doc), "\n", signature.annotations, "function ", owner,
                      std::string(function.name), "(", absl::StrJoin(signature.names, ", "), ") end\n\n");
}

std::string ModuleStub(const ApiModule& module) {
  const std::string variable = absl::StrCat(std::string(module.name.substr(module.name.find('.') + 1)), "_module");
  std::string text = absl::StrCat("---", std::string(module.summary), "\n---@class ", std::string(module.name),
                                  "\nlocal ", variable, " = {}\n\n");
  for (const ApiFunction& function : module.functions) text += FunctionStub(variable + ".", function);
  return text;
}

std::string RequireStub() {
  std::string text;
  for (const ApiModule& module : ApiModules()) {
    absl::StrAppend(&text, "---@overload fun(name: \"", std::string(module.name), "\"): ", std::string(module.name),
                    "\n");
  }
  return text + "---@param name string\n---@return any\nfunction require(name) end\n\n";
}

std::string ContextStub() {
  std::string text = ClassOf("Context", ContextProperties());
  text.pop_back();
  text += "local context = {}\n\n";
  for (const ApiFunction& method : ContextMethods()) text += FunctionStub("context:", method);
  return text;
}

std::string TypeOf(const FieldDescriptor& field) {
  if (field.is_map()) return "table<string, table>";
  std::string type;
  switch (field.cpp_type()) {
    case FieldDescriptor::CPPTYPE_MESSAGE:
      type = absl::StrCat("withy.", field.message_type()->name());
      break;
    case FieldDescriptor::CPPTYPE_STRING:
    case FieldDescriptor::CPPTYPE_ENUM:
      type = "string";
      break;
    case FieldDescriptor::CPPTYPE_BOOL:
      type = "boolean";
      break;
    case FieldDescriptor::CPPTYPE_DOUBLE:
    case FieldDescriptor::CPPTYPE_FLOAT:
      type = "number";
      break;
    default:
      type = "integer";
  }
  return field.is_repeated() ? type + "[]" : type;
}

void AddMessage(const Descriptor& type, std::set<const Descriptor*>& done, std::string& text) {
  if (!done.insert(&type).second || type.file() == google::protobuf::Struct::descriptor()->file()) return;
  absl::StrAppend(&text, "---@class withy.", type.name(), "\n");
  if (IsQuantity(type)) text += "---@field unit? string the author's unit\n";
  for (int i = 0; i < type.field_count(); ++i) {
    const FieldDescriptor& field = *type.field(i);
    const bool always =
        field.is_repeated() || (!field.has_presence() && field.cpp_type() == FieldDescriptor::CPPTYPE_BOOL);
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
  std::string text = absl::StrCat(
      "---@meta\n-- The plugin API of withy, version ", kPluginApi,
      ", for editors. Made from the tables in lib/plugin_host; not run by anything.\n-- luacheck: ignore\n\n");
  text += ClassOf("Plugin", PluginFields()) + ClassOf("Check", CheckFields()) + ClassOf("Exporter", ExporterFields()) +
          ClassOf("Importer", ImporterFields()) + ClassOf("Option", OptionFields()) +
          ClassOf("Practice", PracticeFields()) + ClassOf("Remark", RemarkFields()) +
          ClassOf("InputPlace", InputPlaceFields());
  text += ContextStub() + "---@class withy.Node\n\n" + RequireStub();
  for (const ApiModule& module : ApiModules()) text += ModuleStub(module);
  std::set<const Descriptor*> done;
  for (const Descriptor* root : {v1::Design::descriptor(), v1::Rod::descriptor(), v1::Report::descriptor()}) {
    AddMessage(*root, done, text);
  }
  return text;
}

}  // namespace withy
