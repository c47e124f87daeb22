// Fills a message from what a reader of text or JSON finds. What may be given where is the FieldTrail's to judge; here
// numbers are checked for their range, names of enums are looked up, and unknown names get their nearest.
//
//   FieldSink sink(&design, &reading);
//   const FieldInfo* field = sink.Find("length");        // null: sink.UnknownName(...)
//   if (sink.trail().Begin(*field, name_offset)) {       // false: reported; skip the value
//     if (sink.Open(brace_offset)) { ...fields of the inner message...; sink.Close(end_offset); }
//   }
//
// Values go to the field that was begun last. Everything wrong is reported to the Reading with the field's path.
#ifndef WITHY_DOCUMENT_FIELD_SINK_H_
#define WITHY_DOCUMENT_FIELD_SINK_H_

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "field_table.h"
#include "field_trail.h"
#include "google/protobuf/message.h"
#include "reading.h"

namespace withy {

class FieldSink {
 public:
  // Both must outlive the sink.
  FieldSink(google::protobuf::Message* root, Reading* reading);

  FieldTrail& trail() { return trail_; }
  const FieldTrail& trail() const { return trail_; }

  // --- fields of the open message ---
  const FieldInfo* Find(std::string_view name) const { return trail_.info().Find(name); }
  // Reports a name that the open message does not have. The value is the caller's to skip; `value` is its text where it
  // is at hand, for what to write instead of a unit that the schema does not have.
  void UnknownName(std::string_view name, std::uint32_t offset, std::string_view value = "");
  // Where fields known by number only are kept.
  google::protobuf::UnknownFieldSet* UnknownFields();

  // --- the value of the field begun last; `offset` is where the value stands ---
  void SetDouble(double value);                                                   // REQUIRES: finite
  void SetInteger(bool negative, std::uint64_t magnitude, std::uint32_t offset);  // whole numbers and enums
  void SetBool(bool value);
  void SetString(std::string value);
  void SetEnumName(std::string_view name, std::uint32_t offset);
  // Reports that `found` ("the number 12") is no value of the field, and says what would be: `help`, or else how a
  // field of its kind is written.
  void BadValue(std::uint32_t offset, std::string_view found, std::string help = "");
  void BadNumber(std::uint32_t offset, std::string message, std::string help = "");

  // Enters the message that is the value. False (reported, reading stopped) where it is too deep.
  bool Open(std::uint32_t offset);
  // Leaves it. `offset` is where it ends.
  void Close(std::uint32_t offset);
  // The open message.
  google::protobuf::Message* message() const { return messages_.back(); }

 private:
  Reading& reading_;
  FieldTrail trail_;
  std::vector<google::protobuf::Message*> messages_;
};

}  // namespace withy

#endif  // WITHY_DOCUMENT_FIELD_SINK_H_
