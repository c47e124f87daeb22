#include "written_text.h"

#include <charconv>
#include <vector>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "google/protobuf/descriptor.h"
#include "withy/document/path_cursor.h"
#include "withy/review/terminal_text.h"

namespace withy {
namespace {

using google::protobuf::FieldDescriptor;
using google::protobuf::Message;

// Of a message that is no quantity.
constexpr std::size_t kMostFields = 3;

bool IsQuantity(const Message& message) {
  return message.GetDescriptor()->FindOneofByName("unit") != nullptr;
}

std::string TextOfMessage(const Message& message);

std::string TextOfField(const Message& owner, const FieldDescriptor& field) {
  const auto& reflection = *owner.GetReflection();
  if (field.is_repeated()) return Counted(reflection.FieldSize(owner, &field), "row");
  switch (field.cpp_type()) {
    case FieldDescriptor::CPPTYPE_MESSAGE:
      return TextOfMessage(reflection.GetMessage(owner, &field));
    case FieldDescriptor::CPPTYPE_ENUM:
      return reflection.GetEnum(owner, &field)->name();
    case FieldDescriptor::CPPTYPE_STRING:
      return reflection.GetString(owner, &field);
    case FieldDescriptor::CPPTYPE_BOOL:
      return reflection.GetBool(owner, &field) ? "yes" : "no";
    case FieldDescriptor::CPPTYPE_UINT32:
      return absl::StrCat(reflection.GetUInt32(owner, &field));
    case FieldDescriptor::CPPTYPE_DOUBLE:
      return ShortNumber(reflection.GetDouble(owner, &field));
    default:
      return "";
  }
}

std::string TextOfQuantity(const Message& quantity) {
  const auto& reflection = *quantity.GetReflection();
  const auto* unit = reflection.GetOneofFieldDescriptor(quantity, quantity.GetDescriptor()->FindOneofByName("unit"));
  if (unit == nullptr) return "";
  std::string text = TextOfField(quantity, *unit);
  const FieldDescriptor* plus_minus = quantity.GetDescriptor()->FindFieldByName("plus_minus");
  if (plus_minus != nullptr && reflection.HasField(quantity, plus_minus)) {
    absl::StrAppend(&text, " ± ", TextOfField(quantity, *plus_minus));
  }
  return absl::StrCat(text, " ", unit->name());
}

// "after cap, gap 2 mm".
std::string TextOfMessage(const Message& message) {
  if (IsQuantity(message)) return TextOfQuantity(message);
  std::vector<const FieldDescriptor*> fields;
  message.GetReflection()->ListFields(message, &fields);
  std::vector<std::string> parts;
  for (const FieldDescriptor* field : fields) {
    if (parts.size() == kMostFields) {
      parts.push_back("...");
      break;
    }
    parts.push_back(absl::StrCat(field->name(), " ", TextOfField(message, *field)));
  }
  return absl::StrJoin(parts, ", ");
}

// The `source` that a quantity gives, or the `reading` of a table that a list of rows belongs to.
std::string SourceOf(const Message& message) {
  const FieldDescriptor* field = message.GetDescriptor()->FindFieldByName("source");
  if (field == nullptr || field->cpp_type() != FieldDescriptor::CPPTYPE_ENUM) return "";
  switch (message.GetReflection()->GetEnumValue(message, field)) {
    case v1::Source::MEASURED:
      return "measured";
    case v1::Source::CATALOGUE:
      return "catalogue";
    case v1::Source::ESTIMATED:
      return "estimated";
    default:
      return "";
  }
}

std::string SourceOfRows(const Message& table) {
  const FieldDescriptor* reading = table.GetDescriptor()->FindFieldByName("reading");
  return reading == nullptr ? "" : SourceOf(table.GetReflection()->GetMessage(table, reading));
}

int LineOf(const Document& document, const FieldPath& path) {
  const auto position = document.positions.Find(path, document.design, document.bytes, document.form == Form::kBinary);
  return position ? position->line : 0;
}

}  // namespace

std::string ShortNumber(double value) {
  char digits[32];
  const auto end = std::to_chars(digits, digits + sizeof digits, value);
  return std::string(digits, end.ptr);
}

Written WrittenAt(const Document& document, const FieldPath& path) {
  PathCursor cursor(document.design);
  const Message* owner = &document.design;  // of the field that was stepped on last
  for (const FieldPath::Step& step : path.steps()) {
    if (!step.field.empty() && cursor.field() != nullptr) owner = cursor.message();
    if (!cursor.Advance(step)) return {};
  }
  Written written;
  const bool list = cursor.field() != nullptr && cursor.field()->is_repeated() && cursor.index() < 0;
  if (owner == nullptr || cursor.field() == nullptr) return {};
  if (list) {
    if (owner->GetReflection()->FieldSize(*owner, cursor.field()) == 0) return {};
    written.text = TextOfField(*owner, *cursor.field());
    written.source = SourceOfRows(*owner);
  } else if (cursor.message() != nullptr) {
    written.text = TextOfMessage(*cursor.message());
    written.source = SourceOf(*cursor.message());
  } else if (cursor.index() < 0) {
    if (cursor.field()->has_presence() && !owner->GetReflection()->HasField(*owner, cursor.field())) return {};
    written.text = TextOfField(*owner, *cursor.field());
  }
  if (written.text.empty()) return {};
  const bool logged = path.steps().front().field == "log";
  if (written.source.empty()) written.source = logged ? "measured" : "plan";
  written.line = LineOf(document, list ? path.Item("", 0) : path);
  return written;
}

}  // namespace withy
