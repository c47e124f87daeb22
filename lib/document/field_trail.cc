#include "field_trail.h"

#include <utility>

#include "absl/strings/str_cat.h"
#include "reading_codes.h"

namespace withy {
namespace {

constexpr int kKeyOfEntry = 1;
constexpr int kValueOfEntry = 2;
constexpr std::size_t kUsualDepth = 16;

}  // namespace

FieldTrail::FieldTrail(const MessageInfo& root, Reading* reading) : reading_(*reading) {
  frames_.reserve(kUsualDepth);
  frames_.push_back({.info = &root});
  given_.resize(root.fields.size() + root.oneofs);
}

bool FieldTrail::Once(const FieldInfo& field, std::uint32_t offset) {
  Given& given = GivenOf(field);
  if (given.first == 0) {
    given.first = offset + 1;
    return true;
  }
  reading_.Report(kDuplicateField, PathOfMessage().Field(field.name), offset,
                  absl::StrCat("`", std::string(field.name), "` is given a second time; the first is at ",
                               reading_.PlaceOf(given.first - 1)));
  return false;
}

bool FieldTrail::OnlyOneOf(const FieldInfo& field, std::uint32_t offset) {
  Given& oneof = given_[frames_.back().given + info().fields.size() + static_cast<std::size_t>(field.oneof)];
  if (oneof.first == 0) {
    oneof.first = field.index + 1;
    return true;
  }
  const FieldInfo& first = info().fields[oneof.first - 1];
  reading_.Report(kTwoOfOne, PathOfMessage().Field(field.name), offset,
                  absl::StrCat("`", std::string(field.name), "` and `", std::string(first.name),
                               "` are both given, and only one can hold; the first is at ",
                               reading_.PlaceOf(GivenOf(first).first - 1)));
  return false;
}

bool FieldTrail::Begin(const FieldInfo& field, std::uint32_t offset) {
  reading_.CountItem(offset);
  if (!field.repeated && (!Once(field, offset) || (field.oneof >= 0 && !OnlyOneOf(field, offset)))) return false;
  Frame& frame = frames_.back();
  frame.field = &field;
  frame.item = field.repeated ? GivenOf(field).items++ : 0;
  // The value of a map entry stands where the entry does: paths do not tell them apart.
  const bool value_of_entry = frame.info->map_entry && field.number == kValueOfEntry;
  frame.field_node = value_of_entry ? frame.node : reading_.positions.Add(frame.node, field.number, frame.item, offset);
  return true;
}

void FieldTrail::ReportUnknownNumber(std::uint32_t number, std::uint32_t offset) {
  const bool carried = !info().map_entry;  // of a map entry, a message keeps the key and the value and nothing else
  const std::string owner = carried ? absl::StrCat("`", info().descriptor->name(), "`") : "an entry of a map";
  reading_.ReportUnknown(kUnknownNumber, PathOfMessage().Field(absl::StrCat(number)), offset, carried,
                         absl::StrCat(owner, " has no field ", number, " in this version; it is ",
                                      carried ? "kept" : "not read, and no form can carry it"));
}

void FieldTrail::ReportEnumNumber(int number, std::uint32_t offset) {
  std::string message = absl::StrCat(number, " is no known value of `", std::string(field()->name), "`; it is kept");
  if (info().struct_value) {
    reading_.ReportUnknown(kUnknownEnumNumber, PathOfField(), offset, /*carried=*/true, std::move(message));
  } else {
    reading_.Report(kUnknownEnumNumber, PathOfField(), offset, std::move(message));
  }
}

void FieldTrail::NoteText(std::string_view text) {
  if (info().map_entry && field()->number == kKeyOfEntry) frames_.back().key = std::string(text);
}

bool FieldTrail::Open(std::uint32_t offset) {
  if (reading_.IsTooDeep(frames_.size())) {
    reading_.ReportTooDeep(PathOfField(), offset);
    return false;
  }
  const Frame& parent = frames_.back();
  const MessageInfo* inner = parent.field->message;
  const auto given = static_cast<std::uint32_t>(given_.size());
  given_.resize(given + inner->fields.size() + inner->oneofs);
  frames_.push_back({.info = inner, .node = parent.field_node, .offset = offset, .given = given});
  return true;
}

void FieldTrail::Close(std::uint32_t offset) {
  const Frame& closed = frames_.back();
  if (closed.info->map_entry) CloseMapEntry(closed, offset);
  if (closed.info->struct_value && given_[closed.given + closed.info->fields.size()].first == 0) {
    reading_.Report(kBadValue, PathOfMessage(), closed.offset, "a value in `extensions` that says nothing",
                    "Write a number, a text, true or false, a list, an object or null.");
  }
  given_.resize(closed.given);
  frames_.pop_back();
}

void FieldTrail::CloseMapEntry(const Frame& entry, std::uint32_t offset) {
  const Frame& owner = frames_[frames_.size() - 2];
  for (const int number : {kKeyOfEntry, kValueOfEntry}) {
    const FieldInfo* field = entry.info->FindNumber(static_cast<std::uint32_t>(number));
    if (GivenOf(*field).first != 0) continue;
    reading_.Report(kBadValue, PathOfFrames(frames_.size() - 1).Field(owner.field->name), offset,
                    absl::StrCat("this entry has no `", std::string(field->name), "`"),
                    "An entry needs a `key` and a `value`.");
    return;
  }
  reading_.positions.SetItem(entry.node, SourceMap::ItemOfKey(entry.key));
  const auto [first, is_new] = keys_.emplace(std::tuple(owner.node, owner.field->number, entry.key), entry.offset);
  if (is_new) return;
  reading_.Report(kDuplicateKey, PathOfMessage(), entry.offset,
                  absl::StrCat("the key \"", entry.key, "\" is used a second time; the first is at ",
                               reading_.PlaceOf(first->second)));
}

const MessageInfo* FieldTrail::EnclosingWith(std::string_view name) const {
  for (std::size_t i = frames_.size() - 1; i-- > 0;) {
    if (frames_[i].info->Find(name) != nullptr) return frames_[i].info;
  }
  return nullptr;
}

FieldPath FieldTrail::PathOfFrames(std::size_t count) const {
  FieldPath path;
  for (std::size_t i = 0; i + 1 < count; ++i) {
    const Frame& frame = frames_[i];
    if (frame.info->map_entry) continue;  // the entry's key is in the path already
    path = std::move(path).Field(frame.field->name);
    if (frame.field->map) {
      path = std::move(path).Item(frames_[i + 1].key, -1);
    } else if (frame.field->repeated) {
      path = std::move(path).Item("", static_cast<int>(frame.item));
    }
  }
  return path;
}

FieldPath FieldTrail::PathOfField() const {
  FieldPath path = PathOfMessage();
  const Frame& frame = frames_.back();
  if (frame.field == nullptr || frame.info->map_entry) return path;
  path = std::move(path).Field(frame.field->name);
  if (frame.field->repeated && !frame.field->map) path = std::move(path).Item("", static_cast<int>(frame.item));
  return path;
}

}  // namespace withy
