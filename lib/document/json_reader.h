// Reads the JSON form into a message.
#ifndef WITHY_DOCUMENT_JSON_READER_H_
#define WITHY_DOCUMENT_JSON_READER_H_

#include "google/protobuf/message.h"
#include "reading.h"

namespace withy {

// Fills `root` from the reading's bytes, which are valid UTF-8 and less than 4 GiB. RFC 8259 to the letter (no
// comments, no trailing commas), keys in either spelling (`tip_top`, `tipTop`), each once. Values as the Protocol
// Buffers JSON mapping has them, but strict: a number is a number and never text, no "NaN", and a number in
// `extensions` that a double cannot hold exactly as a whole number is refused. `null` is 'not given', within a list it
// is refused.
//
// protobuf's own parser is not used: its errors carry no line, and it accepts duplicate keys, trailing commas and
// "NaN".
void ReadJson(Reading* reading, google::protobuf::Message* root);

}  // namespace withy

#endif  // WITHY_DOCUMENT_JSON_READER_H_
