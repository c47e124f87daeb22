#include "support/random_design.h"

#include <google/protobuf/descriptor.pb.h>
#include <google/protobuf/struct.pb.h>
#include <google/protobuf/unknown_field_set.h>

#include <cmath>
#include <cstring>
#include <limits>

#include "withy/v1/words.pb.h"

namespace withy {

using google::protobuf::Descriptor;
using google::protobuf::FieldDescriptor;
using google::protobuf::OneofDescriptor;
using google::protobuf::Reflection;
using google::protobuf::UnknownFieldSet;

namespace {

// Code points that trip writers and readers: quotes, escapes, comment marks, controls, line separators, marks that turn
// the writing direction, the byte order mark, non-characters, the first and last of each UTF-8 length.
constexpr char32_t kTrickyPoints[] = {0x00,   0x01,   0x08,   0x09,   0x0A,    0x0B,    0x0D,    0x1F,   0x20,
                                      0x22,   0x23,   0x27,   0x2F,   0x5C,    0x7B,    0x7D,    0x7E,   0x7F,
                                      0x80,   0x85,   0xA0,   0x7FF,  0x800,   0x2028,  0x2029,  0x202E, 0xD7FF,
                                      0xE000, 0xFEFF, 0xFFFD, 0xFFFF, 0x10000, 0x1F3A3, 0x10FFFF};

void AppendPoint(char32_t point, std::string* text) {
  const auto put = [text](char32_t byte) { text->push_back(static_cast<char>(byte)); };
  if (point < 0x80) {
    put(point);
  } else if (point < 0x800) {
    put(0xC0 | point >> 6), put(0x80 | (point & 0x3F));
  } else if (point < 0x10000) {
    put(0xE0 | point >> 12), put(0x80 | (point >> 6 & 0x3F)), put(0x80 | (point & 0x3F));
  } else {
    put(0xF0 | point >> 18), put(0x80 | (point >> 12 & 0x3F)), put(0x80 | (point >> 6 & 0x3F)),
        put(0x80 | (point & 0x3F));
  }
}

std::string SoundText(v1::TextKind::Value kind) {
  switch (kind) {
    case v1::TextKind::DATE:
      return "2026-03-14T18:30";
    case v1::TextKind::UUID:
      return "0b5c7f0e-6a51-4c39-9d2e-5b7f5a1c0e11";
    case v1::TextKind::CURRENCY:
      return "EUR";
    case v1::TextKind::DECIMAL:
      return "12.50";
    case v1::TextKind::SPDX:
      return "CC-BY-4.0";
    case v1::TextKind::DIGEST:
      return "sha256:" + std::string(64, 'a');
    default:
      return "";
  }
}

}  // namespace

v1::Design RandomDesigns::Next() {
  ids_.clear();
  v1::Design design;
  Fill(&design, 0);
  design.set_format("withy/1");
  return design;
}

double RandomDesigns::Double() {
  if (!Chance(options_.nonsense)) return static_cast<double>(Below(100'000)) / (Chance(0.5) ? 100 : 64);
  constexpr double kExtremes[] = {0.0,
                                  -0.0,
                                  -1.0,
                                  1e15,
                                  1e-5,
                                  100000,
                                  0.1,
                                  1.0 / 3,
                                  123456789012345678.0,
                                  std::numeric_limits<double>::max(),
                                  std::numeric_limits<double>::lowest(),
                                  std::numeric_limits<double>::min(),
                                  std::numeric_limits<double>::denorm_min()};
  if (Chance(0.5)) return kExtremes[Below(std::size(kExtremes))];
  const std::uint64_t bits = random_();
  double value = 0;
  std::memcpy(&value, &bits, sizeof(value));
  return std::isfinite(value) ? value : 0.5;
}

std::string RandomDesigns::Text() {
  std::string text;
  const std::uint64_t length = Below(Chance(0.05) ? 200 : 12);
  for (std::uint64_t i = 0; i < length; ++i) {
    if (!options_.wild_text || Chance(0.6)) {
      text.push_back(static_cast<char>('a' + Below(26)));
    } else if (Chance(0.7)) {
      AppendPoint(kTrickyPoints[Below(std::size(kTrickyPoints))], &text);
    } else {
      const auto point = static_cast<char32_t>(Below(0x110000));
      AppendPoint(point >= 0xD800 && point < 0xE000 ? U'?' : point, &text);  // surrogates are not characters
    }
  }
  return text;
}

bool RandomDesigns::IsWanted(const Message& message, const FieldDescriptor* field) {
  const OneofDescriptor* oneof = field->real_containing_oneof();
  if (oneof == nullptr) return Chance(options_.fill);
  if (message.GetReflection()->HasOneof(message, oneof)) return false;
  // One of the choices, nearly always; the last takes what the others left.
  const bool last = field->index_in_oneof() + 1 == oneof->field_count();
  return last ? !Chance(options_.nonsense / 4) : Chance(1.0 / oneof->field_count());
}

void RandomDesigns::Fill(Message* message, int depth) {
  const Descriptor* type = message->GetDescriptor();
  if (type->well_known_type() == Descriptor::WELLKNOWNTYPE_VALUE) return FillValue(message, depth);
  for (int i = 0; i < type->field_count(); ++i) {
    const FieldDescriptor* field = type->field(i);
    if (field->name() == "id" || IsWanted(*message, field)) Set(message, field, depth);
  }
  if (options_.unknown_fields && Chance(0.05)) AddUnknown(message);
}

// A Value always has a kind: one without is not JSON.
void RandomDesigns::FillValue(Message* message, int depth) {
  const int kinds = depth < options_.max_depth ? 6 : 4;  // the last two nest
  const FieldDescriptor* kind =
      message->GetDescriptor()->field(static_cast<int>(Below(static_cast<std::uint64_t>(kinds))));
  Put(message, kind, depth + 1);
}

void RandomDesigns::Set(Message* message, const FieldDescriptor* field, int depth) {
  if (field->is_map()) return FillMap(message, field, depth);
  const std::uint64_t items = field->is_repeated() ? 1 + Below(static_cast<std::uint64_t>(options_.max_items)) : 1;
  for (std::uint64_t i = 0; i < items; ++i) Put(message, field, depth);
}

void RandomDesigns::FillMap(Message* message, const FieldDescriptor* field, int depth) {
  const std::uint64_t entries = Below(static_cast<std::uint64_t>(options_.max_items) + 1);
  const Reflection* reflection = message->GetReflection();
  for (std::uint64_t i = 0; i < entries; ++i) {
    Message* entry = reflection->AddMessage(message, field);
    // A number in front keeps the keys apart.
    entry->GetReflection()->SetString(entry, field->message_type()->map_key(), std::to_string(i) + Text());
    Put(entry, field->message_type()->map_value(), depth + 1);
  }
}

// Sets a singular field, appends to a list.
void RandomDesigns::Put(Message* message, const FieldDescriptor* field, int depth) {
  const Reflection* reflection = message->GetReflection();
  const bool add = field->is_repeated();
  switch (field->cpp_type()) {
    case FieldDescriptor::CPPTYPE_MESSAGE:
      return Fill(add ? reflection->AddMessage(message, field) : reflection->MutableMessage(message, field), depth + 1);
    case FieldDescriptor::CPPTYPE_DOUBLE:
      return add ? reflection->AddDouble(message, field, Double()) : reflection->SetDouble(message, field, Double());
    case FieldDescriptor::CPPTYPE_STRING:
      return add ? reflection->AddString(message, field, TextFor(field))
                 : reflection->SetString(message, field, TextFor(field));
    case FieldDescriptor::CPPTYPE_ENUM:
      return add ? reflection->AddEnumValue(message, field, EnumFor(field))
                 : reflection->SetEnumValue(message, field, EnumFor(field));
    case FieldDescriptor::CPPTYPE_UINT32: {
      const auto value = static_cast<std::uint32_t>(Chance(options_.nonsense) ? random_() : Below(20));
      return add ? reflection->AddUInt32(message, field, value) : reflection->SetUInt32(message, field, value);
    }
    case FieldDescriptor::CPPTYPE_BOOL:
      return reflection->SetBool(message, field, Chance(0.5));
    default:
      return;  // the schema uses no other type
  }
}

std::string RandomDesigns::TextFor(const FieldDescriptor* field) {
  if (field->name() == "id") {
    ids_.push_back("x" + std::to_string(ids_.size()));
    return ids_.back();
  }
  if (Chance(options_.nonsense)) return Text();
  const auto& options = field->options();
  const int words = options.ExtensionSize(v1::word);
  if (words > 0) return options.GetExtension(v1::word, static_cast<int>(Below(static_cast<std::uint64_t>(words))));
  if (options.ExtensionSize(v1::refers_to) > 0 && !ids_.empty()) return ids_[Below(ids_.size())];
  const std::string sound = SoundText(options.GetExtension(v1::text_kind));
  return sound.empty() ? Text() : sound;
}

int RandomDesigns::EnumFor(const FieldDescriptor* field) {
  if (options_.unknown_enums && field->enum_type()->full_name() != "google.protobuf.NullValue" && Chance(0.2)) {
    return Chance(0.5) ? 77 : -3;
  }
  const auto values = static_cast<std::uint64_t>(field->enum_type()->value_count());
  return field->enum_type()->value(static_cast<int>(Below(values)))->number();
}

void RandomDesigns::AddUnknown(Message* message) {
  UnknownFieldSet* unknown = message->GetReflection()->MutableUnknownFields(message);
  const auto number = static_cast<int>(Chance(0.5) ? 1000 + Below(5) : 536'870'911 - Below(5));
  switch (Below(5)) {
    case 0:
      return unknown->AddVarint(number, Chance(0.5) ? random_() : Below(300));
    case 1:
      return unknown->AddFixed32(number, static_cast<std::uint32_t>(random_()));
    case 2:
      return unknown->AddFixed64(number, random_());
    case 3: {
      std::string bytes = Text();
      bytes.push_back(static_cast<char>(Below(256)));
      return void(*unknown->AddLengthDelimited(number) = bytes);
    }
    default:
      unknown->AddGroup(number)->AddVarint(3, Below(9));
  }
}

}  // namespace withy
