#include "text_numbered.h"

#include <optional>
#include <string>

#include "google/protobuf/descriptor.h"
#include "number_text.h"

namespace withy {

using google::protobuf::UnknownFieldSet;

bool NumberedValueReader::Read(int number, UnknownFieldSet* fields) {
  const bool colon = cursor_.TakeIf(':');
  if (cursor_.AtOpener()) {
    if (reading_.IsTooDeep(++depth_)) {
      reading_.ReportTooDeep({}, cursor_.token().offset);
      return true;
    }
    const bool read = ReadGroup(fields->AddGroup(number));
    --depth_;
    return read;
  }
  if (!colon) return false;
  if (cursor_.token().kind == TokenKind::kString) return ReadText(number, fields);
  if (cursor_.token().kind != TokenKind::kNumber || !ReadNumber(number, fields)) return false;
  cursor_.Advance();
  return true;
}

bool NumberedValueReader::ReadNumber(int number, UnknownFieldSet* fields) {
  const std::string_view text = cursor_.text();
  const std::optional<std::uint64_t> value = ParseWhole(text, /*decimal_only=*/false);
  if (!value) return false;
  const bool hexadecimal = text.starts_with("0x");
  if (hexadecimal && text.size() == 10) {
    fields->AddFixed32(number, static_cast<std::uint32_t>(*value));
  } else if (hexadecimal && text.size() == 18) {
    fields->AddFixed64(number, *value);
  } else {
    fields->AddVarint(number, *value);
  }
  return true;
}

bool NumberedValueReader::ReadText(int number, UnknownFieldSet* fields) {
  std::string value;
  for (; cursor_.token().kind == TokenKind::kString; cursor_.Advance()) {
    std::size_t bad = 0;
    if (!AppendUnquoted(cursor_.text(), &value, &bad)) return false;
  }
  fields->AddLengthDelimited(number, value);
  return true;
}

bool NumberedValueReader::ReadGroup(UnknownFieldSet* fields) {
  const char closer = cursor_.At('{') ? '}' : '>';
  cursor_.Advance();
  while (!cursor_.At(closer)) {
    if (cursor_.token().kind != TokenKind::kNumber) return false;
    const std::optional<std::uint64_t> number = ParseWhole(cursor_.text(), /*decimal_only=*/true);
    if (!number || *number == 0 || *number > google::protobuf::FieldDescriptor::kMaxNumber) return false;
    reading_.CountItem(cursor_.token().offset);
    cursor_.Advance();
    if (!Read(static_cast<int>(*number), fields)) return false;
    if (reading_.stopped()) return true;
    cursor_.TakeSeparator();
  }
  cursor_.Advance();
  return true;
}

}  // namespace withy
