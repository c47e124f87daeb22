#include "schema_rules.h"

#include <utility>

#include "withy/units/unit.h"

namespace withy {
namespace {

using google::protobuf::Descriptor;
using google::protobuf::FieldDescriptor;

FieldRole RoleOf(const FieldDescriptor* field) {
  switch (field->cpp_type()) {
    case FieldDescriptor::CPPTYPE_MESSAGE:
      return UnitsOf(field->message_type()->name()).empty() ? FieldRole::kMessage : FieldRole::kQuantity;
    case FieldDescriptor::CPPTYPE_STRING:
      if (field->name() == "id") return FieldRole::kId;
      if (field->options().ExtensionSize(v1::word) > 0) return FieldRole::kWord;
      if (field->options().ExtensionSize(v1::refers_to) > 0) return FieldRole::kReference;
      return field->options().HasExtension(v1::text_kind) ? FieldRole::kText : FieldRole::kPlain;
    case FieldDescriptor::CPPTYPE_DOUBLE:
    case FieldDescriptor::CPPTYPE_UINT32:
      return FieldRole::kNumber;
    default:
      return FieldRole::kPlain;
  }
}

FieldRules RulesOf(const FieldDescriptor* field) {
  FieldRules rules;
  rules.field = field;
  rules.role = RoleOf(field);
  const auto& options = field->options();
  if (options.HasExtension(v1::plausible)) rules.plausible = &options.GetExtension(v1::plausible);
  rules.text_kind = options.GetExtension(v1::text_kind);
  const bool is_word = rules.role == FieldRole::kWord;
  const int count = is_word ? options.ExtensionSize(v1::word) : options.ExtensionSize(v1::refers_to);
  for (int i = 0; i < count; ++i) {
    rules.names.push_back(is_word ? options.GetExtension(v1::word, i) : options.GetExtension(v1::refers_to, i));
  }
  return rules;
}

}  // namespace

const MessageRules& SchemaRules::For(const Descriptor* message) {
  if (const auto found = rules_.find(message); found != rules_.end()) return *found->second;
  auto made = std::make_unique<MessageRules>();
  MessageRules& rules = *made;
  // Entered before its fields are looked at: a message may hold itself.
  rules_.emplace(message, std::move(made));
  for (int i = 0; i < message->field_count(); ++i) {
    FieldRules field = RulesOf(message->field(i));
    if (field.role == FieldRole::kId) rules.id = field.field;
    // Data of plugins is theirs: no ids of the design stand in it.
    if (field.role == FieldRole::kMessage && !field.field->is_map()) {
      rules.holds_ids |= For(field.field->message_type()).holds_ids;
    }
    if (field.role != FieldRole::kPlain) rules.fields.push_back(std::move(field));
  }
  rules.holds_ids |= rules.id != nullptr;
  return rules;
}

}  // namespace withy
