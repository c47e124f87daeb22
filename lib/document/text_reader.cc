#include "text_reader.h"

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "absl/strings/str_cat.h"
#include "field_sink.h"
#include "field_words.h"
#include "number_text.h"
#include "reading_codes.h"
#include "text_lexer.h"
#include "text_numbered.h"
#include "utf8.h"

namespace withy {
namespace {

using google::protobuf::FieldDescriptor;

// The reader walks fields in a loop, not by recursion: how deep a file nests is the sink's to bound, never the stack's.
class TextReader {
 public:
  TextReader(Reading* reading, google::protobuf::Message* root)
      : reading_(*reading), lexer_(reading->bytes()), sink_(root, reading) {}

  std::size_t Run() {
    Advance();
    while (!reading_.stopped()) {
      if (token_.kind == TokenKind::kEnd) {
        if (!blocks_.empty()) ReportUnclosed(blocks_.back().offset);
        break;
      }
      if (token_.Is('}') || token_.Is('>')) {
        CloseBlock();
      } else {
        ReadField();
      }
    }
    return lexer_.comments();
  }

 private:
  struct Block {
    char closer;
    bool in_list;  // one of the messages of `name: [{...}, {...}]`
    std::uint32_t offset;
  };

  void Advance() { token_ = lexer_.Next(); }
  std::string_view text() const { return lexer_.Text(token_); }
  bool AtOpener() const { return token_.Is('{') || token_.Is('<'); }
  bool TakeIf(char symbol) {
    if (!token_.Is(symbol)) return false;
    Advance();
    return true;
  }
  void SkipSeparator() {
    if (token_.Is(',') || token_.Is(';')) Advance();
  }

  // --- errors of grammar ---

  // What stands at the token, for a message.
  std::string Found() const {
    if (token_.kind == TokenKind::kEnd) return "the end of the file";
    constexpr std::size_t kShown = 40;
    std::string shown(text().substr(0, kShown));
    while (!IsUtf8(shown)) shown.pop_back();
    if (token_.kind == TokenKind::kInvalid && token_.symbol != 0) return "text without its closing quote";
    return absl::StrCat("`", shown, text().size() > shown.size() ? "...`" : "`");
  }

  void Unexpected(std::string_view expected) {
    const bool ended = token_.kind == TokenKind::kEnd;
    const bool unclosed = token_.kind == TokenKind::kInvalid && token_.symbol != 0;
    reading_.Report(ended ? kTruncated : kSyntax, sink_.trail().PathOfMessage(), token_.offset,
                    absl::StrCat("expected ", std::string(expected), ", found ", Found()),
                    unclosed ? "Close the quote on the same line; a line break inside text is written \\n." : "");
    Resynchronise();
  }

  void ReportUnclosed(std::uint32_t opened) {
    reading_.Report(kTruncated, sink_.trail().PathOfMessage(), token_.offset,
                    absl::StrCat("the file ends before `", std::string(reading_.bytes().substr(opened, 1)), "` of ",
                                 reading_.PlaceOf(opened), " is closed"));
  }

  // Goes to where a field may begin again: a closing brace, or a name that is the first thing on its line.
  void Resynchronise() {
    for (; token_.kind != TokenKind::kEnd && !token_.Is('}') && !token_.Is('>'); Advance()) {
      const bool first_on_line = lexer_.Trivia(token_).find('\n') != std::string_view::npos;
      if (token_.kind == TokenKind::kIdentifier && first_on_line) return;
    }
  }

  // --- fields ---

  void ReadField() {
    if (token_.kind == TokenKind::kNumber) return ReadNumbered();
    if (token_.Is('[')) return RefuseExtension();
    if (token_.kind != TokenKind::kIdentifier) return Unexpected("the name of a field");
    const Token name = token_;
    const FieldInfo* field = sink_.Find(text());
    Advance();
    if (field == nullptr) {
      sink_.UnknownName(lexer_.Text(name), name.offset);
      if (!token_.Is(':') && !AtOpener()) return Unexpected("`:` or `{` after the name");
      SkipValue();
    } else if (field->message != nullptr) {
      return ReadMessage(*field, name.offset);  // its separator follows the closing brace
    } else {
      ReadScalars(*field, name.offset);
    }
    SkipSeparator();
  }

  void RefuseExtension() {
    reading_.Report(kSyntax, sink_.trail().PathOfMessage(), token_.offset,
                    "a name in square brackets is not part of this format",
                    "Data of plugins goes into `extensions { key: \"plugin\" value { ... } }`.");
    SkipBracketed();
    SkipValue();
    SkipSeparator();
  }

  void ReadMessage(const FieldInfo& field, std::uint32_t name_offset) {
    TakeIf(':');
    if (token_.Is('[')) {
      if (!field.repeated) return RefuseValue(field, name_offset, "a list");
      Advance();
      if (TakeIf(']')) return SkipSeparator();
      return OpenListItem(field);
    }
    if (!AtOpener()) return RefuseValue(field, name_offset, "");
    Open(field, name_offset, /*in_list=*/false);
  }

  void OpenListItem(const FieldInfo& field) {
    if (!AtOpener()) return Unexpected("`{`: each item of this list is a message");
    Open(field, token_.offset, /*in_list=*/true);
  }

  // At the opening brace of a message of `field`, which begins at `offset`.
  void Open(const FieldInfo& field, std::uint32_t offset, bool in_list) {
    if (!sink_.trail().Begin(field, offset)) {
      SkipBracketed();
      return SkipSeparator();
    }
    if (!sink_.Open(offset)) return;
    blocks_.push_back({token_.Is('{') ? '}' : '>', in_list, token_.offset});
    Advance();
  }

  void CloseBlock() {
    if (blocks_.empty()) {
      reading_.Report(kSyntax, {}, token_.offset, absl::StrCat(Found(), " closes nothing"),
                      "Remove it, or look for a brace that was closed too early above.");
      return Advance();
    }
    const Block block = blocks_.back();
    if (!token_.Is(block.closer)) {
      reading_.Report(kSyntax, sink_.trail().PathOfMessage(), token_.offset,
                      absl::StrCat("expected `", std::string(1, block.closer), "` for what was opened at ",
                                   reading_.PlaceOf(block.offset), ", found ", Found()));
    }
    blocks_.pop_back();
    sink_.Close(token_.offset);
    Advance();
    if (block.in_list && TakeIf(',')) return OpenListItem(*sink_.trail().field());
    if (block.in_list && !TakeIf(']')) return Unexpected("`,` or `]` after an item of the list");
    SkipSeparator();
  }

  // --- scalar values ---

  void ReadScalars(const FieldInfo& field, std::uint32_t name_offset) {
    if (AtOpener()) return RefuseValue(field, name_offset, "fields in braces");
    if (!TakeIf(':')) return Unexpected(absl::StrCat("`:` after `", std::string(field.name), "`"));
    if (!token_.Is('[')) {
      if (!sink_.trail().Begin(field, name_offset)) return SkipValue();
      return ReadScalar(field, /*in_list=*/false);
    }
    if (!field.repeated) return RefuseValue(field, name_offset, "a list");
    Advance();
    if (TakeIf(']')) return;
    do {
      sink_.trail().Begin(field, token_.offset);
      ReadScalar(field, /*in_list=*/true);
    } while (!reading_.stopped() && TakeIf(','));
    if (!TakeIf(']')) Unexpected("`,` or `]` after an item of the list");
  }

  void ReadScalar(const FieldInfo& field, bool in_list) {
    if (AtOpener() || token_.Is('[')) return RefuseBegun(AtOpener() ? "fields in braces" : "a list");
    const Token sign = token_;
    const bool negative = TakeIf('-');
    const std::uint32_t offset = negative ? sign.offset : token_.offset;
    switch (token_.kind) {
      case TokenKind::kString:
        if (field.type == FieldDescriptor::CPPTYPE_STRING && !negative) return ReadString();
        break;
      case TokenKind::kNumber:
        if (ReadNumber(field, negative, offset, in_list)) return;
        break;
      case TokenKind::kIdentifier:
        if (ReadWord(field, negative, offset)) return;
        break;
      default:
        return Unexpected(absl::StrCat("a value for `", std::string(field.name), "`"));
    }
    sink_.BadValue(offset, negative ? absl::StrCat("`-", std::string(text()), "`") : Found());
    SkipAtom();
  }

  void ReadString() {
    std::string value;
    for (; token_.kind == TokenKind::kString; Advance()) {
      if (!token_.escaped) {
        value.append(text().substr(1, text().size() - 2));
        continue;
      }
      std::size_t bad = 0;
      if (!AppendUnquoted(text(), &value, &bad)) {
        reading_.Report(kBadValue, sink_.trail().PathOfField(), token_.offset + bad, "an escape that does not exist",
                        "A backslash itself is written \\\\.");
      } else if (!IsUtf8(value)) {
        reading_.Report(kNotUtf8, sink_.trail().PathOfField(), token_.offset, "the escapes do not give valid UTF-8",
                        "Write the characters themselves, or \\u and four hexadecimal digits.");
        value.clear();
      }
    }
    sink_.SetString(std::move(value));
  }

  // False where the field takes no number.
  bool ReadNumber(const FieldInfo& field, bool negative, std::uint32_t offset, bool in_list) {
    switch (field.type) {
      case FieldDescriptor::CPPTYPE_DOUBLE:
      case FieldDescriptor::CPPTYPE_FLOAT:
        ReadDouble(negative, offset, in_list);
        break;
      case FieldDescriptor::CPPTYPE_BOOL:
        if (negative || (text() != "0" && text() != "1")) return false;
        sink_.SetBool(text() == "1");
        break;
      case FieldDescriptor::CPPTYPE_STRING:
        return false;
      default:
        if (const auto whole = ParseWhole(text(), /*decimal_only=*/false)) {
          sink_.SetInteger(negative, *whole, offset);
        } else {
          sink_.BadNumber(offset, absl::StrCat(Found(), " is not a whole number of at most 64 bits"));
        }
    }
    Advance();
    return true;
  }

  void ReadDouble(bool negative, std::uint32_t offset, bool in_list) {
    std::string_view digits = text();
    const bool hexadecimal = digits.size() > 1 && (digits[1] | 0x20) == 'x';
    if (!hexadecimal && (digits.ends_with('f') || digits.ends_with('F'))) digits.remove_suffix(1);
    double value = 0;
    const NumberProblem problem = ParseDecimal(digits, &value);
    const std::string_view after = reading_.bytes().substr(token_.end());
    const bool decimal_comma = !in_list && after.size() > 1 && after[0] == ',' && after[1] >= '0' && after[1] <= '9';
    if (problem == NumberProblem::kNone && !decimal_comma) return sink_.SetDouble(negative ? -value : value);
    if (decimal_comma) {
      sink_.BadNumber(offset, "a number with a comma in it", "Write a decimal point: 12.5, not 12,5.");
      Advance();  // the comma and what follows it are skipped as part of the value
      Advance();
    } else if (problem == NumberProblem::kNotANumber) {
      sink_.BadNumber(offset, absl::StrCat(Found(), " is not a decimal number"));
    } else {
      sink_.BadNumber(offset, absl::StrCat(Found(), problem == NumberProblem::kTooLarge ? " is larger" : " is smaller",
                                           " than any number that can be kept"));
    }
  }

  // False where the field takes no bare word.
  bool ReadWord(const FieldInfo& field, bool negative, std::uint32_t offset) {
    const std::string_view word = text();
    if (field.type == FieldDescriptor::CPPTYPE_ENUM && !negative) {
      sink_.SetEnumName(word, offset);
    } else if (field.type == FieldDescriptor::CPPTYPE_BOOL && !negative) {
      const bool is_true = word == "true" || word == "True" || word == "t";
      if (!is_true && word != "false" && word != "False" && word != "f") return false;
      sink_.SetBool(is_true);
    } else {
      return false;
    }
    Advance();
    return true;
  }

  // --- values that are not understood ---

  // Reports the value at the token as no value of `field`, and skips it.
  void RefuseValue(const FieldInfo& field, std::uint32_t name_offset, std::string_view found) {
    const bool nothing = token_.kind == TokenKind::kEnd || token_.kind == TokenKind::kInvalid ||
                         (token_.kind == TokenKind::kSymbol && !AtOpener() && !token_.Is('[') && !token_.Is('-'));
    if (nothing)
      return Unexpected(absl::StrCat(Expected(field, Form::kText), " after `", std::string(field.name), "`"));
    if (!sink_.trail().Begin(field, name_offset)) return SkipValue();
    RefuseBegun(found.empty() ? Found() : std::string(found));
    SkipSeparator();
  }

  void RefuseBegun(std::string_view found) {
    sink_.BadValue(token_.offset, found);
    SkipValue();
  }

  // Skips a value of whatever kind, with the colon before it.
  void SkipValue() {
    TakeIf(':');
    if (AtOpener() || token_.Is('[')) return SkipBracketed();
    TakeIf('-');
    SkipAtom();
  }

  void SkipAtom() {
    if (token_.kind == TokenKind::kString) {
      while (token_.kind == TokenKind::kString) Advance();
    } else if (token_.kind == TokenKind::kIdentifier || token_.kind == TokenKind::kNumber) {
      Advance();
    } else {
      Unexpected("a value");
    }
  }

  void SkipBracketed() {
    const std::uint32_t begin = token_.offset;
    std::string closers;
    do {
      switch (token_.symbol) {
        case '{':
          closers += '}';
          break;
        case '<':
          closers += '>';
          break;
        case '[':
          closers += ']';
          break;
        case '}':
        case '>':
        case ']':
          if (!token_.Is(closers.back())) {
            return Unexpected(absl::StrCat("`", closers.substr(closers.size() - 1), "`"));
          }
          closers.pop_back();
          break;
        default:
          break;
      }
      if (token_.kind == TokenKind::kEnd) return ReportUnclosed(begin);
      if (token_.kind == TokenKind::kInvalid) return Unexpected("a value");
      if (reading_.IsTooDeep(sink_.trail().depth() + closers.size())) {
        return reading_.ReportTooDeep(sink_.trail().PathOfMessage(), token_.offset);
      }
      Advance();
    } while (!closers.empty());
  }

  // --- fields known by number only ---

  void ReadNumbered() {
    const Token name = token_;
    const std::optional<std::uint64_t> number = ParseWhole(text(), /*decimal_only=*/true);
    if (!number || *number == 0 || *number > FieldDescriptor::kMaxNumber) return Unexpected("the name of a field");
    Advance();
    if (const FieldInfo* known = sink_.trail().info().FindNumber(static_cast<std::uint32_t>(*number))) {
      reading_.ReportUnknown(kUnknownField, sink_.trail().PathOfMessage().Field(lexer_.Text(name)), name.offset, false,
                             absl::StrCat("field ", *number, " is given by its number"),
                             absl::StrCat("Write its name: `", std::string(known->name), "`."));
      SkipValue();
      return SkipSeparator();
    }
    reading_.CountItem(name.offset);
    reading_.ReportUnknown(kUnknownNumber, sink_.trail().PathOfMessage().Field(lexer_.Text(name)), name.offset, true,
                           absl::StrCat("`", sink_.trail().info().descriptor->name(), "` has no field ", *number,
                                        " in this version; it is kept"));
    NumberedValueReader values(&lexer_, &reading_, sink_.trail().depth());
    if (!values.Read(static_cast<int>(*number), &token_, sink_.UnknownFields())) {
      return Unexpected("a number, text in quotes or fields in braces");
    }
    SkipSeparator();
  }

  Reading& reading_;
  TextLexer lexer_;
  FieldSink sink_;
  Token token_;
  std::vector<Block> blocks_;
};

}  // namespace

std::size_t ReadText(Reading* reading, google::protobuf::Message* root) {
  return TextReader(reading, root).Run();
}

}  // namespace withy
