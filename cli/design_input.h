// Reading the design a command is about.
#ifndef WITHY_CLI_DESIGN_INPUT_H_
#define WITHY_CLI_DESIGN_INPUT_H_

#include <optional>
#include <span>
#include <string>

#include "command.h"
#include "withy/document/document.h"
#include "withy/review/checked_design.h"
#include "withy/review/length_units.h"

namespace withy {

class Io;

// --units: for every command that prints lengths along the rod.
std::span<const OptionSpec> UnitsOptions();
LengthUnits UnitsFrom(const Options& options, const v1::Design& design);

// --max-bytes, --max-depth, --max-items: for every command that reads a design.
std::span<const OptionSpec> ReadLimitOptions();
ReadLimits ReadLimitsFrom(const Options& options);

// Reads `path` ("-" = standard input) as far as it goes. Not reviewed yet. Where the file cannot be opened the reason
// is the one failure.
CheckedDesign ReadChecked(const std::string& path, const Options& options);

// Reads a design and reviews it with `review`. Where it cannot be read, says why on standard error and returns nothing:
// kUnreadable.
std::optional<CheckedDesign> ReadReviewed(const std::string& path, const Options& options, Io& io,
                                          const ReviewOptions& review = {});

// The same without a review, for commands that look at the file alone.
std::optional<CheckedDesign> ReadOnly(const std::string& path, const Options& options, Io& io);

// A remark on the importer of the ending that `path` has, where there is one: for a file that is no design.
void NoteImporter(const std::string& path, const Options& options, Io& io);

// A remark that the design has errors, where it has.
void NoteErrors(const CheckedDesign& checked, Io& io);

// The form that a file's ending stands for: .txtpb, .json, .binpb. Unset for any other.
std::optional<Form> FormOfEnding(const std::string& path);

// The form that --to names, else the ending of `path`, else `otherwise`.
Form WantedForm(const Options& options, const std::string& path, Form otherwise);

}  // namespace withy

#endif  // WITHY_CLI_DESIGN_INPUT_H_
