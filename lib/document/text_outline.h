// The text form as its author laid it out: fields, list items and comments in order, with the line breaks and empty
// lines that are worth keeping. FormatBytes makes one and prints it.
//
//   guides {  # the butt guide            item `guides`, body '{' with an opening comment
//     id: "g1" from_tip { inch: 47.25 }   two items, the second on the same line; the body of the second on one line
//                                         an empty line
//     # moved after the loaded test       a comment of its own
//     locked: true  # by hand             an item with a comment at the end of its line
//   }
//
// Every piece of text is a view into the bytes. A comment within a field, where no line could end (`length # of the
// blank` and then `{`), stands before that field.
#ifndef WITHY_DOCUMENT_TEXT_OUTLINE_H_
#define WITHY_DOCUMENT_TEXT_OUTLINE_H_

#include <string>
#include <string_view>
#include <vector>

#include "absl/status/statusor.h"

namespace withy {

struct OutlineItem;

enum class BodyKind {
  kNone,     // a scalar: OutlineItem::text is its value
  kMessage,  // { fields }
  kList,     // [ items ]
  kPieces,   // string pieces that are one value
};

struct OutlineBody {
  BodyKind kind = BodyKind::kNone;
  std::vector<OutlineItem> items;
  std::string_view comment;  // on the line of the opening bracket
  bool one_line = true;      // no line ended between its first and last token (of the outermost message: always true)
};

// A field, a list item, a string piece or, where `name`, `text` and `body` are empty, a comment on a line of its own.
struct OutlineItem {
  std::string_view name;  // of a field
  std::string text;       // of a scalar, as written; the sign without a space
  OutlineBody body;
  std::string_view comment;  // its own text, or the one at the end of the item's line; without white space at its end
  bool empty_line_before = false;
  bool same_line = false;  // begins on the line on which the item before it ended
  bool padded = false;     // some of its tokens stand apart by more than a space: a row that the author lined up

  bool IsComment() const { return name.empty() && text.empty() && body.kind == BodyKind::kNone; }
};

// The fields of the outermost message. InvalidArgument, with the byte offset, where the bytes are not text form; a
// reader's errors say more.
absl::StatusOr<OutlineBody> OutlineText(std::string_view bytes);

}  // namespace withy

#endif  // WITHY_DOCUMENT_TEXT_OUTLINE_H_
