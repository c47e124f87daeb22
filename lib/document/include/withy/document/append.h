// Adding to the log of a design that is kept as a file, without touching anything else in it.
//
//   v1::Entry entry;
//   entry.set_id(NextEntryId(document.design));
//   entry.set_note("read twice");
//   absl::StatusOr<std::string> bytes = AppendLog(document, {entry});
//
// The file is its author's: every byte that was there stays, comments and layout included, and the new entries are laid
// out as `fmt` would. What comes out is read again before it is given back, so that it always says what the file said
// and the new entries behind it.
#ifndef WITHY_DOCUMENT_APPEND_H_
#define WITHY_DOCUMENT_APPEND_H_

#include <string>
#include <vector>

#include "absl/status/statusor.h"
#include "withy/document/document.h"

namespace withy {

// The bytes of `document` with `entries` at the end of its log, in the form it is in. Text: behind the last entry that is
// there, else at the end of the file; lines end as the file's do. JSON: as the last items of "log", which is made where
// there is none. Binary: at the end.
//
// FailedPrecondition, with what to do: a design of version 0, which has no log. InvalidArgument: the entries cannot be
// added so that they are read back (a file that is not what was read, text that is not UTF-8).
absl::StatusOr<std::string> AppendLog(const Document& document, const std::vector<v1::Entry>& entries);

// "e12": one more than the highest number of an entry named so, and the id of nothing else in the design.
std::string NextEntryId(const v1::Design& design);

}  // namespace withy

#endif  // WITHY_DOCUMENT_APPEND_H_
