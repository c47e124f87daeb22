#include "reading_codes.h"

namespace withy {

const Code kEmptyFile = {.name = "document/empty",
                         .severity = Severity::kError,
                         .summary = "The file holds nothing",
                         .why = "An empty file is usually what an interrupted copy or a full disk left behind.",
                         .action = "Take the last good copy, or begin anew with `withy new`."};

const Code kNotADesign = {
    .name = "document/not-a-design",
    .severity = Severity::kError,
    .summary = "The content is not a design in any of the three forms",
    .why = "A design is text (`format: \"withy/1\"`), JSON or binary, told apart by the content and never by the name.",
    .action = "Check that this is the file you meant; save text as UTF-8; unpack archives first."};

const Code kNotUtf8 = {
    .name = "document/not-utf8",
    .severity = Severity::kError,
    .summary = "Text that is not valid UTF-8",
    .why =
        "Names with accents would be read differently on every machine, and could not be written in the other forms.",
    .action = "Save the file as UTF-8; most editors offer it under 'encoding'."};

const Code kTruncated = {
    .name = "document/truncated",
    .severity = Severity::kError,
    .summary = "The file ends in the middle of something",
    .why = "What is missing could be a cut or a measurement; half a design must not pass for a whole one.",
    .action = "Take the whole file again from where it came; close what was opened."};

const Code kFormatMissing = {
    .name = "document/format-missing",
    .severity = Severity::kError,
    .summary = "The design does not say which version of the format it is written in",
    .why = "The same number can mean another thing in another version. The rest is read as the current version.",
    .action = "Put `format: \"withy/1\"` on the first line."};

const Code kFormatUnknown = {.name = "document/format-unknown",
                             .severity = Severity::kError,
                             .summary = "`format` does not name a version of this format",
                             .why = "What the numbers mean depends on the version.",
                             .action = "Write `format: \"withy/1\"`."};

const Code kFormatNewer = {
    .name = "document/format-newer",
    .severity = Severity::kError,
    .summary = "The design is written in a newer version of the format than this withy reads",
    .why = "A newer version may give old fields a new meaning, so nothing of it is guessed at.",
    .action =
        "Get a newer withy, or ask the author for the design in this version (`withy convert` writes older ones)."};

const Code kFormatOlder = {
    .name = "document/format-older",
    .severity = Severity::kError,
    .summary = "The design of an older version could not be brought to the current one",
    .why = "An older file that leaves out what the newer version must know would have to be guessed at.",
    .action = "Add what the message asks for, in the older file."};

const Code kSyntax = {.name = "document/syntax",
                      .severity = Severity::kError,
                      .summary = "The text breaks the rules of its form",
                      .why = "After broken punctuation nobody can be sure which part a value belongs to.",
                      .action = "Look at the marked place and just before it: a missing brace, quote or colon."};

const Code kWireFormat = {.name = "document/wire-format",
                          .severity = Severity::kError,
                          .summary = "The binary file breaks the rules of Protocol Buffers",
                          .why = "The file was damaged, or written by something that does not follow the schema.",
                          .action = "Take the file again from where it came, or ask for it as text."};

const Code kUnknownField = {.name = "document/unknown-field",
                            .severity = Severity::kError,
                            .summary = "A field that the schema does not have",
                            .why = "A misspelt field is a value that nobody looks at. The rest of the design is read.",
                            .action = "Correct the name; data of one's own goes into `extensions`."};

const Code kUnknownNumber = {
    .name = "document/unknown-number",
    .severity = Severity::kWarning,
    .summary = "A field known by number only, from a newer or another schema",
    .why = "Nothing here takes it into account. It is kept, and written back in the forms that can carry it.",
    .action = "Get a newer withy, or remove the field if it is not wanted."};

const Code kDuplicateField = {.name = "document/duplicate-field",
                              .severity = Severity::kError,
                              .summary = "A field that can be given once is given twice",
                              .why = "One of the two values would be dropped silently.",
                              .action = "Keep the one that is meant."};

const Code kDuplicateKey = {.name = "document/duplicate-key",
                            .severity = Severity::kError,
                            .summary = "One key is used twice",
                            .why = "One of the two values would be dropped silently.",
                            .action = "Keep the one that is meant, or put both under one key."};

const Code kTwoOfOne = {.name = "document/two-of-one",
                        .severity = Severity::kError,
                        .summary = "Two fields are given of which one at most can hold",
                        .why = "A length in mm and in inches at once is two lengths; one would be dropped silently.",
                        .action = "Keep the one that was measured."};

const Code kBadNumber = {
    .name = "document/bad-number",
    .severity = Severity::kError,
    .summary = "A value that is not a finite number of the kind the field takes",
    .why = "A number that is guessed at ends in a wrong cut.",
    .action = "Write digits with a decimal point and no unit behind them: the unit is the field's name."};

const Code kBadValue = {.name = "document/bad-value",
                        .severity = Severity::kError,
                        .summary = "A value of another kind than the field takes",
                        .why = "A value that is not understood would be lost.",
                        .action = "Write the kind of value the message names."};

const Code kUnknownEnumName = {.name = "document/unknown-enum-name",
                               .severity = Severity::kError,
                               .summary = "A name that is not among the field's values",
                               .why = "The list is closed, so the name cannot be kept for later.",
                               .action = "Write one of the names the message gives."};

const Code kUnknownEnumNumber = {.name = "document/unknown-enum-number",
                                 .severity = Severity::kWarning,
                                 .summary = "A number that is not among the field's values, perhaps of a newer schema",
                                 .why = "It is kept in every form, and treated as not known.",
                                 .action = "Get a newer withy, or write one of the names the schema has."};

const Code kTooLarge = {.name = "document/too-large",
                        .severity = Severity::kError,
                        .summary = "The file is larger than the limit",
                        .why = "A design is some ten kilobytes; a limit keeps a wrong file from filling the memory.",
                        .action = "Check that this is the file you meant, or raise the limit."};

const Code kTooDeep = {.name = "document/too-deep",
                       .severity = Severity::kError,
                       .summary = "Messages stand within messages more deeply than the limit",
                       .why = "A design needs eight levels; a limit keeps a crafted file from exhausting the machine.",
                       .action = "Flatten what is in `extensions`, or raise the limit."};

const Code kTooMany = {.name = "document/too-many",
                       .severity = Severity::kError,
                       .summary = "More fields and list items than the limit",
                       .why = "A limit keeps a crafted file from filling the memory.",
                       .action = "Check that this is the file you meant, or raise the limit."};

std::vector<Code> ReadingCodes() {
  return {kEmptyFile,         kNotADesign,   kNotUtf8,  kTruncated,  kFormatMissing, kFormatUnknown,
          kFormatNewer,       kFormatOlder,  kSyntax,   kWireFormat, kUnknownField,  kUnknownNumber,
          kDuplicateField,    kDuplicateKey, kTwoOfOne, kBadNumber,  kBadValue,      kUnknownEnumName,
          kUnknownEnumNumber, kTooLarge,     kTooDeep,  kTooMany};
}

}  // namespace withy
