#include "json_reader.h"

#include <rapidjson/reader.h>

#include <string>
#include <string_view>

#include "absl/strings/str_cat.h"
#include "json_handler.h"
#include "reading_codes.h"
#include "utf8.h"

namespace withy {
namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

// Between rapidjson and the handler: turns pointers into offsets, and stops the parser when the reading is stopped.
// Parsing in place makes the pointers say where things stand.
class Events {
 public:
  using Ch = char;

  Events(Reading* reading, JsonHandler* handler, const char* base, rapidjson::InsituStringStream* stream,
         std::size_t begin)
      : reading_(*reading), handler_(*handler), base_(base), stream_(*stream), begin_(begin) {}

  bool Null() { return handler_.Null(Before(4)), GoOn(); }
  bool Bool(bool value) { return handler_.Bool(value, Before(value ? 4 : 5)), GoOn(); }
  bool RawNumber(const char* text, rapidjson::SizeType length, bool) {
    return handler_.Number({text, length}, OffsetOf(text)), GoOn();
  }
  bool String(const char* text, rapidjson::SizeType length, bool) {
    const std::uint32_t offset = OffsetOf(text) - 1;
    return ValidText({text, length}, offset) && (handler_.String({text, length}, offset), GoOn());
  }
  bool Key(const char* text, rapidjson::SizeType length, bool) {
    const std::uint32_t offset = OffsetOf(text) - 1;
    return ValidText({text, length}, offset) && (handler_.Key({text, length}, offset), GoOn());
  }
  bool StartObject() { return handler_.StartObject(Before(0)), GoOn(); }
  bool EndObject(rapidjson::SizeType) { return handler_.EndObject(Before(0)), GoOn(); }
  bool StartArray() { return handler_.StartArray(Before(0)), GoOn(); }
  bool EndArray(rapidjson::SizeType) { return handler_.EndArray(Before(0)), GoOn(); }

  // Numbers come as text.
  bool Int(int) { return false; }
  bool Uint(unsigned) { return false; }
  bool Int64(std::int64_t) { return false; }
  bool Uint64(std::uint64_t) { return false; }
  bool Double(double) { return false; }

 private:
  bool GoOn() const { return !reading_.stopped(); }
  std::uint32_t OffsetOf(const char* at) const { return static_cast<std::uint32_t>(at - base_); }
  // `length` bytes before where the parser stands.
  std::uint32_t Before(std::size_t length) const {
    return static_cast<std::uint32_t>(begin_ + stream_.Tell() - length);
  }
  // The file is UTF-8; only an escape (half a surrogate pair) can make text that is not.
  bool ValidText(std::string_view text, std::uint32_t offset) {
    if (IsUtf8(text)) return true;
    reading_.Report(kNotUtf8, handler_.PathOfMessage(), offset, "a \\u escape that is half a surrogate pair");
    return GoOn();
  }

  Reading& reading_;
  JsonHandler& handler_;
  const char* base_;
  rapidjson::InsituStringStream& stream_;
  std::size_t begin_;
};

std::string ProblemOf(rapidjson::ParseErrorCode code) {
  switch (code) {
    case rapidjson::kParseErrorDocumentRootNotSingular:
      return "something follows the end of the design";
    case rapidjson::kParseErrorValueInvalid:
      return "expected a value";
    case rapidjson::kParseErrorObjectMissName:
      return "expected a key in double quotes";
    case rapidjson::kParseErrorObjectMissColon:
      return "expected `:` after the key";
    case rapidjson::kParseErrorObjectMissCommaOrCurlyBracket:
      return "expected `,` or `}` after a member of the object";
    case rapidjson::kParseErrorArrayMissCommaOrSquareBracket:
      return "expected `,` or `]` after an item of the list";
    case rapidjson::kParseErrorStringUnicodeEscapeInvalidHex:
    case rapidjson::kParseErrorStringEscapeInvalid:
      return "an escape that does not exist";
    case rapidjson::kParseErrorStringUnicodeSurrogateInvalid:
      return "a \\u escape that is half a surrogate pair";
    case rapidjson::kParseErrorStringMissQuotationMark:
      return "text without its closing quote";
    case rapidjson::kParseErrorStringInvalidEncoding:
      return "a line break or control character within text";
    case rapidjson::kParseErrorNumberTooBig:
      return "a number larger than any that can be kept";
    case rapidjson::kParseErrorNumberMissFraction:
    case rapidjson::kParseErrorNumberMissExponent:
      return "a number that ends too early";
    default:
      return "this is not JSON";
  }
}

std::string AdviceFor(std::string_view rest) {
  if (rest.starts_with('#') || rest.starts_with('/')) return "JSON has no comments; the text form has them.";
  if (rest.starts_with('\'')) return "JSON takes double quotes only.";
  if (rest.starts_with('}') || rest.starts_with(']')) return "Remove the comma before it.";
  if (rest.starts_with('N') || rest.starts_with('I') || rest.starts_with("-I")) return "Numbers must be finite.";
  return "";
}

void ReportGrammar(Reading* reading, const JsonHandler& handler, rapidjson::ParseErrorCode code, std::size_t offset) {
  const std::string_view bytes = reading->bytes();
  const bool ended = offset >= bytes.size();
  const bool number = code == rapidjson::kParseErrorNumberTooBig;
  // The parser does not tell a control character from a wrong escape.
  const bool control = !ended && code == rapidjson::kParseErrorStringEscapeInvalid && bytes[offset] != '\\' &&
                       static_cast<unsigned char>(bytes[offset]) < 0x20;
  if (control) code = rapidjson::kParseErrorStringInvalidEncoding;
  const bool value = number || code == rapidjson::kParseErrorValueInvalid;
  reading->Report(ended    ? kTruncated
                  : number ? kBadNumber
                           : kSyntax,
                  value ? handler.PathOfValue() : handler.PathOfMessage(), offset,
                  absl::StrCat(ProblemOf(code), ended ? ", found the end of the file" : ""),
                  ended ? "" : AdviceFor(bytes.substr(offset)));
}

}  // namespace

void ReadJson(Reading* reading, google::protobuf::Message* root) {
  JsonHandler handler(reading, root);
  const std::size_t begin = reading->bytes().starts_with(kByteOrderMark) ? kByteOrderMark.size() : 0;
  // The parser takes a NUL for the end.
  if (const std::size_t nul = reading->bytes().find('\0'); nul != std::string_view::npos) {
    return reading->Report(kSyntax, {}, nul, "a NUL character is not part of JSON");
  }
  std::string copy(reading->bytes());
  rapidjson::InsituStringStream stream(copy.data() + begin);
  Events events(reading, &handler, copy.data(), &stream, begin);
  rapidjson::Reader parser;
  constexpr unsigned kFlags =
      rapidjson::kParseInsituFlag | rapidjson::kParseIterativeFlag | rapidjson::kParseNumbersAsStringsFlag;
  const rapidjson::ParseResult parsed = parser.Parse<kFlags>(stream, events);
  const bool by_handler = parsed.Code() == rapidjson::kParseErrorTermination;
  if (!parsed.IsError() || by_handler) return;
  ReportGrammar(reading, handler, parsed.Code(), begin + parsed.Offset());
}

}  // namespace withy
