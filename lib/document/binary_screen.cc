#include "binary_screen.h"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "utf8.h"

namespace withy {
namespace {

using Byte = unsigned char;
using google::protobuf::FieldDescriptor;

class Screen {
 public:
  explicit Screen(const ReadLimits& limits) : limits_(limits) {}

  bool Message(const MessageInfo& info, const Byte* at, const Byte* end, int depth);

 private:
  bool Value(const FieldInfo& field, const Byte** at, const Byte* end, int depth);

  const ReadLimits& limits_;
  std::size_t items_ = 0;
};

// Reads a varint of at most five bytes, which holds whatever a sound field of the schema needs but negative numbers.
bool ReadVarint(const Byte** at, const Byte* end, std::uint64_t* value) {
  *value = 0;
  for (int shift = 0; shift < 35 && *at < end; shift += 7) {
    const Byte byte = *(*at)++;
    *value |= static_cast<std::uint64_t>(byte & 0x7F) << shift;
    if (byte < 0x80) return true;
  }
  return false;
}

bool VarintIsPlain(const FieldInfo& field, std::uint64_t value) {
  if (field.type == FieldDescriptor::CPPTYPE_BOOL) return value <= 1;
  if (field.type == FieldDescriptor::CPPTYPE_ENUM) return value <= static_cast<std::uint64_t>(field.last_of_enum);
  return value <= 0x7FFFFFFF;
}

// The key of a map entry, whose two fields stand in this order in what any usual writer writes; empty data: it is not
// so.
std::string_view KeyOf(std::string_view entry) {
  constexpr char kTagOfKey = 0x0A;
  if (entry.size() < 2 || entry[0] != kTagOfKey || static_cast<Byte>(entry[1]) >= 0x80) return {};
  return entry.substr(2, static_cast<Byte>(entry[1]));
}

bool AllDiffer(std::vector<std::string_view>& keys) {
  std::sort(keys.begin(), keys.end());
  return std::adjacent_find(keys.begin(), keys.end()) == keys.end();
}

bool Screen::Value(const FieldInfo& field, const Byte** at, const Byte* end, int depth) {
  std::uint64_t number = 0;
  switch (field.wire_type) {
    case 0:
      return ReadVarint(at, end, &number) && VarintIsPlain(field, number);
    case 1:
      if (end - *at < 8 || field.type != FieldDescriptor::CPPTYPE_DOUBLE) return false;
      *at += 8;
      return ((*at)[-1] & 0x7F) != 0x7F || (*at)[-2] < 0xF0;  // finite
    case 2:
      if (!ReadVarint(at, end, &number) || number > static_cast<std::uint64_t>(end - *at)) return false;
      *at += number;
      if (field.message != nullptr) return Message(*field.message, *at - number, *at, depth + 1);
      return IsUtf8({reinterpret_cast<const char*>(*at - number), number});
    default:
      return false;
  }
}

bool Screen::Message(const MessageInfo& info, const Byte* at, const Byte* end, int depth) {
  if (depth > limits_.max_depth || !info.screenable) return false;
  std::uint64_t given = 0;
  std::vector<std::string_view> keys;
  while (at < end) {
    std::uint64_t tag = 0;
    if (++items_ > limits_.max_items || !ReadVarint(&at, end, &tag)) return false;
    const FieldInfo* field = info.FindNumber(static_cast<std::uint32_t>(tag >> 3));
    if (field == nullptr || (tag & 7) != field->wire_type || (given & field->conflicts) != 0) return false;
    given |= field->bit;
    const Byte* begin = at;
    if (!Value(*field, &at, end, depth)) return false;
    if (!field->map) continue;
    std::uint64_t length = 0;
    ReadVarint(&begin, at, &length);
    keys.push_back(KeyOf({reinterpret_cast<const char*>(begin), length}));
    if (keys.back().data() == nullptr) return false;
  }
  const bool whole = (given & info.required) == info.required && (!info.struct_value || given != 0);
  return whole && AllDiffer(keys);
}

}  // namespace

bool IsPlainlySound(const MessageInfo& root, std::string_view bytes, const ReadLimits& limits) {
  const auto* begin = reinterpret_cast<const Byte*>(bytes.data());
  return Screen(limits).Message(root, begin, begin + bytes.size(), 0);
}

}  // namespace withy
