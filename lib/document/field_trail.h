// Where a reader stands: the messages that are open, what was given in each of them, and the way down to the field at
// hand. Refuses what would be lost or misread: a field given twice, two members of a oneof, one key used twice.
//
//   FieldTrail trail(InfoOf(descriptor), &reading);
//   if (trail.Begin(field, offset)) {              // false: reported; skip the value
//     if (trail.Open(offset)) { ...fields of the inner message...; trail.Close(offset_of_end); }
//   }
//
// Shared by the readers of all three forms, so that a fault reads the same in each.
#ifndef WITHY_DOCUMENT_FIELD_TRAIL_H_
#define WITHY_DOCUMENT_FIELD_TRAIL_H_

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

#include "absl/container/flat_hash_map.h"
#include "field_table.h"
#include "reading.h"

namespace withy {

class FieldTrail {
 public:
  // The reading must outlive the trail; positions of all that is begun go into its source map.
  FieldTrail(const MessageInfo& root, Reading* reading);

  // Begins one value of a field of the open message: of a singular one, or the next item of a list or map. `offset` is
  // where the field (or the item) begins. False where it was given before, or another member of its oneof was; then
  // nothing is begun.
  bool Begin(const FieldInfo& field, std::uint32_t offset);
  // Only the check that `field` is given once: for JSON, where a list too is given once.
  bool Once(const FieldInfo& field, std::uint32_t offset);
  // Reports a field of the open message that is known by its number only.
  void ReportUnknownNumber(std::uint32_t number, std::uint32_t offset);
  // Reports `number`, given to the enum field begun last, as no value of the schema. It is kept, but a null in
  // `extensions` has one value in JSON: there it counts as an unknown field.
  void ReportEnumNumber(int number, std::uint32_t offset);
  // The text value of the field begun last: it may be the key of a map entry.
  void NoteText(std::string_view text);

  // Enters the message that is the value of the field begun last. False (reported, stopped) where it is too deep.
  bool Open(std::uint32_t offset);
  // Leaves it; `offset` is where it ends.
  void Close(std::uint32_t offset);

  const MessageInfo& info() const { return *frames_.back().info; }
  // The message that is open when `levels` of the open ones are closed. REQUIRES: not more than depth().
  const MessageInfo& Outer(std::size_t levels) const { return *frames_[frames_.size() - 1 - levels].info; }
  // Begun last in the open message; null: none yet.
  const FieldInfo* field() const { return frames_.back().field; }
  // Of the field begun last, in the source map.
  std::uint32_t field_node() const { return frames_.back().field_node; }
  // Messages open, the root not counted.
  std::size_t depth() const { return frames_.size() - 1; }
  // Of a name that the open message does not have: the message outside of it that does; null: none.
  const MessageInfo* EnclosingWith(std::string_view name) const;

  FieldPath PathOfMessage() const { return PathOfFrames(frames_.size()); }
  FieldPath PathOfField() const;

 private:
  struct Frame {
    const MessageInfo* info;
    const FieldInfo* field = nullptr;
    std::uint32_t item = 0;  // of the field begun last, in its list
    std::uint32_t field_node = 0;
    std::uint32_t node = 0;    // of the message itself
    std::uint32_t offset = 0;  // where its field begins
    std::uint32_t given = 0;   // where its part of given_ begins
    std::string key{};         // of a map entry
  };
  struct Given {
    std::uint32_t first = 0;  // of a field: offset + 1; of a oneof: position of its member + 1; 0 = not yet
    std::uint32_t items = 0;
  };
  Given& GivenOf(const FieldInfo& field) { return given_[frames_.back().given + field.index]; }
  bool OnlyOneOf(const FieldInfo& field, std::uint32_t offset);
  void CloseMapEntry(const Frame& entry, std::uint32_t offset);
  FieldPath PathOfFrames(std::size_t count) const;

  Reading& reading_;
  std::vector<Frame> frames_;
  std::vector<Given> given_;  // for every open message its fields, then its oneofs
  // (node of the map's owner, number of the map field, key) -> where the entry begins.
  absl::flat_hash_map<std::tuple<std::uint32_t, std::int32_t, std::string>, std::uint32_t> keys_;
};

}  // namespace withy

#endif  // WITHY_DOCUMENT_FIELD_TRAIL_H_
