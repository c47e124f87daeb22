#include "text_reader.h"

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "absl/strings/str_cat.h"
#include "bench_value.h"
#include "field_sink.h"
#include "field_words.h"
#include "number_text.h"
#include "reading_codes.h"
#include "text_cursor.h"
#include "text_layout.h"
#include "text_numbered.h"
#include "text_scalar.h"
#include "withy/units/unit.h"

namespace withy {
namespace {

using google::protobuf::FieldDescriptor;

// The reader walks fields in a loop, not by recursion: how deep a file nests is the sink's to bound, never the stack's.
class TextReader {
 public:
  TextReader(Reading* reading, google::protobuf::Message* root)
      : reading_(*reading), cursor_(reading->bytes()), sink_(root, reading), scalars_(&cursor_, &sink_, reading) {}

  std::size_t Run() {
    while (!reading_.stopped()) {
      if (cursor_.AtEnd()) {
        if (!blocks_.empty()) ReportUnclosed(blocks_.back().offset);
        break;
      }
      if (cursor_.AtCloser()) {
        CloseBlock();
      } else {
        ReadField();
      }
    }
    return cursor_.comments();
  }

 private:
  struct Block {
    char closer;
    bool in_list;  // one of the messages of `name: [{...}, {...}]`
    std::uint32_t offset;
    bool broken = false;  // an error of grammar stands in it, which may have swallowed its end
  };

  // --- errors of grammar ---

  void Unexpected(std::string_view expected) {
    if (cursor_.AtTypographicQuote()) return RefuseTypographicText();
    const bool ended = cursor_.AtEnd();
    const bool unclosed = cursor_.AtUnclosedText();
    if (!blocks_.empty()) blocks_.back().broken = true;
    reading_.Report(ended ? kTruncated : kSyntax, sink_.trail().PathOfMessage(), cursor_.token().offset,
                    absl::StrCat("expected ", std::string(expected), ", found ", cursor_.Found()),
                    unclosed ? "Close the quote on the same line; a line break inside text is written \\n." : "");
    Resynchronise();
  }

  void ReportUnclosed(std::uint32_t opened) {
    reading_.Report(kTruncated, sink_.trail().PathOfMessage(), cursor_.token().offset,
                    absl::StrCat("the file ends before `", std::string(reading_.bytes().substr(opened, 1)), "` of ",
                                 reading_.PlaceOf(opened), " is closed"));
  }

  // Text in the quotes of a word processor: passed up to its end, so that it costs one error.
  void RefuseTypographicText() {
    reading_.ReportHabit("typographic quote", kSyntax, sink_.trail().PathOfMessage(), cursor_.token().offset,
                         absl::StrCat("text begins with the typographic quote ", cursor_.Found()),
                         "Write straight quotes, \"like this\"; switch off smart quotes in the editor.");
    cursor_.PassTypographicText();
    cursor_.TakeSeparator();
  }

  // The colon before a value; an equals sign is reported and taken for one.
  bool TakeColon() {
    return cursor_.TakeIf(':') || (cursor_.token().kind == TokenKind::kInvalid && TakeEqualsSign());
  }

  bool TakeEqualsSign() {
    if (cursor_.text() != "=") return false;
    reading_.ReportHabit("equals sign", kSyntax, sink_.trail().PathOfMessage(), cursor_.token().offset,
                         "an equals sign after a name", "Write a colon, `name: value`; before a brace, nothing.");
    cursor_.Advance();
    return true;
  }

  // Goes to where a field may begin again: a closing brace, or a name that is the first thing on its line.
  void Resynchronise() {
    for (; !cursor_.AtEnd() && !cursor_.AtCloser(); cursor_.Advance()) {
      if (cursor_.token().kind == TokenKind::kIdentifier && cursor_.FirstOnLine()) return;
    }
  }

  // --- fields ---

  void ReadField() {
    if (cursor_.token().kind == TokenKind::kNumber) return ReadNumbered();
    if (cursor_.At('[')) return RefuseExtension();
    if (cursor_.token().kind != TokenKind::kIdentifier) return Unexpected("the name of a field");
    const Token name = cursor_.token();
    const FieldInfo* field = sink_.Find(cursor_.text());
    if (field == nullptr && CloseForgotten()) field = sink_.Find(cursor_.text());
    cursor_.Advance();
    if (field == nullptr) {
      SkipUnknown(name);
    } else if (field->message != nullptr) {
      return ReadMessage(*field, name.offset);  // its separator follows the closing brace
    } else {
      ReadScalars(*field, name.offset);
    }
    cursor_.TakeSeparator();
  }

  // After a name that the open message does not have.
  void SkipUnknown(const Token& name) {
    const std::string_view word = cursor_.TextOf(name);
    const bool colon = TakeColon();
    const std::uint32_t begin = cursor_.token().offset;
    const bool quantity = colon && InQuantity() && cursor_.AtNumber();
    const std::string_view value = quantity ? BenchText(reading_.bytes().substr(begin)) : std::string_view();
    sink_.UnknownName(word, name.offset, value);
    if (quantity) return cursor_.MoveTo(begin + value.size());
    if (!colon && !cursor_.AtOpener()) return Unexpected("`:` or `{` after the name");
    SkipValue();
  }

  bool InQuantity() const { return !UnitsOf(sink_.trail().info().descriptor->name()).empty(); }

  // At a name that the open message does not have: whether an outer one does, and the open ones should have been closed
  // before. So it is where the name's line is indented no more than the line on which they were opened, or where
  // the message was opened on the name's own line and that opens more braces than it closes. Then they are closed.
  bool CloseForgotten() {
    const std::string_view bytes = reading_.bytes();
    std::size_t count = 0;
    for (std::size_t n = 1; n <= blocks_.size() && !blocks_[blocks_.size() - n].in_list; ++n) {
      const std::uint32_t opened = blocks_[blocks_.size() - n].offset, name = cursor_.token().offset;
      const bool forgotten = cursor_.FirstOnLine()
                                 ? IndentOf(bytes, name) <= IndentOf(bytes, opened)
                                 : n == 1 && IsOnLineThatStaysOpen(bytes, opened, name);
      if (!forgotten) break;
      if (sink_.trail().Outer(n).Find(cursor_.text()) != nullptr) count = n;
    }
    if (count == 0) return false;
    ReportForgotten(count);
    for (; count > 0; --count) {
      sink_.Close(cursor_.token().offset);
      blocks_.pop_back();
    }
    return true;
  }

  void ReportForgotten(std::size_t count) {
    bool told = false;
    for (std::size_t n = 1; n <= count; ++n) told = told || blocks_[blocks_.size() - n].broken;
    if (told) return;
    const Block& first = blocks_[blocks_.size() - count];
    reading_.Report(kSyntax, sink_.trail().PathOfMessage(), cursor_.token().offset,
                    count == 1 ? absl::StrCat("a closing brace is missing before ", cursor_.Found())
                               : absl::StrCat(count, " closing braces are missing before ", cursor_.Found()),
                    absl::StrCat("Close what was opened at ", reading_.PlaceOf(first.offset), "."));
  }

  void RefuseExtension() {
    reading_.Report(kSyntax, sink_.trail().PathOfMessage(), cursor_.token().offset,
                    "a name in square brackets is not part of this format",
                    "Data of plugins goes into `extensions { key: \"plugin\" value { ... } }`.");
    SkipBracketed();
    SkipValue();
    cursor_.TakeSeparator();
  }

  void ReadMessage(const FieldInfo& field, std::uint32_t name_offset) {
    if (!cursor_.AtOpener()) TakeColon();
    if (cursor_.At('[')) {
      if (!field.repeated) return RefuseValue(field, name_offset, "a list");
      cursor_.Advance();
      if (cursor_.TakeIf(']')) return cursor_.TakeSeparator();
      return OpenListItem(field);
    }
    if (!cursor_.AtOpener()) return RefuseValue(field, name_offset, "");
    Open(field, name_offset, /*in_list=*/false);
  }

  void OpenListItem(const FieldInfo& field) {
    if (!cursor_.AtOpener()) return Unexpected("`{`: each item of this list is a message");
    Open(field, cursor_.token().offset, /*in_list=*/true);
  }

  // At the opening brace of a message of `field`, which begins at `offset`.
  void Open(const FieldInfo& field, std::uint32_t offset, bool in_list) {
    if (!sink_.trail().Begin(field, offset)) {
      SkipBracketed();
      return cursor_.TakeSeparator();
    }
    if (!sink_.Open(offset)) return;
    blocks_.push_back({cursor_.At('{') ? '}' : '>', in_list, cursor_.token().offset});
    cursor_.Advance();
  }

  void CloseBlock() {
    if (blocks_.empty()) {
      reading_.Report(kSyntax, {}, cursor_.token().offset, absl::StrCat(cursor_.Found(), " closes nothing"),
                      "Remove it, or look for a brace that was closed too early above.");
      return cursor_.Advance();
    }
    const Block block = blocks_.back();
    if (!cursor_.At(block.closer)) {
      reading_.Report(kSyntax, sink_.trail().PathOfMessage(), cursor_.token().offset,
                      absl::StrCat("expected `", std::string(1, block.closer), "` for what was opened at ",
                                   reading_.PlaceOf(block.offset), ", found ", cursor_.Found()));
    }
    blocks_.pop_back();
    sink_.Close(cursor_.token().offset);
    cursor_.Advance();
    if (block.in_list && cursor_.TakeIf(',')) return OpenListItem(*sink_.trail().field());
    if (block.in_list && !cursor_.TakeIf(']')) return Unexpected("`,` or `]` after an item of the list");
    cursor_.TakeSeparator();
  }

  // --- scalar values ---

  void ReadScalars(const FieldInfo& field, std::uint32_t name_offset) {
    if (cursor_.AtOpener()) return RefuseValue(field, name_offset, "fields in braces");
    if (!TakeColon()) return Unexpected(absl::StrCat("`:` after `", std::string(field.name), "`"));
    if (!cursor_.At('[')) {
      if (!sink_.trail().Begin(field, name_offset)) return SkipValue();
      return ReadScalar(field, /*in_list=*/false);
    }
    if (!field.repeated) return RefuseValue(field, name_offset, "a list");
    cursor_.Advance();
    if (cursor_.TakeIf(']')) return;
    do {
      sink_.trail().Begin(field, cursor_.token().offset);
      ReadScalar(field, /*in_list=*/true);
    } while (!reading_.stopped() && cursor_.TakeIf(','));
    if (!cursor_.TakeIf(']')) Unexpected("`,` or `]` after an item of the list");
  }

  void ReadScalar(const FieldInfo& field, bool in_list) {
    if (cursor_.AtOpener()) return RefuseBegun("fields in braces");
    if (cursor_.At('[')) return RefuseBegun("a list");
    if (!scalars_.Read(in_list)) Unexpected(absl::StrCat("a value for `", std::string(field.name), "`"));
  }

  // --- values that are not understood ---

  // Reports the value at the token as no value of `field`, and skips it.
  void RefuseValue(const FieldInfo& field, std::uint32_t name_offset, std::string_view found) {
    const bool nothing =
        cursor_.AtEnd() || cursor_.token().kind == TokenKind::kInvalid ||
        (cursor_.token().kind == TokenKind::kSymbol && !cursor_.AtOpener() && !cursor_.At('[') && !cursor_.At('-'));
    if (nothing) {
      return Unexpected(absl::StrCat(Expected(field, Form::kText), " after `", std::string(field.name), "`"));
    }
    if (!sink_.trail().Begin(field, name_offset)) return SkipValue();
    if (IsQuantity(field) && cursor_.AtNumber()) return RefuseBareQuantity(field);
    RefuseBegun(found.empty() ? cursor_.Found() : std::string(found));
    cursor_.TakeSeparator();
  }

  // A number where a quantity belongs, with or without a unit behind it.
  void RefuseBareQuantity(const FieldInfo& field) {
    const std::uint32_t begin = cursor_.token().offset;
    const std::string_view written = BenchText(reading_.bytes().substr(begin));
    sink_.BadValue(begin, absl::StrCat("`", std::string(written), "`"),
                   HowToWriteQuantity(field.name, field.message->descriptor->name(), written));
    cursor_.MoveTo(begin + written.size());
    cursor_.TakeSeparator();
  }

  void RefuseBegun(std::string_view found) {
    sink_.BadValue(cursor_.token().offset, found);
    SkipValue();
  }

  // Skips a value of whatever kind, with the colon before it.
  void SkipValue() {
    cursor_.TakeIf(':');
    if (cursor_.AtOpener() || cursor_.At('[')) return SkipBracketed();
    if (!cursor_.TakeAtom()) Unexpected("a value");
  }

  void SkipBracketed() {
    const std::uint32_t begin = cursor_.token().offset;
    std::string closers;
    do {
      switch (cursor_.token().symbol) {
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
          if (!cursor_.At(closers.back())) {
            return Unexpected(absl::StrCat("`", closers.substr(closers.size() - 1), "`"));
          }
          closers.pop_back();
          break;
        default:
          break;
      }
      if (cursor_.AtEnd()) return ReportUnclosed(begin);
      if (cursor_.token().kind == TokenKind::kInvalid) return Unexpected("a value");
      if (reading_.IsTooDeep(sink_.trail().depth() + closers.size())) {
        return reading_.ReportTooDeep(sink_.trail().PathOfMessage(), cursor_.token().offset);
      }
      cursor_.Advance();
    } while (!closers.empty());
  }

  // --- fields known by number only ---

  void ReadNumbered() {
    const Token name = cursor_.token();
    if (InQuantity() && !cursor_.BeforeValue()) return RefuseNamelessNumber();
    const std::optional<std::uint64_t> number = ParseWhole(cursor_.text(), /*decimal_only=*/true);
    if (!number || *number == 0 || *number > FieldDescriptor::kMaxNumber) return Unexpected("the name of a field");
    cursor_.Advance();
    if (const FieldInfo* known = sink_.trail().info().FindNumber(static_cast<std::uint32_t>(*number))) {
      reading_.ReportUnknown(kUnknownField, sink_.trail().PathOfMessage().Field(cursor_.TextOf(name)), name.offset,
                             false, absl::StrCat("field ", *number, " is given by its number"),
                             absl::StrCat("Write its name: `", std::string(known->name), "`."));
      SkipValue();
      return cursor_.TakeSeparator();
    }
    reading_.CountItem(name.offset);
    sink_.trail().ReportUnknownNumber(static_cast<std::uint32_t>(*number), name.offset);
    NumberedValueReader values(&cursor_, &reading_, sink_.trail().depth());
    if (!values.Read(static_cast<int>(*number), sink_.UnknownFields())) {
      return Unexpected("a number, text in quotes or fields in braces");
    }
    cursor_.TakeSeparator();
  }

  // `{ 36 7/8 in }`: a number without the name of its unit.
  void RefuseNamelessNumber() {
    const std::uint32_t begin = cursor_.token().offset;
    const std::string_view written = BenchText(reading_.bytes().substr(begin));
    reading_.ReportHabit("nameless number", kSyntax, sink_.trail().PathOfMessage(), begin,
                         absl::StrCat("the number `", std::string(written), "` without the name of its unit before it"),
                         HowToWriteNameless(sink_.trail().info().descriptor->name(), written));
    cursor_.MoveTo(begin + written.size());
  }

  Reading& reading_;
  TextCursor cursor_;
  FieldSink sink_;
  TextScalarReader scalars_;
  std::vector<Block> blocks_;
};

}  // namespace

std::size_t ReadText(Reading* reading, google::protobuf::Message* root) {
  return TextReader(reading, root).Run();
}

}  // namespace withy
