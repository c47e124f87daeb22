// The digest of what a design means, the same in every form.
//
// It is SHA-256 (FIPS 180-4) of these bytes. The header, then the message Design:
//
//   header   "withy-digest/1\n"
//   message  for every field that is present, by rising field number:
//              field number  u32
//              for a singular field, its value
//              for a list      'l', number of items u64, each item's value in order
//              for a map       'p', number of entries u64, for each entry by rising key (as bytes): key value, value
//            for every unknown field, by rising number, fields of one number in their order:
//              0 u32, field number u32, then 'v' u64 (varint), 'w' u32 (fixed32), 'x' u64 (fixed64),
//              'y' length u64 and bytes, or 'g' and the group's unknown fields as a message
//            end            0 u32, 0 u32
//   value    'd' the eight bytes of the IEEE 754 double; 'i' i64; 'u' u64; 'b' one byte, 0 or 1; 'e' i64 (enum number);
//            's' length u64 and UTF-8 bytes; 'y' length u64 and bytes; 'm' and the message
//
// All integers and doubles are little-endian. Everything has a tag and a length or an end, so two different designs
// never give the same bytes. A field is present as the schema's presence rules say: a message or an `optional` number
// that is set, even to zero; a string or enum that is not empty or UNSPECIFIED; a bool that is true; a list or map that
// has items. Doubles count by their bits: 0 and -0 differ. A google.protobuf.Value without a kind is null, as in JSON.
#include <google/protobuf/struct.pb.h>
#include <google/protobuf/unknown_field_set.h>
#include <sodium/crypto_hash_sha256.h>

#include <algorithm>
#include <bit>
#include <string>
#include <variant>
#include <vector>

#include "absl/strings/escaping.h"
#include "absl/strings/str_cat.h"
#include "scalar.h"
#include "withy/document/document.h"

namespace withy {
namespace {

using google::protobuf::Descriptor;
using google::protobuf::FieldDescriptor;
using google::protobuf::Message;
using google::protobuf::Reflection;
using google::protobuf::UnknownField;
using google::protobuf::UnknownFieldSet;

constexpr std::string_view kHeader = "withy-digest/1\n";
constexpr std::size_t kChunk = 1 << 16;  // bytes gathered before they are hashed

class Digester {
 public:
  Digester() {
    crypto_hash_sha256_init(&state_);
    bytes_.append(kHeader);
  }
  void AddMessage(const Message& message);
  std::string Finish();

 private:
  void AddField(const Message& message, const FieldDescriptor* field);
  void AddItem(const Message& message, const FieldDescriptor* field, int index);
  void AddScalar(const Scalar& value);
  void AddText(char tag, std::string_view text);
  void AddUnknown(const UnknownFieldSet& fields);
  void AddUnknownField(const UnknownField& field);
  void End() { U32(0), U32(0); }

  void Tag(char tag) { bytes_.push_back(tag); }
  void U32(std::uint32_t value) { LittleEndian(value, 4); }
  void U64(std::uint64_t value) { LittleEndian(value, 8); }
  void LittleEndian(std::uint64_t value, std::size_t size) {
    char bytes[8];
    for (char& byte : bytes) byte = static_cast<char>(value), value >>= 8;
    bytes_.append(bytes, size);
  }
  void Flush() {
    crypto_hash_sha256_update(&state_, reinterpret_cast<const unsigned char*>(bytes_.data()), bytes_.size());
    bytes_.clear();
  }

  crypto_hash_sha256_state state_;
  std::string bytes_;
};

bool IsNull(const Message& message) {
  if (message.GetDescriptor()->well_known_type() != Descriptor::WELLKNOWNTYPE_VALUE) return false;
  const Descriptor* type = message.GetDescriptor();
  const FieldDescriptor* kind = message.GetReflection()->GetOneofFieldDescriptor(message, type->oneof_decl(0));
  return kind == nullptr || kind->number() == google::protobuf::Value::kNullValueFieldNumber;
}

void Digester::AddMessage(const Message& message) {
  if (bytes_.size() > kChunk) Flush();
  if (IsNull(message)) {
    U32(google::protobuf::Value::kNullValueFieldNumber);
    AddScalar(EnumNumber{google::protobuf::NULL_VALUE});
  } else {
    std::vector<const FieldDescriptor*> fields;
    message.GetReflection()->ListFields(message, &fields);  // present, by rising number
    for (const FieldDescriptor* field : fields) AddField(message, field);
  }
  AddUnknown(message.GetReflection()->GetUnknownFields(message));
  End();
}

void Digester::AddField(const Message& message, const FieldDescriptor* field) {
  U32(static_cast<std::uint32_t>(field->number()));
  if (field->is_map()) {
    const std::vector<const Message*> entries = SortedEntries(message, field);
    Tag('p');
    U64(entries.size());
    for (const Message* entry : entries) {
      AddText('s', EntryKey(*entry));
      AddItem(*entry, EntryValueField(field), kSingular);
    }
  } else if (field->is_repeated()) {
    const int size = message.GetReflection()->FieldSize(message, field);
    Tag('l');
    U64(static_cast<std::uint64_t>(size));
    for (int i = 0; i < size; ++i) AddItem(message, field, i);
  } else {
    AddItem(message, field, kSingular);
  }
}

void Digester::AddItem(const Message& message, const FieldDescriptor* field, int index) {
  if (!IsMessage(field)) return AddScalar(GetScalar(message, field, index));
  const Reflection* reflection = message.GetReflection();
  Tag('m');
  AddMessage(index == kSingular ? reflection->GetMessage(message, field)
                                : reflection->GetRepeatedMessage(message, field, index));
}

void Digester::AddScalar(const Scalar& value) {
  if (const auto* number = std::get_if<double>(&value)) {
    Tag('d'), U64(std::bit_cast<std::uint64_t>(*number));
  } else if (const auto* text = std::get_if<std::string_view>(&value)) {
    AddText('s', *text);
  } else if (const auto* name = std::get_if<EnumNumber>(&value)) {
    Tag('e'), U64(static_cast<std::uint64_t>(std::int64_t{name->value}));
  } else if (const auto* truth = std::get_if<bool>(&value)) {
    Tag('b'), Tag(*truth ? 1 : 0);
  } else if (const auto* whole = std::get_if<std::int64_t>(&value)) {
    Tag('i'), U64(static_cast<std::uint64_t>(*whole));
  } else if (const auto* natural = std::get_if<std::uint64_t>(&value)) {
    Tag('u'), U64(*natural);
  } else if (const auto* bytes = std::get_if<RawBytes>(&value)) {
    AddText('y', bytes->value);
  }
}

void Digester::AddText(char tag, std::string_view text) {
  Tag(tag), U64(text.size());
  bytes_.append(text);
}

void Digester::AddUnknown(const UnknownFieldSet& fields) {
  std::vector<const UnknownField*> sorted;
  for (int i = 0; i < fields.field_count(); ++i) sorted.push_back(&fields.field(i));
  std::stable_sort(sorted.begin(), sorted.end(),
                   [](const UnknownField* a, const UnknownField* b) { return a->number() < b->number(); });
  for (const UnknownField* field : sorted) AddUnknownField(*field);
}

void Digester::AddUnknownField(const UnknownField& field) {
  U32(0), U32(static_cast<std::uint32_t>(field.number()));
  switch (field.type()) {
    case UnknownField::TYPE_VARINT:
      Tag('v'), U64(field.varint());
      break;
    case UnknownField::TYPE_FIXED32:
      Tag('w'), U32(field.fixed32());
      break;
    case UnknownField::TYPE_FIXED64:
      Tag('x'), U64(field.fixed64());
      break;
    case UnknownField::TYPE_LENGTH_DELIMITED:
      AddText('y', field.length_delimited());
      break;
    case UnknownField::TYPE_GROUP:
      Tag('g'), AddUnknown(field.group()), End();
      break;
  }
}

std::string Digester::Finish() {
  Flush();
  unsigned char hash[crypto_hash_sha256_BYTES];
  crypto_hash_sha256_final(&state_, hash);
  return absl::StrCat("sha256:",
                      absl::BytesToHexString(absl::string_view(reinterpret_cast<char*>(hash), sizeof(hash))));
}

}  // namespace

std::string DesignDigest(const v1::Design& design) {
  Digester digester;
  digester.AddMessage(design);
  return digester.Finish();
}

}  // namespace withy
