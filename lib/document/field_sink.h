// Fills a message from what a reader of text or JSON finds, and refuses what would be lost or misread: a field given
// twice, two members of a oneof, numbers out of range or not finite, unknown names.
//
//   FieldSink sink(&design, &reading);
//   const FieldInfo* field = sink.Find("length");        // null: sink.UnknownName(...)
//   if (sink.Begin(*field, name_offset)) {               // false: reported; skip the value
//     if (sink.Open(brace_offset)) { ...fields of the inner message...; sink.Close(end_offset); }
//   }
//
// Values go to the field that was begun last. Everything wrong is reported to the Reading with the field's path.
#ifndef WITHY_DOCUMENT_FIELD_SINK_H_
#define WITHY_DOCUMENT_FIELD_SINK_H_

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "absl/container/flat_hash_map.h"
#include "field_table.h"
#include "google/protobuf/message.h"
#include "reading.h"

namespace withy {

class FieldSink {
 public:
  // Both must outlive the sink.
  FieldSink(google::protobuf::Message* root, Reading* reading);

  // --- fields of the open message ---
  const FieldInfo* Find(std::string_view name) const { return top().info->Find(name); }
  const MessageInfo& info() const { return *top().info; }
  // Reports a name that the open message does not have. The value is the caller's to skip.
  void UnknownName(std::string_view name, std::uint32_t offset);
  // Where fields known by number only are kept.
  google::protobuf::UnknownFieldSet* UnknownFields();

  // Begins one value: of a singular field, or the next item of a list or map. False where the field was given before,
  // or another member of its oneof was; then nothing is begun.
  bool Begin(const FieldInfo& field, std::uint32_t offset);
  // Only the check that `field` is given once: for JSON, where a list too is given once.
  bool Once(const FieldInfo& field, std::uint32_t offset);

  // --- the value of the field begun last; `offset` is where the value stands ---
  void SetDouble(double value);                                                   // REQUIRES: finite
  void SetInteger(bool negative, std::uint64_t magnitude, std::uint32_t offset);  // any number type; range checked
  void SetBool(bool value);
  void SetString(std::string value);
  void SetEnumName(std::string_view name, std::uint32_t offset);
  // Reports that `found` ("the number 12") is no value of the field begun last, and says what would be.
  void BadValue(std::uint32_t offset, std::string_view found);
  void BadNumber(std::uint32_t offset, std::string message, std::string help = "");

  // Enters the message that is the value. False (reported, reading stopped) where it is too deep.
  bool Open(std::uint32_t offset);
  // Leaves it. `offset` is where it ends.
  void Close(std::uint32_t offset);
  // The open message.
  google::protobuf::Message* message() const { return top().message; }
  // Messages open, the root not counted.
  std::size_t depth() const { return frames_.size() - 1; }
  // Where the open message's field begins.
  std::uint32_t opened_at() const { return top().offset; }

  // The path of the open message, and of the field begun last in it.
  FieldPath PathOfMessage() const;
  FieldPath PathOfField() const;
  const FieldInfo* field() const { return top().field; }
  // For readers that fill well-known messages themselves.
  std::uint32_t node() const { return top().field_node; }

 private:
  struct Frame {
    google::protobuf::Message* message;
    const MessageInfo* info;
    const FieldInfo* field = nullptr;  // begun last
    std::uint32_t item = 0;            // its index in a list
    std::uint32_t field_node = 0;      // its node in the source map
    std::uint32_t node = 0;            // of the message
    std::uint32_t offset = 0;
    std::uint32_t seen = 0;  // where its part of seen_ begins
  };
  Frame& top() { return frames_.back(); }
  const Frame& top() const { return frames_.back(); }
  bool OnlyOneOf(const FieldInfo& field, std::uint32_t offset);
  void CloseMapEntry(const Frame& entry, std::uint32_t offset);
  FieldPath PathOfFrames(std::size_t count) const;

  std::vector<Frame> frames_;
  // For every open message: where each field was first given (offset + 1; 0 = not yet), then for each oneof the
  // position of the member given (+ 1).
  std::vector<std::uint32_t> seen_;
  // (node of the map's owner, key) -> where the entry begins.
  absl::flat_hash_map<std::pair<std::uint32_t, std::string>, std::uint32_t> keys_;
  Reading& reading_;
};

}  // namespace withy

#endif  // WITHY_DOCUMENT_FIELD_SINK_H_
