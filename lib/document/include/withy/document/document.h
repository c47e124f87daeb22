// A design as written: read from bytes in any of three forms, with the place of every field, and written again.
//
//   ReadResult read = ReadDesign("rod.txtpb", bytes);
//   if (!read.document) { ... read.findings says why ... }      // unreadable: exit status 3
//   const v1::Design& design = read.document->design;
//   std::optional<Position> where = read.document->positions.Find(finding.at);
//
// The form is told from the content, never from the name. Older versions of the format are upgraded on the way in
// (upgrade.h). Nothing is dropped silently: what the target form cannot carry is listed by `LossesInForm`.
//
// This is the only floor that builds generated Protocol Buffers classes. Above it only rod (reads the design), review
// (fills the report) and plugin_host (walks messages by reflection) see them; no concern does.
#ifndef WITHY_DOCUMENT_DOCUMENT_H_
#define WITHY_DOCUMENT_DOCUMENT_H_

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "absl/status/statusor.h"
#include "withy/document/source_map.h"
#include "withy/findings/finding.h"
#include "withy/v1/design.pb.h"

namespace withy {

enum class Form { kText, kJson, kBinary };

// Bounds on what is read. Going over one is an error with the place, never a crash. More than 4 GiB or 500 levels is
// taken as that: offsets are kept in 32 bits, and messages are destroyed and written by recursion.
struct ReadLimits {
  std::size_t max_bytes = std::size_t{64} << 20;  // a 10,000-station design in text is about 1 MB
  int max_depth = 64;                             // messages within messages; the schema needs 8 plus extensions
  std::size_t max_items = 1'000'000;              // fields, list items and map entries together
};

// Something in the bytes that the schema has no name or number for.
struct UnknownField {
  FieldPath at;         // with the misspelt name, or the number as its name
  Position position;
  bool carried = false;  // kept in the design's unknown fields (numbers, in text and binary); else only in `bytes`
};

struct Document {
  std::string name;           // as given, for messages; "-" is standard input
  Form form = Form::kText;
  std::string bytes;          // as read
  v1::Design design;          // after upgrade
  int version = 1;            // of the format, as read
  SourceMap positions;        // empty where the design was upgraded
  std::size_t comments = 0;   // in the text form
  std::vector<UnknownField> unknown;
};

struct ReadResult {
  std::optional<Document> document;  // unset = unreadable
  std::vector<Finding> findings;     // of reading: syntax, unknown names, duplicate fields ...
};

// Reads a design. Never throws, never aborts, never reads past `bytes`.
ReadResult ReadDesign(std::string_view name, std::string bytes, const ReadLimits& limits = {});

// Reads a file ("-" = standard input) up to `limit` + 1 bytes. NotFound, PermissionDenied, InvalidArgument (a directory),
// ResourceExhausted (too large) or DataLoss, each with the name and what to do.
absl::StatusOr<std::string> ReadBytes(const std::string& path, const ReadLimits& limits = {});

// Writes a design in a form: canonical bytes, the same on any machine. Text: two spaces, quantities on one line, field
// order of the schema. JSON: proto field names. Binary: deterministic.
std::string WriteDesign(const v1::Design& design, Form form);

// What `WriteDesign(document.design, form)` would lose: unknown names, unknown fields that JSON cannot carry, comments.
struct Loss {
  FieldPath at;        // empty for comments
  std::string what;    // "3 comments", "unknown field 'lenght'"
  bool comment = false;  // told, but not refused
};
std::vector<Loss> LossesInForm(const Document& document, Form form);

// Canonical layout of the bytes as the author wrote them: tokens, order and comments are kept. Idempotent. Binary is
// written again deterministically; FailedPrecondition where that would lose an unknown field. The document must have been
// read without error.
absl::StatusOr<std::string> FormatBytes(const Document& document);

// Digest of the meaning: "sha256:" and 64 hexadecimal digits, the same for one design in any form.
std::string DesignDigest(const v1::Design& design);

// Codes of this floor: reading (document/*) and consistency of what was written.
std::vector<Code> DocumentCodes();

// Consistency of the design as written: ids and references, units, words, dates, money, plausible ranges.
std::vector<Finding> CheckDocument(const Document& document);

}  // namespace withy

#endif  // WITHY_DOCUMENT_DOCUMENT_H_
