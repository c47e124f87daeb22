// What the schema's options say of each field (words.proto), looked up once per kind of message instead of once per
// value.
#ifndef WITHY_DOCUMENT_SCHEMA_RULES_H_
#define WITHY_DOCUMENT_SCHEMA_RULES_H_

#include <google/protobuf/descriptor.h>

#include <memory>
#include <string_view>
#include <vector>

#include "absl/container/flat_hash_map.h"
#include "withy/v1/words.pb.h"

namespace withy {

// What a check makes of a field.
enum class FieldRole {
  kMessage,   // to be walked into
  kQuantity,  // a message with a unit
  kNumber,
  kId,
  kWord,       // of an open list
  kReference,  // the id of something
  kText,       // of a kind that can be checked
  kPlain,      // nothing to check
};

struct FieldRules {
  const google::protobuf::FieldDescriptor* field = nullptr;
  FieldRole role = FieldRole::kPlain;
  const v1::Plausible* plausible = nullptr;  // nullptr where the schema gives no range
  v1::TextKind::Value text_kind = v1::TextKind::UNSPECIFIED;
  std::vector<std::string_view> names;  // known words, or the messages it may refer to
};

struct MessageRules {
  std::vector<FieldRules> fields;  // in the schema's order
  const google::protobuf::FieldDescriptor* id = nullptr;
  bool holds_ids = false;  // it, or something within it, has an id
};

// Rules by message; made when first asked for. Not for several threads at once.
class SchemaRules {
 public:
  const MessageRules& For(const google::protobuf::Descriptor* message);

 private:
  absl::flat_hash_map<const google::protobuf::Descriptor*, std::unique_ptr<MessageRules>> rules_;
};

}  // namespace withy

#endif  // WITHY_DOCUMENT_SCHEMA_RULES_H_
