#include "consistency_codes.h"

namespace withy {

const Code kMissingId = {
    .name = "document/missing-id",
    .severity = Severity::kWarning,
    .summary = "A thing has no id",
    .why =
        "Wraps, joints, the log and findings speak of things by their ids; a thing without one can only "
        "be counted, and its number changes when something is put in before it.",
    .action = "Give it a short id of its own, such as g1 or reel-seat."};

const Code kBadId = {
    .name = "document/bad-id",
    .severity = Severity::kWarning,
    .summary = "An id that is awkward to refer to",
    .why =
        "Ids stand in field paths, on labels and on the command line. Brackets, quotes, backslashes, control "
        "characters, spaces at the ends, or digits alone (which read as a count) do not survive there.",
    .action = "Use letters, digits, '-' and '_', beginning with a letter."};

const Code kDuplicateId = {
    .name = "document/duplicate-id",
    .severity = Severity::kError,
    .summary = "Two things have the same id",
    .why = "A reference to it could mean either, and one of them would be cut or wrapped in the other's place.",
    .action = "Rename one of them, and look at what refers to it."};

const Code kUnknownId = {
    .name = "document/unknown-id",
    .severity = Severity::kError,
    .summary = "A reference to something that is not in the design",
    .why = "What was meant is then left out of every figure: a wrap without its guide, a joint without its section.",
    .action = "Correct the id, or describe the thing it names."};

const Code kWrongReference = {.name = "document/wrong-reference",
                              .severity = Severity::kError,
                              .summary = "A reference to a thing of another kind",
                              .why = "A wrap cannot take a section for its thread; the reference says nothing.",
                              .action = "Name a thing of the kind the message asks for."};

const Code kUnknownWord = {.name = "document/unknown-word",
                           .severity = Severity::kWarning,
                           .summary = "A word that is not among the known ones",
                           .why = "It is kept, and treated as 'other': rules that go by the word pass it over.",
                           .action = "Write one of the known words, or `other: ...` where none of them says it."};

const Code kBadDate = {
    .name = "document/bad-date",
    .severity = Severity::kWarning,
    .summary = "A text that is not an ISO 8601 date",
    .why = "The order of the log and the curing times go by dates; 3/4 is March to some and April to others.",
    .action = "Write 2026-03-14, or 2026-03-14T18:30 with the time of day."};

const Code kBadUuid = {
    .name = "document/bad-uuid",
    .severity = Severity::kWarning,
    .summary = "A text that is not a UUID",
    .why = "The UUID is what ties the revisions of a design together wherever it is copied.",
    .action = "Write it as RFC 4122 does, in lower case with hyphens, or leave it out until publication."};

const Code kBadDigest = {.name = "document/bad-digest",
                         .severity = Severity::kWarning,
                         .summary = "A text that is not a digest",
                         .why = "With a broken digest nobody can tell whether the copy is the original.",
                         .action = "Copy the whole of it: sha256: and 64 lower-case hexadecimal digits."};

const Code kBadLicense = {
    .name = "document/bad-license",
    .severity = Severity::kWarning,
    .summary = "A text that is not an SPDX licence expression",
    .why = "Programs and people then cannot tell what they may do with the design.",
    .action = "Write an identifier from the SPDX list, such as CC-BY-4.0, or LicenseRef- and a name of your own."};

const Code kBadMoney = {.name = "document/bad-money",
                        .severity = Severity::kWarning,
                        .summary = "An amount of money that is missing or not decimal text",
                        .why = "The cost of the rod then leaves this price out.",
                        .action = "Write digits with at most one point and nothing else, such as \"12.50\"."};

const Code kBadCurrency = {.name = "document/bad-currency",
                           .severity = Severity::kWarning,
                           .summary = "A currency that is missing or not an ISO 4217 code",
                           .why = "Prices without a currency cannot be added to others.",
                           .action = "Write the three capital letters, such as EUR."};

const Code kNoUnit = {
    .name = "document/no-unit",
    .severity = Severity::kError,
    .summary = "A quantity without a unit",
    .why = "The number is not known, and it would be a guess whether it was to be zero.",
    .action = "Write the number under its unit, such as { mm: 2209.8 }, or leave the whole field out."};

const Code kNegative = {
    .name = "document/negative",
    .severity = Severity::kError,
    .summary = "A number below zero where that cannot be",
    .why =
        "Sizes, masses and distances from a named end are never negative; the sign is a slip or the origin is another.",
    .action = "Remove the sign, or measure from the end that the field names."};

const Code kUnitSlip = {
    .name = "document/unit-slip",
    .severity = Severity::kWarning,
    .summary = "A value that makes sense in another unit or with the point moved",
    .why =
        "Inches written as millimetres, ounces as grams or centimetres as millimetres are the commonest "
        "slips in a design, and each of them ends in a wrong cut or a wrong balance.",
    .action = "Compare with what was measured and put the number under the unit it was read in."};

const Code kImplausible = {.name = "document/implausible",
                           .severity = Severity::kWarning,
                           .summary = "A value outside what is met on real rods",
                           .why = "The range is wide; a value outside it is nearly always a slip of the pen.",
                           .action = "Measure again. Where it is right, waive this finding with a reason."};

const Code kAbsurd = {
    .name = "document/absurd",
    .severity = Severity::kError,
    .summary = "A value a thousand times outside what is met on real rods, or zero where nothing is zero",
    .why = "No rod has it. A zero often stands for 'not known', which a design says by leaving the field out.",
    .action = "Correct it, or leave the field out where it is not known."};

const Code kPlusMinus = {
    .name = "document/plus-minus",
    .severity = Severity::kWarning,
    .summary = "An uncertainty that is negative or larger than the value",
    .why = "It is carried into every figure; a sign or a wrong unit there makes all of them worthless.",
    .action = "Write it without a sign, in the same unit as the number beside it."};

const Code kRangeOrder = {.name = "document/range-order",
                          .severity = Severity::kWarning,
                          .summary = "A range whose lower end is above its upper end",
                          .why = "Nothing lies within it, so no load or lure can be compared with it.",
                          .action = "Exchange the two, or correct the unit of one."};

const Code kPlaceWithoutOrigin = {
    .name = "document/place-without-origin",
    .severity = Severity::kError,
    .summary = "A place that does not say what it is counted from",
    .why = "The same number from the butt and from the tip are two places on the rod.",
    .action = "Give one of from_butt, from_tip, from_section_butt, after or before, or leave the place out."};

const Code kSectionWithPlace = {
    .name = "document/section-with-place",
    .severity = Severity::kError,
    .summary = "A place names a section without counting from it, or counts from a section it does not name",
    .why =
        "`from_section_butt` is counted on one piece in the hand; which piece must be said, and with "
        "another origin the section contradicts it.",
    .action = "Give `from_section_butt` and `section` together, or neither."};

const Code kUnsetOneof = {
    .name = "document/unset-oneof",
    .severity = Severity::kWarning,
    .summary = "A load case, bench reading or log entry that does not say what it is",
    .why = "It counts for nothing; in the log it may have been a cut, so that nothing can be planned on it.",
    .action = "Say what was done, measured or asked, or remove the entry."};

const Code kLogOrder = {
    .name = "document/log-order",
    .severity = Severity::kWarning,
    .summary = "A log entry is dated before the one above it",
    .why = "The log is read from top to bottom: a cut that is entered out of order is taken off the wrong length.",
    .action = "Correct the date, or move the entry to where it belongs."};

const Code kWaiverWithoutReason = {
    .name = "document/waiver-without-reason",
    .severity = Severity::kWarning,
    .summary = "A waiver that gives no reason",
    .why = "The next reader cannot tell whether it was looked at; such a waiver does not count.",
    .action = "Say in `reason` why the finding is accepted."};

const Code kPersonalData = {.name = "document/personal-data",
                            .severity = Severity::kAdvice,
                            .summary = "The design holds what is known of the customer",
                            .why = "Name and measures of a person are theirs and not the community's.",
                            .action = "Remove `intent.customer` before the design is shared."};

std::vector<Code> ConsistencyCodes() {
  return {kMissingId,
          kBadId,
          kDuplicateId,
          kUnknownId,
          kWrongReference,
          kUnknownWord,
          kBadDate,
          kBadUuid,
          kBadDigest,
          kBadLicense,
          kBadMoney,
          kBadCurrency,
          kNoUnit,
          kNegative,
          kUnitSlip,
          kImplausible,
          kAbsurd,
          kPlusMinus,
          kRangeOrder,
          kPlaceWithoutOrigin,
          kSectionWithPlace,
          kUnsetOneof,
          kLogOrder,
          kWaiverWithoutReason,
          kPersonalData};
}

}  // namespace withy
