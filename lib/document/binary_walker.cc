#include "binary_walker.h"

#include <limits>
#include <utility>

#include "absl/strings/str_cat.h"
#include "reading_codes.h"
#include "utf8.h"

namespace withy {
namespace {

using google::protobuf::FieldDescriptor;

enum WireType : std::uint32_t { kVarint = 0, kEightBytes = 1, kLength = 2, kGroup = 3, kEndGroup = 4, kFourBytes = 5 };

// Whether a little-endian IEEE 754 number of 8 or 4 bytes is an infinity or not a number: all exponent bits are set.
bool IsFinite(std::string_view bytes) {
  const auto last = static_cast<unsigned char>(bytes[bytes.size() - 1]);
  const auto before = static_cast<unsigned char>(bytes[bytes.size() - 2]);
  return (last & 0x7F) != 0x7F || before < (bytes.size() == 8 ? 0xF0 : 0x80);
}

// Whether a varint means the same after it was cut to the field's type.
bool Fits(const FieldInfo& field, std::uint64_t value) {
  const auto number = static_cast<std::int64_t>(value);
  switch (field.field->type()) {
    case FieldDescriptor::TYPE_BOOL:
      return value <= 1;
    case FieldDescriptor::TYPE_UINT32:
    case FieldDescriptor::TYPE_SINT32:
      return value <= std::numeric_limits<std::uint32_t>::max();
    case FieldDescriptor::TYPE_INT32:
    case FieldDescriptor::TYPE_ENUM:
      return number >= std::numeric_limits<std::int32_t>::min() && number <= std::numeric_limits<std::int32_t>::max();
    default:
      return true;
  }
}

}  // namespace

bool BinaryWalker::Walk() {
  ends_.push_back(static_cast<std::uint32_t>(bytes_.size()));
  while (!reading_.stopped()) {
    if (at_ < ends_.back()) {
      ReadField();
      continue;
    }
    ends_.pop_back();
    if (ends_.empty()) return parseable_;
    trail_.Close(at_);
  }
  return false;
}

// --- fields ---

void BinaryWalker::ReadField() {
  const std::uint32_t tag_offset = at_;
  std::uint32_t number = 0, wire_type = 0;
  if (!ReadTag(&number, &wire_type)) return;
  if (wire_type == kEndGroup) return Damaged(kWireFormat, tag_offset, "a group ends that was not begun");
  const FieldInfo* field = trail_.info().FindNumber(number);
  if (field == nullptr) return ReadUnknown(number, wire_type, tag_offset);
  ReadKnown(*field, wire_type, tag_offset);
}

void BinaryWalker::ReadKnown(const FieldInfo& field, std::uint32_t wire_type, std::uint32_t tag_offset) {
  const bool packed = wire_type == kLength && field.repeated && field.wire_type != kLength;
  if (wire_type != field.wire_type && !packed) {
    reading_.Report(kWireFormat, trail_.PathOfMessage().Field(field.name), tag_offset,
                    absl::StrCat("`", std::string(field.name), "` is written with wire type ", wire_type,
                                 " where the schema has ", field.wire_type));
    return SkipKnown(field, wire_type);
  }
  if (packed) return ReadPacked(field);
  if (!trail_.Begin(field, tag_offset)) return SkipKnown(field, wire_type);
  switch (wire_type) {
    case kVarint:
      return ReadVarintField(field);
    case kEightBytes:
      return ReadFixed(field, 8);
    case kFourBytes:
      return ReadFixed(field, 4);
    default:
      return ReadLengthDelimited(field, tag_offset);
  }
}

void BinaryWalker::ReadLengthDelimited(const FieldInfo& field, std::uint32_t tag_offset) {
  std::uint32_t end = 0;
  if (!ReadLength(&end)) return;
  if (field.message != nullptr) {
    if (trail_.Open(tag_offset)) ends_.push_back(end);
    return;
  }
  const std::string_view text = bytes_.substr(at_, end - at_);
  const bool is_text = field.field->type() == FieldDescriptor::TYPE_STRING;
  if (const std::size_t valid = is_text ? ValidUtf8Prefix(text) : text.size(); valid != text.size()) {
    reading_.Report(kNotUtf8, trail_.PathOfField(), at_ + valid, "text that is not valid UTF-8");
    parseable_ = false;
  }
  trail_.NoteText(text);
  at_ = end;
}

void BinaryWalker::ReadPacked(const FieldInfo& field) {
  std::uint32_t end = 0;
  if (!ReadLength(&end)) return;
  ends_.push_back(end);
  while (at_ < end && !reading_.stopped()) {
    trail_.Begin(field, at_);
    field.wire_type == kVarint ? ReadVarintField(field) : ReadFixed(field, field.wire_type == kEightBytes ? 8 : 4);
  }
  ends_.pop_back();
}

void BinaryWalker::ReadVarintField(const FieldInfo& field) {
  const std::uint32_t offset = at_;
  std::uint64_t value = 0;
  if (!ReadVarint(&value)) return;
  if (!Fits(field, value)) {
    reading_.Report(kBadNumber, trail_.PathOfField(), offset,
                    absl::StrCat(value, " is outside the range of `", std::string(field.name), "`"));
  } else if (field.type == FieldDescriptor::CPPTYPE_ENUM) {
    const int number = static_cast<int>(static_cast<std::int64_t>(value));
    if (field.field->enum_type()->FindValueByNumber(number) != nullptr) return;
    trail_.ReportEnumNumber(number, offset);
  }
}

void BinaryWalker::ReadFixed(const FieldInfo& field, std::uint32_t length) {
  if (!Has(length)) return;
  const bool fraction = field.type == FieldDescriptor::CPPTYPE_DOUBLE || field.type == FieldDescriptor::CPPTYPE_FLOAT;
  if (fraction && !IsFinite(bytes_.substr(at_, length))) {
    reading_.Report(kBadNumber, trail_.PathOfField(), at_,
                    absl::StrCat("`", std::string(field.name), "` is not a finite number"));
  }
  at_ += length;
}

// --- what the schema does not have ---

void BinaryWalker::ReadUnknown(std::uint32_t number, std::uint32_t wire_type, std::uint32_t tag_offset) {
  reading_.CountItem(tag_offset);
  trail_.ReportUnknownNumber(number, tag_offset);
  SkipValue(number, wire_type);
}

void BinaryWalker::SkipValue(std::uint32_t number, std::uint32_t wire_type) {
  std::uint64_t varint = 0;
  std::uint32_t end = 0;
  switch (wire_type) {
    case kVarint:
      ReadVarint(&varint);
      return;
    case kEightBytes:
    case kFourBytes:
      if (const std::uint32_t length = wire_type == kEightBytes ? 8 : 4; Has(length)) at_ += length;
      return;
    case kLength:
      if (ReadLength(&end)) at_ = end;
      return;
    case kGroup:
      return SkipGroup(number);
    default:  // the end of a group has been dealt with where its tag was read
      return;
  }
}

void BinaryWalker::SkipKnown(const FieldInfo& field, std::uint32_t wire_type) {
  const std::uint32_t begin = at_;
  SkipValue(static_cast<std::uint32_t>(field.number), wire_type);
  if (wire_type == kLength && !IsUtf8(bytes_.substr(begin, at_ - begin))) parseable_ = false;
}

void BinaryWalker::SkipGroup(std::uint32_t number) {
  std::vector<std::uint32_t> open = {number};
  while (!open.empty() && !reading_.stopped()) {
    const std::uint32_t offset = at_;
    if (reading_.IsTooDeep(trail_.depth() + open.size())) {
      return reading_.ReportTooDeep(trail_.PathOfMessage(), offset);
    }
    std::uint32_t inner = 0, wire_type = 0;
    if (!ReadTag(&inner, &wire_type)) return;
    reading_.CountItem(offset);
    if (wire_type == kGroup) {
      open.push_back(inner);
    } else if (wire_type != kEndGroup) {
      SkipValue(inner, wire_type);
    } else if (inner == open.back()) {
      open.pop_back();
    } else {
      return Damaged(kWireFormat, offset, "a group ends that was not begun");
    }
  }
}

// --- bytes ---

bool BinaryWalker::ReadTag(std::uint32_t* number, std::uint32_t* wire_type) {
  const std::uint32_t offset = at_;
  std::uint64_t tag = 0;
  if (!ReadVarint(&tag)) return false;
  *number = static_cast<std::uint32_t>(tag >> 3);
  *wire_type = static_cast<std::uint32_t>(tag & 7);
  const bool sensible = tag <= std::numeric_limits<std::uint32_t>::max() && *number != 0 && *wire_type <= kFourBytes;
  if (!sensible) Damaged(kWireFormat, offset, "these bytes are no field");
  return sensible;
}

bool BinaryWalker::ReadVarint(std::uint64_t* value) {
  const std::uint32_t begin = at_;
  constexpr int kBitsOfLast = 63;
  *value = 0;
  for (int shift = 0; shift <= kBitsOfLast; shift += 7) {
    if (!Has(1)) return false;
    const auto byte = static_cast<unsigned char>(bytes_[at_++]);
    *value |= static_cast<std::uint64_t>(byte & 0x7F) << shift;
    if (byte < 0x80) return true;
  }
  Damaged(kWireFormat, begin, "a number of more than ten bytes");
  return false;
}

bool BinaryWalker::ReadLength(std::uint32_t* end) {
  std::uint64_t length = 0;
  if (!ReadVarint(&length) || !Has(length)) return false;
  *end = at_ + static_cast<std::uint32_t>(length);
  return true;
}

bool BinaryWalker::Has(std::uint64_t length) {
  if (length <= ends_.back() - at_) return true;
  if (length > bytes_.size() - at_) {
    Damaged(kTruncated, static_cast<std::uint32_t>(bytes_.size()),
            absl::StrCat("the file ends within the value that begins at byte ", at_));
  } else {
    Damaged(kWireFormat, at_, absl::StrCat("a value runs past the end, byte ", ends_.back(), ", of what it is in"));
  }
  return false;
}

void BinaryWalker::Damaged(const Code& code, std::uint32_t offset, std::string message) {
  if (reading_.stopped()) return;
  reading_.Report(code, trail_.PathOfMessage(), offset, std::move(message));
  reading_.Stop();
}

SourceMap PositionsInBinary(const MessageInfo& root, std::string_view bytes) {
  const ReadLimits unlimited = {.max_bytes = bytes.size(),
                                .max_depth = std::numeric_limits<int>::max(),
                                .max_items = std::numeric_limits<std::size_t>::max()};
  Reading reading(bytes, Form::kBinary, unlimited);
  BinaryWalker(root, &reading).Walk();
  return std::move(reading.positions);
}

}  // namespace withy
