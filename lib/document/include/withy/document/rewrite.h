// Changing fields of a design that is kept as a file, without touching anything else in it.
//
//   v1::Design edited = document.design;
//   edited.mutable_blank()->mutable_sections(0)->mutable_modulus()->set_gpa(110);
//   RewriteFields(document, edited, {FieldPath().Field("blank").Field("sections").Item("b", 0).Field("modulus")});
//
// The file is its author's: every byte that is not of these fields stays, comments and layout included. A field that
// was there is replaced where it stands; one that was not goes to the end of its message, on the line of the others
// where those are on one; an item beyond the end of a list goes behind its last. What comes out is read again before it
// is given back, so that it always says what `edited` says.
#ifndef WITHY_DOCUMENT_REWRITE_H_
#define WITHY_DOCUMENT_REWRITE_H_

#include <string>
#include <vector>

#include "absl/status/statusor.h"
#include "withy/document/document.h"

namespace withy {

// The bytes of `document`, in the form it is in, with the fields at `paths` as `edited` has them; items by their index,
// and an item that is new only as the next of its list. Binary is written again, unknown fields kept.
//
// FailedPrecondition, with what to do: a design of version 0. InvalidArgument: a path that leads nowhere in `edited`,
// or fields that cannot be written so that they are read back (`edited` differs elsewhere, too).
absl::StatusOr<std::string> RewriteFields(const Document& document, const v1::Design& edited,
                                          const std::vector<FieldPath>& paths);

}  // namespace withy

#endif  // WITHY_DOCUMENT_REWRITE_H_
