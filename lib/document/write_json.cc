// The JSON form: proto3 JSON mapping (protobuf.dev, "ProtoJSON Format") with proto field names, an item a line.
#include <google/protobuf/struct.pb.h>

#include <cmath>
#include <variant>

#include "absl/strings/escaping.h"
#include "scalar.h"
#include "utf8.h"
#include "write.h"

namespace withy {
namespace {

using google::protobuf::Descriptor;
using google::protobuf::FieldDescriptor;
using google::protobuf::Message;
using google::protobuf::Reflection;

void AppendEscaped(char c, std::string* out) {
  constexpr char kHex[] = "0123456789ABCDEF";
  switch (c) {
    case '"':
      out->append("\\\"");
      break;
    case '\\':
      out->append("\\\\");
      break;
    case '\b':
      out->append("\\b");
      break;
    case '\f':
      out->append("\\f");
      break;
    case '\n':
      out->append("\\n");
      break;
    case '\r':
      out->append("\\r");
      break;
    case '\t':
      out->append("\\t");
      break;
    default:
      out->append("\\u00");
      out->push_back(kHex[static_cast<unsigned char>(c) >> 4]);
      out->push_back(kHex[c & 15]);
  }
}

// How many bytes at the front of `text` are written as an escape: what JSON must not hold bare (RFC 8259 section 7), and
// DEL and C1 (U+0080 to U+009F), which it may but which steer a terminal that shows it.
std::size_t EscapedBytes(std::string_view text) {
  const auto byte = static_cast<unsigned char>(text[0]);
  if (byte < 0x20 || byte == '"' || byte == '\\' || byte == 0x7F) return 1;
  return byte == 0xC2 && text.size() > 1 && static_cast<unsigned char>(text[1]) < 0xA0 ? 2 : 0;
}

}  // namespace

void AppendJsonString(std::string_view text, std::string* out) {
  out->push_back('"');
  while (!text.empty()) {
    const std::size_t valid = ValidUtf8Prefix(text);
    std::size_t done = 0;
    for (std::size_t i = 0; i < valid; ++i) {
      const std::size_t bytes = EscapedBytes(text.substr(i, valid - i));
      if (bytes == 0) continue;
      out->append(text.substr(done, i - done));
      i += bytes - 1;  // the second byte of a C1 character is its number
      AppendEscaped(text[i], out);
      done = i + 1;
    }
    out->append(text.substr(done, valid - done));
    if (valid < text.size()) out->append("\xEF\xBF\xBD");
    text.remove_prefix(std::min(text.size(), valid + 1));
  }
  out->push_back('"');
}

namespace {

class JsonWriter {
 public:
  JsonWriter(Doubles doubles, std::string* out) : doubles_(doubles), out_(*out) {}

  // A message as the mapping wants it: an object, or whatever a Struct, Value or ListValue stands for.
  void Any(const Message& message, int depth);

 private:
  void Object(const Message& message, int depth);
  void Map(const Message& message, const FieldDescriptor* map, int depth);
  void Array(const Message& message, const FieldDescriptor* field, int depth);
  void Item(const Message& message, const FieldDescriptor* field, int index, int depth);
  void OneOfValue(const google::protobuf::Value& value, int depth);
  void Value(const Message& message, const FieldDescriptor* field, int index);
  void Number(double value);
  bool IsWritten(const Message& message, const FieldDescriptor* field) const;

  // Begins a member or an item; `first` of its object or array.
  void Separate(bool first, int depth) {
    out_.append(first ? "\n" : ",\n");
    out_.append(static_cast<std::size_t>(2 * depth), ' ');
  }
  // Ends an object or array: an empty one stays on the line.
  void Close(bool empty, int depth, char bracket) {
    if (!empty) Separate(true, depth);
    out_.push_back(bracket);
  }

  const Doubles doubles_;
  std::string& out_;
};

void JsonWriter::Any(const Message& message, int depth) {
  switch (message.GetDescriptor()->well_known_type()) {
    case Descriptor::WELLKNOWNTYPE_STRUCT:
      return Map(message, message.GetDescriptor()->field(0), depth);
    case Descriptor::WELLKNOWNTYPE_LISTVALUE:
      return Array(message, message.GetDescriptor()->field(0), depth);
    case Descriptor::WELLKNOWNTYPE_VALUE:
      if (const auto* value = dynamic_cast<const google::protobuf::Value*>(&message)) return OneOfValue(*value, depth);
      break;
    default:
      break;
  }
  Object(message, depth);
}

// Unset is unset: a double that JSON has no digits for is left out.
bool JsonWriter::IsWritten(const Message& message, const FieldDescriptor* field) const {
  if (!IsPresent(message, field)) return false;
  if (field->is_repeated() || field->cpp_type() != FieldDescriptor::CPPTYPE_DOUBLE) return true;
  return std::isfinite(message.GetReflection()->GetDouble(message, field));
}

void JsonWriter::Object(const Message& message, int depth) {
  const Descriptor* type = message.GetDescriptor();
  bool first = true;
  out_.push_back('{');
  for (int i = 0; i < type->field_count(); ++i) {
    const FieldDescriptor* field = type->field(i);
    if (!IsWritten(message, field)) continue;
    Separate(first, depth + 1);
    first = false;
    out_.push_back('"');
    out_.append(field->name()).append("\": ");
    if (field->is_map()) {
      Map(message, field, depth + 1);
    } else if (field->is_repeated()) {
      Array(message, field, depth + 1);
    } else {
      Item(message, field, kSingular, depth + 1);
    }
  }
  Close(first, depth, '}');
}

void JsonWriter::Map(const Message& message, const FieldDescriptor* map, int depth) {
  bool first = true;
  out_.push_back('{');
  for (const Message* entry : SortedEntries(message, map)) {
    Separate(first, depth + 1);
    first = false;
    AppendJsonString(EntryKey(*entry), &out_);
    out_.append(": ");
    Item(*entry, EntryValueField(map), kSingular, depth + 1);
  }
  Close(first, depth, '}');
}

void JsonWriter::Array(const Message& message, const FieldDescriptor* field, int depth) {
  const int size = message.GetReflection()->FieldSize(message, field);
  out_.push_back('[');
  for (int i = 0; i < size; ++i) {
    Separate(i == 0, depth + 1);
    Item(message, field, i, depth + 1);
  }
  Close(size == 0, depth, ']');
}

void JsonWriter::Item(const Message& message, const FieldDescriptor* field, int index, int depth) {
  if (!IsMessage(field)) return Value(message, field, index);
  const Reflection* reflection = message.GetReflection();
  Any(index == kSingular ? reflection->GetMessage(message, field)
                         : reflection->GetRepeatedMessage(message, field, index),
      depth);
}

void JsonWriter::OneOfValue(const google::protobuf::Value& value, int depth) {
  switch (value.kind_case()) {
    case google::protobuf::Value::kNumberValue:
      return Number(value.number_value());
    case google::protobuf::Value::kStringValue:
      return AppendJsonString(value.string_value(), &out_);
    case google::protobuf::Value::kBoolValue:
      return void(out_.append(value.bool_value() ? "true" : "false"));
    case google::protobuf::Value::kStructValue:
      return Any(value.struct_value(), depth);
    case google::protobuf::Value::kListValue:
      return Any(value.list_value(), depth);
    case google::protobuf::Value::kNullValue:
    case google::protobuf::Value::KIND_NOT_SET:
      out_.append("null");
  }
}

void JsonWriter::Number(double value) {
  if (std::isfinite(value)) {
    AppendDouble(value, doubles_, &out_);
  } else {
    out_.append("null");
  }
}

void JsonWriter::Value(const Message& message, const FieldDescriptor* field, int index) {
  const Scalar value = GetScalar(message, field, index);
  const bool quoted =
      field->cpp_type() == FieldDescriptor::CPPTYPE_INT64 || field->cpp_type() == FieldDescriptor::CPPTYPE_UINT64;
  if (quoted) out_.push_back('"');
  if (const auto* number = std::get_if<double>(&value)) {
    Number(*number);
  } else if (const auto* text = std::get_if<std::string_view>(&value)) {
    AppendJsonString(*text, &out_);
  } else if (const auto* name = std::get_if<EnumNumber>(&value)) {
    const bool known = field->enum_type()->FindValueByNumber(name->value) != nullptr;
    known ? AppendJsonString(EnumText(field, *name), &out_) : void(out_.append(std::to_string(name->value)));
  } else if (const auto* truth = std::get_if<bool>(&value)) {
    out_.append(*truth ? "true" : "false");
  } else if (const auto* whole = std::get_if<std::int64_t>(&value)) {
    out_.append(std::to_string(*whole));
  } else if (const auto* natural = std::get_if<std::uint64_t>(&value)) {
    out_.append(std::to_string(*natural));
  } else if (const auto* bytes = std::get_if<RawBytes>(&value)) {
    AppendJsonString(absl::Base64Escape(absl::string_view(bytes->value.data(), bytes->value.size())), &out_);
  }
  if (quoted) out_.push_back('"');
}

}  // namespace

void AppendJson(const Message& message, Doubles doubles, std::string* out) {
  JsonWriter(doubles, out).Any(message, 0);
}

}  // namespace withy
