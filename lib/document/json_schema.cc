#include "withy/document/json_schema.h"

#include <google/protobuf/descriptor.h>
#include <rapidjson/prettywriter.h>
#include <rapidjson/stringbuffer.h>

#include <map>
#include <optional>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "schema.h"
#include "withy/units/format.h"
#include "withy/units/unit.h"
#include "withy/v1/words.pb.h"

namespace withy {
namespace {

using google::protobuf::Descriptor;
using google::protobuf::FieldDescriptor;
using google::protobuf::OneofDescriptor;

struct FileMessage {
  std::string_view name;
  std::string_view format;
};
constexpr FileMessage kFileMessages[] = {{"Design", "withy/1"},
                                         {"Report", "withy-report/1"},
                                         {"CheckReport", "withy-check/1"},
                                         {"WorkPlan", "withy-plan/1"},
                                         {"WhyReport", "withy-why/1"},
                                         {"Calibration", "withy-calibration/1"}};

// A quantity without a unit and a place without an origin are errors; of the other choices none may be made.
bool MustBeSet(const OneofDescriptor* choice) {
  return choice->name() == "unit" || choice->name() == "origin";
}

bool HasSecondName(const FieldDescriptor* field) {
  return field->json_name() != field->name();
}

// What the options say of a field, as sentences after its comment.
std::string Description(const FieldDescriptor* field) {
  const auto& options = field->options();
  std::vector<std::string> sentences = {CommentOf(field)};
  if (options.HasExtension(v1::plausible)) {
    const v1::Plausible& range = options.GetExtension(v1::plausible);
    const bool quantity = field->message_type() != nullptr;
    const std::string unit =
        quantity ? absl::StrCat(" ", std::string(UnitsOf(field->message_type()->name())[0].symbol)) : "";
    sentences.push_back(absl::StrCat("Met on real rods: ", FormatShortest(range.low()), " to ",
                                     FormatShortest(range.high()), unit, "."));
  }
  std::vector<std::string> kinds;
  for (int i = 0; i < options.ExtensionSize(v1::refers_to); ++i)
    kinds.push_back(options.GetExtension(v1::refers_to, i));
  if (!kinds.empty()) sentences.push_back(absl::StrCat("The id of a ", absl::StrJoin(kinds, " or "), "."));
  return absl::StrJoin(sentences, " ");
}

class SchemaWriter {
 public:
  std::string Write(const Descriptor* root, std::string_view format) {
    format_ = format;
    Collect(root);
    json_.SetIndent(' ', 2);
    json_.StartObject();
    Member("$schema", "https://json-schema.org/draft/2020-12/schema");
    Member("$id", absl::StrCat("urn:withy:v1:", root->name()));
    Member("title", root->name());
    Member("$ref", Reference(root));
    Key("$defs");
    json_.StartObject();
    for (const auto& [name, message] : messages_) WriteMessage(message, message == root);
    json_.EndObject();
    json_.EndObject();
    return std::string(buffer_.GetString(), buffer_.GetSize()) + "\n";
  }

 private:
  static std::string Reference(const Descriptor* message) { return absl::StrCat("#/$defs/", message->name()); }

  void Key(const std::string& name) { json_.Key(name.c_str()); }
  void Text(const std::string& text) { json_.String(text.c_str()); }
  void Member(const char* key, const std::string& text) {
    Key(key);
    Text(text);
  }

  // The messages that `message` is made of, itself included.
  void Collect(const Descriptor* message) {
    if (!messages_.emplace(message->name(), message).second) return;
    for (int i = 0; i < message->field_count(); ++i) {
      const FieldDescriptor* field = message->field(i);
      if (field->message_type() != nullptr && !field->is_map()) Collect(field->message_type());
    }
  }

  void WriteMessage(const Descriptor* message, bool is_root) {
    Key(message->name());
    json_.StartObject();
    Member("description", CommentOf(message));
    Member("type", "object");
    Key("properties");
    json_.StartObject();
    for (int i = 0; i < message->field_count(); ++i) WriteField(message->field(i), message->field(i)->name(), is_root);
    json_.EndObject();
    WriteSecondNames(message);
    Key("additionalProperties");
    json_.Bool(false);
    if (is_root) {
      Key("required");
      json_.StartArray();
      Text("format");
      json_.EndArray();
    }
    if (message->real_oneof_decl_count() > 0) WriteChoices(message);
    json_.EndObject();
  }

  // Names that are accepted and not offered: editors complete properties, not patterns.
  void WriteSecondNames(const Descriptor* message) {
    bool begun = false;
    for (int i = 0; i < message->field_count(); ++i) {
      const FieldDescriptor* field = message->field(i);
      if (!HasSecondName(field)) continue;
      if (!begun) {
        Key("patternProperties");
        json_.StartObject();
        begun = true;
      }
      WriteField(field, absl::StrCat("^", field->json_name(), "$"), false);
    }
    if (begun) json_.EndObject();
  }

  void WriteField(const FieldDescriptor* field, const std::string& key, bool of_root) {
    Key(key);
    json_.StartObject();
    if (key == field->name()) Member("description", Description(field));
    if (of_root && field->name() == "format") {
      Member("const", std::string(format_));
    } else if (field->is_map()) {
      WriteExtensions();
    } else if (field->is_repeated()) {
      Member("type", "array");
      Key("items");
      json_.StartObject();
      WriteType(field);
      json_.EndObject();
    } else {
      WriteType(field);
    }
    json_.EndObject();
  }

  void WriteExtensions() {
    Member("type", "object");
    Key("additionalProperties");
    json_.StartObject();
    Member("type", "object");
    json_.EndObject();
  }

  void WriteType(const FieldDescriptor* field) {
    switch (field->cpp_type()) {
      case FieldDescriptor::CPPTYPE_MESSAGE:
        return Member("$ref", Reference(field->message_type()));
      case FieldDescriptor::CPPTYPE_DOUBLE:
        return Member("type", "number");
      case FieldDescriptor::CPPTYPE_BOOL:
        return Member("type", "boolean");
      case FieldDescriptor::CPPTYPE_ENUM:
        return WriteEnum(field->enum_type());
      case FieldDescriptor::CPPTYPE_UINT32:
        return WriteCount();
      default:
        return field->options().ExtensionSize(v1::word) > 0 ? WriteWord(field) : Member("type", "string");
    }
  }

  void WriteCount() {
    Member("type", "integer");
    Key("minimum");
    json_.Uint(0);
    Key("maximum");
    json_.Uint(0xFFFFFFFFu);
  }

  void WriteEnum(const google::protobuf::EnumDescriptor* values) {
    Key("enum");
    json_.StartArray();
    for (int i = 0; i < values->value_count(); ++i) Text(values->value(i)->name());
    json_.EndArray();
  }

  // The known words first: editors offer those, and accept any other.
  void WriteWord(const FieldDescriptor* field) {
    Key("anyOf");
    json_.StartArray();
    json_.StartObject();
    Key("enum");
    json_.StartArray();
    for (int i = 0; i < field->options().ExtensionSize(v1::word); ++i) Text(field->options().GetExtension(v1::word, i));
    json_.EndArray();
    json_.EndObject();
    json_.StartObject();
    Member("type", "string");
    json_.EndObject();
    json_.EndArray();
  }

  // Of each oneof: where one field is set, those after it are refused by name; where none is and one must be, the first
  // is asked for.
  void WriteChoices(const Descriptor* message) {
    Key("allOf");
    json_.StartArray();
    for (int i = 0; i < message->real_oneof_decl_count(); ++i) {
      const OneofDescriptor* choice = message->oneof_decl(i);  // the real ones stand first
      for (int k = 0; k + 1 < choice->field_count(); ++k) WriteRefusal(choice, k);
      if (MustBeSet(choice)) WriteDemand(choice);
    }
    json_.EndArray();
  }

  void WriteRefusal(const OneofDescriptor* choice, int chosen) {
    json_.StartObject();
    Key("if");
    WriteAnySet(choice, chosen, chosen + 1);
    Key("then");
    json_.StartObject();
    Key("properties");
    json_.StartObject();
    for (int k = chosen + 1; k < choice->field_count(); ++k) {
      Key(choice->field(k)->name());
      json_.Bool(false);
      if (!HasSecondName(choice->field(k))) continue;
      Key(choice->field(k)->json_name());
      json_.Bool(false);
    }
    json_.EndObject();
    json_.EndObject();
    json_.EndObject();
  }

  void WriteDemand(const OneofDescriptor* choice) {
    json_.StartObject();
    Key("if");
    json_.StartObject();
    Key("not");
    WriteAnySet(choice, 0, choice->field_count());
    json_.EndObject();
    Key("then");
    WriteRequired(choice->field(0)->name());
    json_.EndObject();
  }

  // That one of the fields [from, to) is there, by either name.
  void WriteAnySet(const OneofDescriptor* choice, int from, int to) {
    json_.StartObject();
    Key("anyOf");
    json_.StartArray();
    for (int k = from; k < to; ++k) {
      WriteRequired(choice->field(k)->name());
      if (HasSecondName(choice->field(k))) WriteRequired(choice->field(k)->json_name());
    }
    json_.EndArray();
    json_.EndObject();
  }

  void WriteRequired(const std::string& name) {
    json_.StartObject();
    Key("required");
    json_.StartArray();
    Text(name);
    json_.EndArray();
    json_.EndObject();
  }

  std::string_view format_;
  std::map<std::string, const Descriptor*> messages_;
  rapidjson::StringBuffer buffer_;
  rapidjson::PrettyWriter<rapidjson::StringBuffer> json_{buffer_};
};

}  // namespace

std::vector<std::string_view> JsonSchemaNames() {
  std::vector<std::string_view> names;
  for (const FileMessage& file : kFileMessages) names.push_back(file.name);
  return names;
}

std::string JsonSchema(std::string_view message) {
  for (const FileMessage& file : kFileMessages) {
    if (file.name != message) continue;
    const Descriptor* descriptor = SchemaMessage(file.name);
    return descriptor == nullptr ? "" : SchemaWriter().Write(descriptor, file.format);
  }
  return "";
}

}  // namespace withy
