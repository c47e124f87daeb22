#include "withy/document/source_map.h"

#include <algorithm>
#include <numeric>
#include <tuple>

#include "binary_walker.h"
#include "field_table.h"
#include "withy/document/path_cursor.h"

namespace withy {
namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

int CodePoints(std::string_view bytes) {
  return static_cast<int>(
      std::count_if(bytes.begin(), bytes.end(), [](unsigned char c) { return (c & 0xC0) != 0x80; }));
}

// Bytes between two counts of code points: a file of one endless line is counted once, not once for each finding.
constexpr std::size_t kCounted = 4096;

std::size_t FirstColumn(std::string_view bytes, std::size_t line_begin) {
  return line_begin == 0 && bytes.starts_with(kByteOrderMark) ? kByteOrderMark.size() : line_begin;
}

}  // namespace

Position PositionAt(std::string_view bytes, std::size_t offset) {
  offset = std::min(offset, bytes.size());
  const std::string_view before = bytes.substr(0, offset);
  const std::size_t line_feed = before.rfind('\n');
  const std::size_t line_begin = line_feed == std::string_view::npos ? 0 : line_feed + 1;
  const std::size_t first = std::min(FirstColumn(bytes, line_begin), offset);
  return {offset, static_cast<int>(std::count(before.begin(), before.end(), '\n')) + 1,
          CodePoints(before.substr(first)) + 1};
}

std::uint32_t SourceMap::ItemOfKey(std::string_view key) {
  std::uint32_t hash = 2166136261u;
  for (const char c : key) hash = (hash ^ static_cast<unsigned char>(c)) * 16777619u;
  return hash;
}

std::uint32_t SourceMap::Child(std::uint32_t parent, std::int32_t number, std::uint32_t item) const {
  const auto key = [this](std::uint32_t at) {
    const Node& node = nodes_[at];
    return std::tuple(node.parent, node.number, node.item);
  };
  if (index_.size() != nodes_.size()) {
    index_.resize(nodes_.size());
    std::iota(index_.begin(), index_.end(), 0u);
    std::stable_sort(index_.begin(), index_.end(), [&](auto a, auto b) { return key(a) < key(b); });
  }
  const std::tuple wanted(parent, number, item);
  const auto found =
      std::lower_bound(index_.begin(), index_.end(), wanted, [&](auto at, const auto& w) { return key(at) < w; });
  return found == index_.end() || key(*found) != wanted ? kRoot : *found + 1;
}

int SourceMap::CodePointsBefore(std::string_view bytes, std::size_t offset) const {
  if (counts_.empty()) {
    counts_.push_back(0);
    for (std::size_t at = 0; at + kCounted <= bytes.size(); at += kCounted) {
      counts_.push_back(counts_.back() + CodePoints(bytes.substr(at, kCounted)));
    }
  }
  const std::size_t block = offset / kCounted;
  return counts_[block] + CodePoints(bytes.substr(block * kCounted, offset % kCounted));
}

std::optional<Position> SourceMap::Find(const FieldPath& path, const google::protobuf::Message& message,
                                        const std::string& bytes, bool binary) const {
  if (fill_when_asked_) {
    fill_when_asked_ = false;
    nodes_ = PositionsInBinary(InfoOf(*message.GetDescriptor()), bytes).nodes_;
  }
  PathCursor cursor(message);
  std::uint32_t enclosing = kRoot;  // of the field that the list or map belongs to
  std::uint32_t node = kRoot;
  for (const FieldPath::Step& step : path.steps()) {
    if (!cursor.Advance(step)) break;
    const bool item = step.field.empty();
    if (!item) enclosing = node;
    std::uint32_t which = 0;
    if (item) which = cursor.index() < 0 ? ItemOfKey(step.id) : static_cast<std::uint32_t>(cursor.index());
    const std::uint32_t child = Child(enclosing, cursor.field()->number(), which);
    // A map field has no place of its own, only its entries do; the step after it decides.
    if (child == kRoot && !cursor.field()->is_map()) break;
    if (child != kRoot) node = child;
  }
  if (node == kRoot) return std::nullopt;
  const std::uint32_t offset = nodes_[node - 1].offset;
  if (binary) return Position{offset, 0, 0};

  if (lines_.empty()) {
    lines_.push_back(0);
    for (std::size_t at = bytes.find('\n'); at != std::string::npos; at = bytes.find('\n', at + 1)) {
      lines_.push_back(static_cast<std::uint32_t>(at + 1));
    }
  }
  const auto next = std::upper_bound(lines_.begin(), lines_.end(), offset);
  const int before_line = CodePointsBefore(bytes, FirstColumn(bytes, *(next - 1)));
  return Position{offset, static_cast<int>(next - lines_.begin()), CodePointsBefore(bytes, offset) - before_line + 1};
}

}  // namespace withy
