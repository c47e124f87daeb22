#include "format.h"

#include <algorithm>

#include "absl/strings/str_cat.h"
#include "withy/document/document.h"

namespace withy {

absl::StatusOr<std::string> FormatBytes(const Document& document) {
  switch (document.form) {
    case Form::kText:
      return FormatText(document.bytes);
    case Form::kJson:
      return FormatJson(document.bytes);
    case Form::kBinary:
      break;
  }
  const auto kept = [](const UnknownField& field) { return field.carried; };
  if (!std::all_of(document.unknown.begin(), document.unknown.end(), kept)) {
    return absl::FailedPreconditionError(
        absl::StrCat(document.name, ": not laid out: a field that cannot be kept would be lost"));
  }
  return WriteDesign(document.design, Form::kBinary);
}

}  // namespace withy
