#include "text_numbered.h"

#include <optional>
#include <string>

#include "google/protobuf/descriptor.h"
#include "number_text.h"

namespace withy {

using google::protobuf::UnknownFieldSet;

bool NumberedValueReader::Read(int number, Token* token, UnknownFieldSet* fields) {
  const bool colon = token->Is(':');
  if (colon) *token = lexer_.Next();
  if (token->Is('{') || token->Is('<')) {
    if (reading_.IsTooDeep(++depth_)) {
      reading_.ReportTooDeep({}, token->offset);
      return true;
    }
    const bool read = ReadGroup(token, fields->AddGroup(number));
    --depth_;
    return read;
  }
  if (!colon) return false;
  if (token->kind == TokenKind::kString) return ReadText(number, token, fields);
  if (token->kind != TokenKind::kNumber || !ReadNumber(number, *token, fields)) return false;
  *token = lexer_.Next();
  return true;
}

bool NumberedValueReader::ReadNumber(int number, const Token& token, UnknownFieldSet* fields) {
  const std::string_view text = lexer_.Text(token);
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

bool NumberedValueReader::ReadText(int number, Token* token, UnknownFieldSet* fields) {
  std::string value;
  for (; token->kind == TokenKind::kString; *token = lexer_.Next()) {
    std::size_t bad = 0;
    if (!AppendUnquoted(lexer_.Text(*token), &value, &bad)) return false;
  }
  fields->AddLengthDelimited(number, value);
  return true;
}

bool NumberedValueReader::ReadGroup(Token* token, UnknownFieldSet* fields) {
  const char closer = token->Is('{') ? '}' : '>';
  *token = lexer_.Next();
  while (!token->Is(closer)) {
    if (token->kind != TokenKind::kNumber) return false;
    const std::optional<std::uint64_t> number = ParseWhole(lexer_.Text(*token), /*decimal_only=*/true);
    if (!number || *number == 0 || *number > google::protobuf::FieldDescriptor::kMaxNumber) return false;
    reading_.CountItem(token->offset);
    *token = lexer_.Next();
    if (!Read(static_cast<int>(*number), token, fields)) return false;
    if (reading_.stopped()) return true;
    if (token->Is(',') || token->Is(';')) *token = lexer_.Next();
  }
  *token = lexer_.Next();
  return true;
}

}  // namespace withy
