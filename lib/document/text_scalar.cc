#include "text_scalar.h"

#include <string>
#include <string_view>
#include <utility>

#include "absl/strings/str_cat.h"
#include "bench_value.h"
#include "number_text.h"
#include "reading_codes.h"
#include "utf8.h"

namespace withy {

using google::protobuf::FieldDescriptor;

bool TextScalarReader::Read(bool in_list) {
  const std::uint32_t offset = cursor_.token().offset;
  const bool negative = cursor_.TakeIf('-');
  switch (cursor_.token().kind) {
    case TokenKind::kString:
      if (!negative && sink_.trail().field()->type == FieldDescriptor::CPPTYPE_STRING) return ReadText(), true;
      break;
    case TokenKind::kNumber:
      if (ReadNumber(negative, offset, in_list)) return true;
      break;
    case TokenKind::kIdentifier:
      if (!negative && ReadWord()) return true;
      break;
    default:
      return false;
  }
  sink_.BadValue(offset, negative ? absl::StrCat("`-", std::string(cursor_.text()), "`") : cursor_.Found());
  cursor_.TakeAtom();
  return true;
}

void TextScalarReader::ReadText() {
  std::string value;
  for (; cursor_.token().kind == TokenKind::kString; cursor_.Advance()) {
    const Token& token = cursor_.token();
    if (!token.escaped) {
      value.append(cursor_.text().substr(1, token.length - 2));
      continue;
    }
    std::size_t bad = 0;
    if (!AppendUnquoted(cursor_.text(), &value, &bad)) {
      reading_.Report(kBadValue, sink_.trail().PathOfField(), token.offset + bad, "an escape that does not exist",
                      "A backslash itself is written \\\\.");
    } else if (!IsUtf8(value)) {
      reading_.Report(kNotUtf8, sink_.trail().PathOfField(), token.offset, "the escapes do not give valid UTF-8",
                      "Write the characters themselves, or \\u and four hexadecimal digits.");
      value.clear();
    }
  }
  sink_.SetString(std::move(value));
}

bool TextScalarReader::ReadNumber(bool negative, std::uint32_t offset, bool in_list) {
  const std::string_view text = cursor_.text();
  switch (sink_.trail().field()->type) {
    case FieldDescriptor::CPPTYPE_DOUBLE:
    case FieldDescriptor::CPPTYPE_FLOAT:
      ReadDouble(negative, offset, in_list);
      return true;
    case FieldDescriptor::CPPTYPE_BOOL:
      if (negative || (text != "0" && text != "1")) return false;
      sink_.SetBool(text == "1");
      break;
    case FieldDescriptor::CPPTYPE_STRING:
      return false;
    default:
      if (const auto whole = ParseWhole(text, /*decimal_only=*/false)) {
        sink_.SetInteger(negative, *whole, offset);
      } else {
        sink_.BadNumber(offset, absl::StrCat(cursor_.Found(), " is not a whole number of at most 64 bits"));
      }
  }
  cursor_.Advance();
  return true;
}

void TextScalarReader::ReadDouble(bool negative, std::uint32_t offset, bool in_list) {
  std::string_view digits = cursor_.text();
  const bool hexadecimal = digits.size() > 1 && (digits[1] | 0x20) == 'x';
  if (!hexadecimal && (digits.ends_with('f') || digits.ends_with('F'))) digits.remove_suffix(1);
  double value = 0;
  const NumberProblem problem = ParseDecimal(digits, &value);
  const std::string_view after = reading_.bytes().substr(cursor_.token().end());
  const bool decimal_comma = !in_list && after.size() > 1 && after[0] == ',' && after[1] >= '0' && after[1] <= '9';
  if (decimal_comma) {
    sink_.BadNumber(offset, "a number with a comma in it", "Write a decimal point: 12.5, not 12,5.");
    for (int i = 0; i < 3; ++i) cursor_.Advance();  // the comma and what follows it are passed as part of the value
    return;
  } else if (problem == NumberProblem::kNone) {
    sink_.SetDouble(negative ? -value : value);
  } else if (problem == NumberProblem::kNotANumber && !in_list) {
    return RefuseBenchNumber(offset);
  } else if (problem == NumberProblem::kNotANumber) {
    sink_.BadNumber(offset, absl::StrCat(cursor_.Found(), " is not a decimal number"));
  } else {
    const char* how = problem == NumberProblem::kTooLarge ? " is larger" : " is smaller";
    sink_.BadNumber(offset, absl::StrCat(cursor_.Found(), how, " than any number that can be kept"));
  }
  cursor_.Advance();
  if (!in_list && !cursor_.AtCloser() && cursor_.NumberGoesOn()) RefuseBenchNumber(offset);
}

void TextScalarReader::RefuseBenchNumber(std::uint32_t offset) {
  const std::string_view written = BenchText(reading_.bytes().substr(offset));
  const FieldTrail& trail = sink_.trail();
  reading_.ReportHabit("bench number", kBadNumber, trail.PathOfField(), offset,
                       absl::StrCat("`", std::string(written), "` is not a decimal number"),
                       HowToWriteNumber(trail.info().descriptor->name(), trail.field()->name, written));
  cursor_.MoveTo(offset + written.size());
}

bool TextScalarReader::ReadWord() {
  const std::string_view word = cursor_.text();
  const FieldDescriptor::CppType type = sink_.trail().field()->type;
  if (type == FieldDescriptor::CPPTYPE_ENUM) {
    sink_.SetEnumName(word, cursor_.token().offset);
  } else if (type == FieldDescriptor::CPPTYPE_BOOL) {
    const bool is_true = word == "true" || word == "True" || word == "t";
    if (!is_true && word != "false" && word != "False" && word != "f") return false;
    sink_.SetBool(is_true);
  } else {
    return false;
  }
  cursor_.Advance();
  return true;
}

}  // namespace withy
