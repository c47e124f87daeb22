// Where each field stood in the bytes it was read from.
//
// A reader adds one node per field, list item and map entry while it reads: 16 bytes each, no strings. A question is
// answered from an index that is built when the first one is asked, so that a clean file never pays for it.
#ifndef WITHY_DOCUMENT_SOURCE_MAP_H_
#define WITHY_DOCUMENT_SOURCE_MAP_H_

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "withy/findings/finding.h"

namespace google::protobuf {
class Message;
}

namespace withy {

class SourceMap {
 public:
  static constexpr std::uint32_t kRoot = 0;

  // Adds a node below `parent` and returns it: field `number`; `item` counts list items and map entries from 0 (in the
  // order of the file), and is 0 for a singular field. `offset` is where the field's name (or the item) begins.
  std::uint32_t Add(std::uint32_t parent, std::int32_t number, std::uint32_t item, std::uint32_t offset);

  // The place of `path` in `message` (needed to turn names and ids into numbers), or of the nearest enclosing field that
  // has one. `bytes` are those that were read; `binary` says that only the offset means something. Unset where the map
  // is empty.
  std::optional<Position> Find(const FieldPath& path, const google::protobuf::Message& message,
                               const std::string& bytes, bool binary) const;

  bool empty() const { return nodes_.empty(); }

 private:
  struct Node {
    std::uint32_t parent;
    std::int32_t number;
    std::uint32_t item;
    std::uint32_t offset;
  };
  std::vector<Node> nodes_;
  mutable std::vector<std::uint32_t> index_;  // node numbers sorted by (parent, number, item)
};

// Line and column of a byte offset: lines from 1, columns in UTF-8 code points from 1.
Position PositionAt(const std::string& bytes, std::size_t offset);

}  // namespace withy

#endif  // WITHY_DOCUMENT_SOURCE_MAP_H_
