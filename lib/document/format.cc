#include "format.h"

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
  return WriteDesign(document.design, Form::kBinary);
}

}  // namespace withy
