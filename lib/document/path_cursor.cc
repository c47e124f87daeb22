#include "withy/document/path_cursor.h"

#include "google/protobuf/descriptor.h"

namespace withy {
namespace {

using google::protobuf::FieldDescriptor;
using google::protobuf::Message;

// The entry of map `field` with this key (text keys only, as the schema's are); null: none.
const Message* EntryOf(const Message& owner, const FieldDescriptor& field, const std::string& key) {
  if (field.message_type()->map_key()->cpp_type() != FieldDescriptor::CPPTYPE_STRING) return nullptr;
  const auto* reflection = owner.GetReflection();
  for (int i = 0; i < reflection->FieldSize(owner, &field); ++i) {
    const Message& entry = reflection->GetRepeatedMessage(owner, &field, i);
    if (entry.GetReflection()->GetString(entry, field.message_type()->map_key()) == key) return &entry;
  }
  return nullptr;
}

// The index of the item with this id; -1: none. The item at `likely` is tried first: a path made from the design itself
// gives the right one, and many of them together would else cost a search of the whole list each.
int IndexOfId(const Message& owner, const FieldDescriptor& field, const std::string& id, int likely) {
  const auto* reflection = owner.GetReflection();
  const int size = reflection->FieldSize(owner, &field);
  const auto is_at = [&](int i) { return IdOf(reflection->GetRepeatedMessage(owner, &field, i)) == id; };
  if (likely >= 0 && likely < size && is_at(likely)) return likely;
  for (int i = 0; i < size; ++i) {
    if (is_at(i)) return i;
  }
  return -1;
}

}  // namespace

std::string IdOf(const Message& message) {
  const FieldDescriptor* field = message.GetDescriptor()->FindFieldByName("id");
  if (field == nullptr || field->is_repeated() || field->cpp_type() != FieldDescriptor::CPPTYPE_STRING) return "";
  return message.GetReflection()->GetString(message, field);
}

bool PathCursor::Advance(const FieldPath::Step& step) {
  return step.field.empty() ? AdvanceToItem(step) : AdvanceToField(step.field);
}

bool PathCursor::AdvanceToField(const std::string& name) {
  if (message_ == nullptr) return false;
  const FieldDescriptor* field = message_->GetDescriptor()->FindFieldByName(name);
  if (field == nullptr) return false;
  owner_ = message_;
  field_ = field;
  index_ = -1;
  const bool holds_message = !field->is_repeated() && field->cpp_type() == FieldDescriptor::CPPTYPE_MESSAGE;
  message_ = holds_message ? &owner_->GetReflection()->GetMessage(*owner_, field) : nullptr;
  return true;
}

bool PathCursor::AdvanceToItem(const FieldPath::Step& step) {
  if (owner_ == nullptr || field_ == nullptr || !field_->is_repeated()) return false;
  if (field_->is_map()) {
    const Message* entry = EntryOf(*owner_, *field_, step.id);
    if (entry == nullptr) return false;
    const FieldDescriptor* value = field_->message_type()->map_value();
    message_ = value->cpp_type() == FieldDescriptor::CPPTYPE_MESSAGE
                   ? &entry->GetReflection()->GetMessage(*entry, value)
                   : nullptr;
    owner_ = nullptr;
    return true;
  }
  const bool messages = field_->cpp_type() == FieldDescriptor::CPPTYPE_MESSAGE;
  int index = !step.id.empty() && messages ? IndexOfId(*owner_, *field_, step.id, step.index) : -1;
  if (index < 0) index = step.index;
  const auto* reflection = owner_->GetReflection();
  if (index < 0 || index >= reflection->FieldSize(*owner_, field_)) return false;
  index_ = index;
  message_ = messages ? &reflection->GetRepeatedMessage(*owner_, field_, index) : nullptr;
  owner_ = nullptr;
  return true;
}

FieldPath WithIds(const FieldPath& path, const Message& root) {
  PathCursor cursor(root);
  FieldPath named;
  bool known = true;
  for (const FieldPath::Step& step : path.steps()) {
    known = known && cursor.Advance(step);
    const bool item = step.field.empty();
    const bool nameless = item && step.id.empty() && known && cursor.message() != nullptr;
    if (item) {
      named = std::move(named).Item(nameless ? IdOf(*cursor.message()) : step.id, step.index);
    } else {
      named = std::move(named).Field(step.field);
    }
  }
  return named;
}

}  // namespace withy
