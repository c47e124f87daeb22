// Walks the wire format of Protocol Buffers beside the schema and reports what is wrong, without building anything.
//
// The rules are those of "Encoding" (protobuf.dev): a tag is field number * 8 + wire type; wire type 0 is a varint, 1
// eight bytes, 2 a length and that many bytes, 3 and 4 the two ends of a group, 5 four bytes.
#ifndef WITHY_DOCUMENT_BINARY_WALKER_H_
#define WITHY_DOCUMENT_BINARY_WALKER_H_

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "field_table.h"
#include "field_trail.h"
#include "reading.h"

namespace withy {

class BinaryWalker {
 public:
  BinaryWalker(const MessageInfo& root, Reading* reading)
      : reading_(*reading), bytes_(reading->bytes()), trail_(root, reading) {}

  // Walks all of the bytes as one message. Where the wire format itself is damaged the reading is stopped, for nothing
  // after that place can be trusted; other faults do not stop it. The source map is filled. False where the parser
  // would not take the bytes: they are damaged, or text in them is not UTF-8.
  bool Walk();

 private:
  void ReadField();
  void ReadKnown(const FieldInfo& field, std::uint32_t wire_type, std::uint32_t tag_offset);
  void ReadLengthDelimited(const FieldInfo& field, std::uint32_t tag_offset);
  void ReadPacked(const FieldInfo& field);
  void ReadVarintField(const FieldInfo& field);
  void ReadFixed(const FieldInfo& field, std::uint32_t length);
  void ReadUnknown(std::uint32_t number, std::uint32_t wire_type, std::uint32_t tag_offset);
  // Skips a value of that wire type; the fields of a group one by one.
  void SkipValue(std::uint32_t number, std::uint32_t wire_type);
  void SkipGroup(std::uint32_t number);
  // The same for a refused value of a known field, in which text that is not UTF-8 would trouble the parser.
  void SkipKnown(const FieldInfo& field, std::uint32_t wire_type);

  // Each is false (reported, stopped) where the bytes end too early or make no sense.
  bool ReadTag(std::uint32_t* number, std::uint32_t* wire_type);
  bool ReadVarint(std::uint64_t* value);
  bool ReadLength(std::uint32_t* end);
  bool Has(std::uint64_t length);
  void Damaged(const Code& code, std::uint32_t offset, std::string message);

  Reading& reading_;
  std::string_view bytes_;
  FieldTrail trail_;
  std::uint32_t at_ = 0;
  bool parseable_ = true;
  std::vector<std::uint32_t> ends_;  // of the messages that are open
};

// Only the places, of bytes that were found sound before.
SourceMap PositionsInBinary(const MessageInfo& root, std::string_view bytes);

}  // namespace withy

#endif  // WITHY_DOCUMENT_BINARY_WALKER_H_
