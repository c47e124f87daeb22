// A field of a design as a person reads it: "87 ± 0.0625 inch", "14 rows".
#ifndef WITHY_REVIEW_WRITTEN_TEXT_H_
#define WITHY_REVIEW_WRITTEN_TEXT_H_

#include <google/protobuf/message.h>

#include <string>

#include "withy/document/document.h"
#include "withy/findings/field_path.h"

namespace withy {

// What stands at `path`; all empty where nothing does.
struct Written {
  std::string text;
  std::string source;  // "measured", "catalogue", "estimated", "plan"
  int line = 0;        // 0 = none to tell
};
Written WrittenAt(const Document& document, const FieldPath& path);

// A number without digits that say nothing: "0.0625", "87".
std::string ShortNumber(double value);

}  // namespace withy

#endif  // WITHY_REVIEW_WRITTEN_TEXT_H_
