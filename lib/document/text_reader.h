// Reads the text form (Protocol Buffers text format) into a message.
#ifndef WITHY_DOCUMENT_TEXT_READER_H_
#define WITHY_DOCUMENT_TEXT_READER_H_

#include <cstddef>

#include "google/protobuf/message.h"
#include "reading.h"

namespace withy {

// Fills `root` from the reading's bytes, which are valid UTF-8 and less than 4 GiB. Goes on after an error as far as
// sensible. Accepts the language as documented for Protocol Buffers, less extension names and Any in square brackets;
// fields of which only the number is known are kept (varint in decimal, fixed32 as 0x and 8 digits, fixed64 as 0x and
// 16 digits, length-delimited as text in quotes, groups in braces). Returns the number of comments.
//
// protobuf's own parser is not used: it stops at the first error, reports the column behind a name, loses the places of
// list items, and accepts 1e999 and duplicate keys.
std::size_t ReadText(Reading* reading, google::protobuf::Message* root);

}  // namespace withy

#endif  // WITHY_DOCUMENT_TEXT_READER_H_
