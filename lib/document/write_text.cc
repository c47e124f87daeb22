// The text form: a field a line, what is short on one line, a table row per line.
#include <google/protobuf/descriptor.pb.h>
#include <google/protobuf/unknown_field_set.h>

#include <variant>

#include "absl/strings/str_format.h"
#include "scalar.h"
#include "write.h"

namespace withy {
namespace {

using google::protobuf::Descriptor;
using google::protobuf::FieldDescriptor;
using google::protobuf::Message;
using google::protobuf::Reflection;
using google::protobuf::UnknownField;
using google::protobuf::UnknownFieldSet;

class TextWriter {
 public:
  TextWriter(Doubles doubles, std::string* out) : doubles_(doubles), out_(*out), line_(out->size()) {}

  // The fields of the outermost message: groups stand apart by an empty line, a list of one-line messages is one group.
  void Root(const Message& message);

 private:
  void Fields(const Message& message, int depth);
  void Field(const Message& message, const FieldDescriptor* field, int depth);
  void Items(const Message& message, const FieldDescriptor* field, int depth);
  void List(const Message& message, const FieldDescriptor* field, int depth);
  void Submessage(const std::string& name, const Message& value, int depth, bool may_be_one_line = true);

  // Append " name: value" for each field; false (and a half-written rest) where that does not fit on the line.
  bool OneLine(const Message& message);
  bool OneLineField(const Message& message, const FieldDescriptor* field);

  void Value(const Message& message, const FieldDescriptor* field, int index = kSingular);
  void ListOnLine(const Message& message, const FieldDescriptor* field);
  void Unknown(const UnknownField& field);

  void Indent(int depth) {
    line_ = out_.size();
    out_.append(static_cast<std::size_t>(2 * depth), ' ');
  }
  bool Fits(std::size_t more) const { return out_.size() - line_ + more <= kLineWidth; }

  const Doubles doubles_;
  std::string& out_;
  std::size_t line_;  // where the line being written began
};

// What is written: what says something, and both fields of a map entry.
bool IsWritten(const Message& message, const FieldDescriptor* field) {
  return IsPresent(message, field) || message.GetDescriptor()->options().map_entry();
}

void TextWriter::Root(const Message& message) {
  const Descriptor* type = message.GetDescriptor();
  const std::size_t begin = out_.size();
  for (int i = 0; i < type->field_count(); ++i) {
    const FieldDescriptor* field = type->field(i);
    if (!IsPresent(message, field)) continue;
    if (out_.size() > begin) out_.push_back('\n');
    if (IsMessage(field) && !field->is_repeated()) {
      Submessage(field->name(), message.GetReflection()->GetMessage(message, field), 0, /*may_be_one_line=*/false);
    } else {
      Field(message, field, 0);
    }
  }
  const UnknownFieldSet& unknown = message.GetReflection()->GetUnknownFields(message);
  if (out_.size() > begin && !unknown.empty()) out_.push_back('\n');
  for (int i = 0; i < unknown.field_count(); ++i) {
    Unknown(unknown.field(i));
    out_.push_back('\n');
  }
}

void TextWriter::Fields(const Message& message, int depth) {
  const Descriptor* type = message.GetDescriptor();
  for (int i = 0; i < type->field_count(); ++i) {
    if (IsWritten(message, type->field(i))) Field(message, type->field(i), depth);
  }
  const UnknownFieldSet& unknown = message.GetReflection()->GetUnknownFields(message);
  for (int i = 0; i < unknown.field_count(); ++i) {
    Indent(depth);
    Unknown(unknown.field(i));
    out_.push_back('\n');
  }
}

void TextWriter::Field(const Message& message, const FieldDescriptor* field, int depth) {
  if (!IsMessage(field)) {
    List(message, field, depth);
  } else if (field->is_repeated()) {
    Items(message, field, depth);
  } else {
    Submessage(field->name(), message.GetReflection()->GetMessage(message, field), depth);
  }
}

// At depth 0 an item that takes several lines stands apart.
void TextWriter::Items(const Message& message, const FieldDescriptor* field, int depth) {
  const auto item = [&](const Message& value, bool first) {
    const std::size_t begin = out_.size();
    Submessage(field->name(), value, depth);
    const bool several_lines = out_.find('\n', begin) + 1 != out_.size();
    if (depth == 0 && several_lines && !first) out_.insert(begin, 1, '\n');
  };
  if (field->is_map()) {
    const std::vector<const Message*> entries = SortedEntries(message, field);
    for (const Message* entry : entries) item(*entry, entry == entries.front());
    return;
  }
  const Reflection* reflection = message.GetReflection();
  for (int i = 0; i < reflection->FieldSize(message, field); ++i) {
    item(reflection->GetRepeatedMessage(message, field, i), i == 0);
  }
}

void TextWriter::List(const Message& message, const FieldDescriptor* field, int depth) {
  Indent(depth);
  out_.append(field->name()).append(": ");
  const std::size_t value = out_.size();
  ListOnLine(message, field);
  const int size = field->is_repeated() ? message.GetReflection()->FieldSize(message, field) : 1;
  if (!Fits(0) && size > 1) {
    out_.resize(value);
    out_.append("[\n");
    for (int i = 0; i < size; ++i) {
      Indent(depth + 1);
      Value(message, field, i);
      out_.append(i + 1 < size ? ",\n" : "\n");
    }
    Indent(depth);
    out_.push_back(']');
  }
  out_.push_back('\n');
}

void TextWriter::Submessage(const std::string& name, const Message& value, int depth, bool may_be_one_line) {
  Indent(depth);
  out_.append(name).append(" {");
  const std::size_t inside = out_.size();
  if (may_be_one_line && OneLine(value)) {
    out_.append(out_.size() > inside ? " }\n" : "}\n");
    return;
  }
  out_.resize(inside);
  out_.push_back('\n');
  Fields(value, depth + 1);
  if (out_.size() == inside + 1) {
    out_.resize(inside);
  } else {
    Indent(depth);
  }
  out_.append("}\n");
}

bool TextWriter::OneLine(const Message& message) {
  const Descriptor* type = message.GetDescriptor();
  for (int i = 0; i < type->field_count(); ++i) {
    const FieldDescriptor* field = type->field(i);
    if (!IsWritten(message, field)) continue;
    if (!OneLineField(message, field) || !Fits(2)) return false;
  }
  const UnknownFieldSet& unknown = message.GetReflection()->GetUnknownFields(message);
  for (int i = 0; i < unknown.field_count(); ++i) {
    out_.push_back(' ');
    Unknown(unknown.field(i));
  }
  return Fits(2);
}

bool TextWriter::OneLineField(const Message& message, const FieldDescriptor* field) {
  if (IsMessage(field) && field->is_repeated()) return false;
  out_.push_back(' ');
  out_.append(field->name());
  if (!IsMessage(field)) {
    out_.append(": ");
    ListOnLine(message, field);
    return true;
  }
  out_.append(" {");
  const std::size_t inside = out_.size();
  if (!OneLine(message.GetReflection()->GetMessage(message, field))) return false;
  out_.append(out_.size() > inside ? " }" : "}");
  return true;
}

void TextWriter::ListOnLine(const Message& message, const FieldDescriptor* field) {
  if (!field->is_repeated()) return Value(message, field);
  const int size = message.GetReflection()->FieldSize(message, field);
  if (size > 1) out_.push_back('[');
  for (int i = 0; i < size && Fits(0); ++i) {
    if (i > 0) out_.append(", ");
    Value(message, field, i);
  }
  if (size > 1) out_.push_back(']');
}

void TextWriter::Value(const Message& message, const FieldDescriptor* field, int index) {
  const Scalar value = GetScalar(message, field, index);
  if (const auto* number = std::get_if<double>(&value)) {
    AppendDouble(*number, doubles_, &out_);
  } else if (const auto* text = std::get_if<std::string_view>(&value)) {
    AppendTextString(*text, /*readable=*/true, &out_);
  } else if (const auto* name = std::get_if<EnumNumber>(&value)) {
    out_.append(EnumText(field, *name));
  } else if (const auto* truth = std::get_if<bool>(&value)) {
    out_.append(*truth ? "true" : "false");
  } else if (const auto* whole = std::get_if<std::int64_t>(&value)) {
    out_.append(std::to_string(*whole));
  } else if (const auto* natural = std::get_if<std::uint64_t>(&value)) {
    out_.append(std::to_string(*natural));
  } else if (const auto* bytes = std::get_if<RawBytes>(&value)) {
    AppendTextString(bytes->value, /*readable=*/false, &out_);
  }
}

// The width of the digits tells the wire type: 8 hexadecimal digits are fixed32, 16 are fixed64, decimal is varint.
// What is length-delimited is always a string: whether it was a message nobody here can know.
void TextWriter::Unknown(const UnknownField& field) {
  absl::StrAppendFormat(&out_, "%d", field.number());
  switch (field.type()) {
    case UnknownField::TYPE_VARINT:
      absl::StrAppendFormat(&out_, ": %u", field.varint());
      break;
    case UnknownField::TYPE_FIXED32:
      absl::StrAppendFormat(&out_, ": 0x%08x", field.fixed32());
      break;
    case UnknownField::TYPE_FIXED64:
      absl::StrAppendFormat(&out_, ": 0x%016x", field.fixed64());
      break;
    case UnknownField::TYPE_LENGTH_DELIMITED:
      out_.append(": ");
      AppendTextString(field.length_delimited(), /*readable=*/false, &out_);
      break;
    case UnknownField::TYPE_GROUP:
      out_.append(" {");
      for (int i = 0; i < field.group().field_count(); ++i) {
        out_.push_back(' ');
        Unknown(field.group().field(i));
      }
      out_.append(field.group().empty() ? "}" : " }");
      break;
  }
}

}  // namespace

void AppendText(const Message& message, Doubles doubles, std::string* out) {
  TextWriter(doubles, out).Root(message);
}

}  // namespace withy
