// The value of any field that is not a message, read by reflection once for every writer and for the digest.
#ifndef WITHY_DOCUMENT_SCALAR_H_
#define WITHY_DOCUMENT_SCALAR_H_

#include <google/protobuf/descriptor.h>
#include <google/protobuf/message.h>

#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace withy {

struct EnumNumber {
  int value;
};
struct RawBytes {  // of a `bytes` field; a `string` field is a string_view
  std::string_view value;
};
using Scalar = std::variant<double, std::int64_t, std::uint64_t, bool, EnumNumber, std::string_view, RawBytes>;

inline constexpr int kSingular = -1;

// The value of `field`, or of its item `index`. REQUIRES: not a message field. Text points into `message`.
Scalar GetScalar(const google::protobuf::Message& message, const google::protobuf::FieldDescriptor* field,
                 int index = kSingular);

inline bool IsMessage(const google::protobuf::FieldDescriptor* field) {
  return field->cpp_type() == google::protobuf::FieldDescriptor::CPPTYPE_MESSAGE;
}

// True where the field says something: a list has items, a field with presence is set, another differs from its
// default.
bool IsPresent(const google::protobuf::Message& message, const google::protobuf::FieldDescriptor* field);

// The entries of a map field, sorted by key. REQUIRES: keys are strings, as everywhere in the schema.
std::vector<const google::protobuf::Message*> SortedEntries(const google::protobuf::Message& message,
                                                            const google::protobuf::FieldDescriptor* field);
// Key and value of a map entry.
std::string_view EntryKey(const google::protobuf::Message& entry);
inline const google::protobuf::FieldDescriptor* EntryValueField(const google::protobuf::FieldDescriptor* map) {
  return map->message_type()->map_value();
}

// "DATE" or, where the schema has no name for it, the number.
std::string EnumText(const google::protobuf::FieldDescriptor* field, EnumNumber number);

}  // namespace withy

#endif  // WITHY_DOCUMENT_SCALAR_H_
