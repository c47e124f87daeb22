// Values of fields that are known by number only, as the text form writes them.
#ifndef WITHY_DOCUMENT_TEXT_NUMBERED_H_
#define WITHY_DOCUMENT_TEXT_NUMBERED_H_

#include <cstddef>

#include "google/protobuf/unknown_field_set.h"
#include "reading.h"
#include "text_cursor.h"

namespace withy {

// The written shape tells the wire type: 0x and 8 digits fixed32, 0x and 16 digits fixed64, other whole numbers varint,
// text in quotes length-delimited, braces a group.
class NumberedValueReader {
 public:
  // `depth` messages are open already.
  NumberedValueReader(TextCursor* cursor, Reading* reading, std::size_t depth)
      : cursor_(*cursor), reading_(*reading), depth_(depth) {}

  // Reads the value of field `number` into `fields`, from the colon or brace after the number. False at a token that does
  // not fit, where the cursor then stands.
  bool Read(int number, google::protobuf::UnknownFieldSet* fields);

 private:
  bool ReadNumber(int number, google::protobuf::UnknownFieldSet* fields);
  bool ReadText(int number, google::protobuf::UnknownFieldSet* fields);
  bool ReadGroup(google::protobuf::UnknownFieldSet* fields);

  TextCursor& cursor_;
  Reading& reading_;
  std::size_t depth_;
};

}  // namespace withy

#endif  // WITHY_DOCUMENT_TEXT_NUMBERED_H_
