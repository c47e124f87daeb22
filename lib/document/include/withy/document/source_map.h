// Where each field stood in the bytes it was read from.
//
// A reader adds one node per field, list item and map entry while it reads: 16 bytes each, no strings. A question is
// answered from an index that is built when the first one is asked, so that a clean file never pays for it. For the
// same reason `Find` must not run in two threads at once on one map.
#ifndef WITHY_DOCUMENT_SOURCE_MAP_H_
#define WITHY_DOCUMENT_SOURCE_MAP_H_

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "withy/findings/finding.h"

namespace google::protobuf {
class Message;
}

namespace withy {

class SourceMap {
 public:
  static constexpr std::uint32_t kRoot = 0;

  // Adds a node below `parent` and returns it: field `number`; `item` counts list items from 0 (in the order of the
  // file), is ItemOfKey for a map entry, and 0 for a singular field. `offset` is where the field's name (or the item)
  // begins; in binary, where its tag begins.
  std::uint32_t Add(std::uint32_t parent, std::int32_t number, std::uint32_t item, std::uint32_t offset) {
    nodes_.push_back({parent, number, item, offset});
    return static_cast<std::uint32_t>(nodes_.size());
  }
  // For a map entry, whose key is known only after it was begun.
  void SetItem(std::uint32_t node, std::uint32_t item) { nodes_[node - 1].item = item; }
  // The number that stands for a map key: its FNV-1a hash (32 bits). Two keys of one map with one hash would be shown
  // at one place; nothing else depends on it.
  static std::uint32_t ItemOfKey(std::string_view key);

  // Puts off the walk that finds the places in a file of the binary form until the first question: most are never
  // asked.
  void FillWhenAsked() { fill_when_asked_ = true; }

  // The place of `path` in `message` (needed to turn names and ids into numbers), or of the nearest enclosing field
  // that has one. `bytes` are those that were read; `binary` says that only the offset means something. Unset where the
  // map is empty, or nothing of the path was in the file.
  std::optional<Position> Find(const FieldPath& path, const google::protobuf::Message& message,
                               const std::string& bytes, bool binary) const;

  bool empty() const { return nodes_.empty() && !fill_when_asked_; }

 private:
  int CodePointsBefore(std::string_view bytes, std::size_t offset) const;
  struct Node {
    std::uint32_t parent;
    std::int32_t number;
    std::uint32_t item;
    std::uint32_t offset;
  };
  // The node of that field and item below `parent`; kRoot where there is none.
  std::uint32_t Child(std::uint32_t parent, std::int32_t number, std::uint32_t item) const;

  mutable std::vector<Node> nodes_;           // node n is nodes_[n - 1]
  mutable std::vector<std::uint32_t> index_;  // positions in nodes_ sorted by (parent, number, item)
  mutable std::vector<std::uint32_t> lines_;  // offsets at which lines begin
  mutable std::vector<int> counts_;           // code points before each whole block of the file
  mutable bool fill_when_asked_ = false;
};

// Line and column of a byte offset: lines from 1 (ended by a line feed), columns in UTF-8 code points from 1, a byte
// order mark not counted. An offset beyond the end is taken as the end.
Position PositionAt(std::string_view bytes, std::size_t offset);

}  // namespace withy

#endif  // WITHY_DOCUMENT_SOURCE_MAP_H_
