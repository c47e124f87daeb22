// What the readers ask of the schema for every field they meet, laid out for speed: names hashed, numbers indexed.
//
//   const MessageInfo& design = InfoOf(*v1::Design::descriptor());
//   const FieldInfo* field = design.Find("tip_top");   // "tipTop" too; null: no such field
//
// Built once for a message type and all it can hold, then only read; safe from several threads.
#ifndef WITHY_DOCUMENT_FIELD_TABLE_H_
#define WITHY_DOCUMENT_FIELD_TABLE_H_

#include <cstdint>
#include <string_view>
#include <vector>

#include "google/protobuf/descriptor.h"

namespace withy {

struct MessageInfo;

struct FieldInfo {
  const google::protobuf::FieldDescriptor* field = nullptr;
  const MessageInfo* message = nullptr;  // of a message field
  std::string_view name;                 // of the schema
  std::uint32_t index = 0;               // in MessageInfo::fields
  std::int32_t number = 0;
  std::int32_t oneof = -1;  // index of the oneof; -1: none (an `optional` field's own one does not count)
  google::protobuf::FieldDescriptor::CppType type = google::protobuf::FieldDescriptor::CPPTYPE_INT32;
  std::uint32_t wire_type = 0;    // of one value in the binary form, as on the wire
  std::int32_t last_of_enum = 0;  // the values 0 to this exist
  std::uint64_t bit = 0;          // of a singular field, where its message is `screenable`
  std::uint64_t conflicts = 0;    // the bits of itself and of the other members of its oneof
  bool repeated = false;          // list or map
  bool map = false;
};

struct MessageInfo {
  const google::protobuf::Descriptor* descriptor = nullptr;
  std::vector<FieldInfo> fields;  // in order of the schema
  std::uint32_t oneofs = 0;
  bool screenable = false;     // at most 64 fields, so that each has a bit
  std::uint64_t required = 0;  // bits of key and value of a map entry
  bool map_entry = false;
  bool struct_value = false;  // google.protobuf.Value, which without a kind cannot be written as JSON

  // By the schema's name or its lowerCamelCase JSON name.
  const FieldInfo* Find(std::string_view name) const;
  const FieldInfo* FindNumber(std::uint32_t number) const;
  // The schema's names, for "did you mean".
  std::vector<std::string_view> Names() const;

  // Open addressing: positions in `fields` + 1; 0 = free. The hash of a name is its FNV-1a (32 bits).
  struct Slot {
    std::string_view name;
    std::uint32_t field = 0;
  };
  std::vector<Slot> slots;               // a power of two, at most half full
  std::vector<std::uint32_t> by_number;  // position + 1, up to the largest number
};

const MessageInfo& InfoOf(const google::protobuf::Descriptor& descriptor);

}  // namespace withy

#endif  // WITHY_DOCUMENT_FIELD_TABLE_H_
