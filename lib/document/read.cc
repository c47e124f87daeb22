#include <algorithm>
#include <limits>
#include <utility>

#include "absl/strings/str_cat.h"
#include "binary_reader.h"
#include "content_form.h"
#include "json_reader.h"
#include "reading.h"
#include "reading_codes.h"
#include "stray_control.h"
#include "text_reader.h"
#include "utf8.h"
#include "withy/document/document.h"
#include "withy/document/upgrade.h"

namespace withy {
namespace {

// Bounds that no limit may exceed (document.h says why).
constexpr std::size_t kMostBytes = std::numeric_limits<std::uint32_t>::max() - 1;
constexpr int kDeepest = 500;

ReadLimits Bounded(ReadLimits limits) {
  limits.max_bytes = std::min(limits.max_bytes, kMostBytes);
  limits.max_depth = std::clamp(limits.max_depth, 0, kDeepest);
  return limits;
}

ReadResult Refused(const Code& code, const Position& position, std::string message, std::string help = "") {
  ReadResult result;
  result.findings.push_back(MakeFinding(code, {}, std::move(message), {}, std::move(help)));
  result.findings.back().position = position;
  return result;
}

// The text form only: JSON has its own rule for control characters, and no comments that one could hide in.
std::optional<ReadResult> RefusedControl(const std::string& bytes) {
  const std::size_t at = FindStrayControl(bytes);
  if (at == bytes.size()) return std::nullopt;
  if (bytes[at] == '\r') {
    return Refused(kSyntax, PositionAt(bytes, at), "a line ends in a lone carriage return",
                   "Save the file with the line ends LF or CR LF; in text a carriage return is written \\r.");
  }
  const auto byte = static_cast<unsigned char>(bytes[at]);
  return Refused(kSyntax, PositionAt(bytes, at),
                 absl::StrCat("the control character 0x", absl::Hex(byte, absl::kZeroPad2), " in text"),
                 "Remove it; where it is meant, write it as an escape, such as \\x1b.");
}

// What can be told before anything is parsed.
std::optional<ReadResult> RefusedAtSight(const std::string& bytes, const ContentForm& content,
                                         const ReadLimits& limits) {
  const Position start = {0, 1, 1};
  if (bytes.size() > limits.max_bytes) {
    return Refused(kTooLarge, PositionAt(bytes, limits.max_bytes),
                   absl::StrCat("the file is longer than ", limits.max_bytes, " bytes"));
  }
  if (content.empty) return Refused(kEmptyFile, start, bytes.empty() ? "the file is empty" : "the file is blank");
  if (!content.form) {
    return Refused(
        kNotADesign, start,
        content.seems_to_be.empty() ? "this is not a design" : absl::StrCat("this seems to be ", content.seems_to_be));
  }
  if (*content.form == Form::kBinary) return std::nullopt;
  const std::size_t valid = ValidUtf8Prefix(bytes);
  if (valid == bytes.size()) return *content.form == Form::kText ? RefusedControl(bytes) : std::nullopt;
  const auto byte = static_cast<unsigned char>(bytes[valid]);
  return Refused(kNotUtf8, PositionAt(bytes, valid),
                 absl::StrCat("the byte 0x", absl::Hex(byte, absl::kZeroPad2), " is not valid UTF-8 here"));
}

// Reads `root` in the form; returns the number of comments.
std::size_t ReadForm(Reading& reading, google::protobuf::Message* root) {
  switch (reading.form()) {
    case Form::kText:
      return ReadText(&reading, root);
    case Form::kJson:
      ReadJson(&reading, root);
      return 0;
    case Form::kBinary:
      ReadBinary(&reading, root);
      return 0;
  }
  return 0;
}

// Takes over what the reading found, and the document if it was readable. `root` may be within the document.
ReadResult Result(Reading& reading, Document&& document, const google::protobuf::Message& root) {
  ReadResult result;
  result.findings = reading.Finish(root);
  document.unknown = std::move(reading.unknown);
  document.positions = std::move(reading.positions);
  if (reading.readable()) result.document = std::move(document);
  return result;
}

// A file of version 0 is read by its own schema and brought up; places would point at fields that are not there any
// more.
ReadResult ReadVersion0(Document document, const ReadLimits& limits) {
  Reading reading(document.bytes, document.form, limits);
  v0::Design old;
  document.comments = ReadForm(reading, &old);
  document.version = 0;
  ReadResult result = Result(reading, std::move(document), old);
  if (!result.document) return result;
  result.document->positions = SourceMap();
  absl::StatusOr<v1::Design> upgraded = UpgradeFrom0(old);
  if (!upgraded.ok()) {
    const Position start = {0, result.document->form == Form::kBinary ? 0 : 1, 1};
    result.findings.push_back(MakeFinding(kFormatOlder, {}, std::string(upgraded.status().message())));
    result.findings.back().position = start;
    result.document.reset();
    return result;
  }
  result.document->design = *std::move(upgraded);
  return result;
}

// Where `format` stands, or the start of the file.
Position PlaceOfFormat(const SourceMap& positions, const Document& document) {
  const bool binary = document.form == Form::kBinary;
  const Position start = binary ? Position{} : Position{0, 1, 1};
  return positions.Find(FieldPath().Field("format"), document.design, document.bytes, binary).value_or(start);
}

// The format that the file says it is of. A binary file of another version may not parse by this one's schema, but it
// begins with its format (content_form.h).
std::string FormatOf(const Document& document) {
  if (document.form != Form::kBinary || document.bytes.size() < 2) return document.design.format();
  return document.bytes.substr(2, static_cast<unsigned char>(document.bytes[1]));
}

// Judges `format` of a design that was read by the current schema.
void CheckFormat(Reading& reading, const Document& document) {
  const std::string format = FormatOf(document);
  if (FormatVersion(format) == kCurrent) return;
  const FieldPath at = FieldPath().Field("format");
  const std::size_t offset = PlaceOfFormat(reading.positions, document).offset;
  if (format.empty()) {
    reading.Report(kFormatMissing, at, offset, "the design does not say its version");
  } else {
    reading.Report(kFormatUnknown, at, offset, absl::StrCat("`format` is \"", format, "\""));
  }
}

}  // namespace

ReadResult ReadDesign(std::string_view name, std::string bytes, const ReadLimits& asked) {
  const ReadLimits limits = Bounded(asked);
  const ContentForm content = FormOfContent(bytes);
  if (std::optional<ReadResult> refused = RefusedAtSight(bytes, content, limits)) return *std::move(refused);

  Document document;
  document.name = std::string(name);
  document.form = *content.form;
  document.bytes = std::move(bytes);
  Reading reading(document.bytes, document.form, limits);
  document.comments = ReadForm(reading, &document.design);

  const std::optional<int> version = FormatVersion(FormatOf(document));
  if (version == 0) return ReadVersion0(std::move(document), limits);
  if (version && *version > kCurrent) {
    const Position place = PlaceOfFormat(reading.positions, document);
    return Refused(kFormatNewer, place,
                   absl::StrCat("the file is of version ", *version, ", this withy reads up to version ", kCurrent));
  }
  // Bytes that broke off before their version say nothing about it.
  if (!reading.stopped()) CheckFormat(reading, document);
  return Result(reading, std::move(document), document.design);
}

}  // namespace withy
