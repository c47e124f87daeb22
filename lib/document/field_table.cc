#include "field_table.h"

#include <memory>
#include <mutex>

#include "absl/container/flat_hash_map.h"
#include "google/protobuf/descriptor.pb.h"

namespace withy {
namespace {

using google::protobuf::Descriptor;
using google::protobuf::FieldDescriptor;

std::uint32_t Hash(std::string_view name) {
  std::uint32_t hash = 2166136261u;
  for (const char c : name) hash = (hash ^ static_cast<unsigned char>(c)) * 16777619u;
  return hash;
}

void AddName(MessageInfo& info, std::string_view name, std::uint32_t field) {
  std::size_t at = Hash(name) & (info.slots.size() - 1);
  for (; info.slots[at].field != 0; at = (at + 1) & (info.slots.size() - 1)) {
    if (info.slots[at].name == name) return;
  }
  info.slots[at] = {name, field + 1};
}

// "Encoding" (protobuf.dev), table of wire types. Groups do not occur in proto3.
std::uint32_t WireTypeOf(FieldDescriptor::Type type) {
  switch (type) {
    case FieldDescriptor::TYPE_DOUBLE:
    case FieldDescriptor::TYPE_FIXED64:
    case FieldDescriptor::TYPE_SFIXED64:
      return 1;
    case FieldDescriptor::TYPE_STRING:
    case FieldDescriptor::TYPE_BYTES:
    case FieldDescriptor::TYPE_MESSAGE:
      return 2;
    case FieldDescriptor::TYPE_FLOAT:
    case FieldDescriptor::TYPE_FIXED32:
    case FieldDescriptor::TYPE_SFIXED32:
      return 5;
    default:
      return 0;
  }
}

// Field numbers above this are looked up the slow way; the schema's are below 100.
constexpr std::uint32_t kLargestIndexed = 4096;

std::int32_t LastOfEnum(const FieldDescriptor& field) {
  std::int32_t last = 0;
  if (field.enum_type() == nullptr) return last;
  while (field.enum_type()->FindValueByNumber(last + 1) != nullptr) ++last;
  return last;
}

void FillBits(MessageInfo& info) {
  info.screenable = info.fields.size() <= 64;
  if (!info.screenable) return;
  for (FieldInfo& field : info.fields) field.bit = field.repeated ? 0 : std::uint64_t{1} << field.index;
  for (FieldInfo& field : info.fields) {
    field.conflicts = field.bit;
    for (const FieldInfo& other : info.fields) {
      if (field.oneof >= 0 && other.oneof == field.oneof) field.conflicts |= other.bit;
    }
    if (info.map_entry) info.required |= field.bit;
  }
}

void Fill(MessageInfo& info, const Descriptor& descriptor) {
  info.descriptor = &descriptor;
  info.map_entry = descriptor.options().map_entry();
  info.struct_value = descriptor.well_known_type() == Descriptor::WELLKNOWNTYPE_VALUE;
  info.oneofs = static_cast<std::uint32_t>(descriptor.real_oneof_decl_count());
  std::size_t slots = 4;
  while (slots < static_cast<std::size_t>(descriptor.field_count()) * 4) slots *= 2;
  info.slots.resize(slots);
  for (int i = 0; i < descriptor.field_count(); ++i) {
    const FieldDescriptor& field = *descriptor.field(i);
    FieldInfo& entry = info.fields.emplace_back();
    entry.field = &field;
    entry.name = field.name();
    entry.index = static_cast<std::uint32_t>(i);
    entry.number = field.number();
    entry.oneof = field.real_containing_oneof() ? field.real_containing_oneof()->index() : -1;
    entry.type = field.cpp_type();
    entry.wire_type = WireTypeOf(field.type());
    entry.last_of_enum = LastOfEnum(field);
    entry.repeated = field.is_repeated();
    entry.map = field.is_map();
    AddName(info, field.name(), entry.index);
    AddName(info, field.json_name(), entry.index);
    const auto number = static_cast<std::uint32_t>(field.number());
    if (number > kLargestIndexed) continue;
    if (info.by_number.size() <= number) info.by_number.resize(number + 1);
    info.by_number[number] = entry.index + 1;
  }
  FillBits(info);
}

class Tables {
 public:
  const MessageInfo& Of(const Descriptor& descriptor) {
    const std::lock_guard lock(mutex_);
    return Build(descriptor);
  }

 private:
  const MessageInfo& Build(const Descriptor& descriptor) {
    if (const auto known = tables_.find(&descriptor); known != tables_.end()) return *known->second;
    MessageInfo& info = *tables_.emplace(&descriptor, std::make_unique<MessageInfo>()).first->second;
    Fill(info, descriptor);
    for (FieldInfo& field : info.fields) {
      if (field.field->message_type() != nullptr) field.message = &Build(*field.field->message_type());
    }
    return info;
  }

  std::mutex mutex_;
  absl::flat_hash_map<const Descriptor*, std::unique_ptr<MessageInfo>> tables_;
};

}  // namespace

const FieldInfo* MessageInfo::Find(std::string_view name) const {
  for (std::size_t at = Hash(name) & (slots.size() - 1); slots[at].field != 0; at = (at + 1) & (slots.size() - 1)) {
    if (slots[at].name == name) return &fields[slots[at].field - 1];
  }
  return nullptr;
}

const FieldInfo* MessageInfo::FindNumber(std::uint32_t number) const {
  if (number < by_number.size()) return by_number[number] == 0 ? nullptr : &fields[by_number[number] - 1];
  if (number <= kLargestIndexed) return nullptr;
  for (const FieldInfo& field : fields) {
    if (static_cast<std::uint32_t>(field.number) == number) return &field;
  }
  return nullptr;
}

std::vector<std::string_view> MessageInfo::Names() const {
  std::vector<std::string_view> names;
  for (const FieldInfo& field : fields) names.push_back(field.name);
  return names;
}

const MessageInfo& InfoOf(const Descriptor& descriptor) {
  static Tables& tables = *new Tables;  // never destroyed: readers may run while the program ends
  return tables.Of(descriptor);
}

}  // namespace withy
