// Reads the binary form into a message.
#ifndef WITHY_DOCUMENT_BINARY_READER_H_
#define WITHY_DOCUMENT_BINARY_READER_H_

#include "google/protobuf/message.h"
#include "reading.h"

namespace withy {

// Fills `root` from the reading's bytes (less than 4 GiB). What protobuf's parser would pass over in silence or refuse
// without a place is found by walks over the wire format beside it: a field given twice (two files run together), two
// members of a oneof, numbers that are not finite, wrong wire types, a cut end. Unknown fields are kept.
void ReadBinary(Reading* reading, google::protobuf::Message* root);

}  // namespace withy

#endif  // WITHY_DOCUMENT_BINARY_READER_H_
