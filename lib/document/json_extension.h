// Fills a google.protobuf.Struct, which is how data of plugins is kept, from natural JSON.
#ifndef WITHY_DOCUMENT_JSON_EXTENSION_H_
#define WITHY_DOCUMENT_JSON_EXTENSION_H_

#include <cstdint>
#include <deque>
#include <string>
#include <string_view>
#include <vector>

#include "absl/container/flat_hash_map.h"
#include "google/protobuf/struct.pb.h"
#include "reading.h"

namespace withy {

// Takes the parser's events from the opening brace of the object to the closing one. Offsets are those of the event.
class JsonExtension {
 public:
  explicit JsonExtension(Reading* reading) : reading_(*reading) {}

  // The object begins: `target` is to be filled, known as `path` and as `node` of the source map, `depth` messages
  // deep.
  void Begin(google::protobuf::Struct* target, FieldPath path, std::uint32_t node, std::size_t depth);
  // Whether the object is still open.
  bool active() const { return !levels_.empty(); }

  void Key(std::string_view key, std::uint32_t offset);
  void Null(std::uint32_t offset);
  void Bool(bool value, std::uint32_t offset);
  void Number(std::string_view text, std::uint32_t offset);
  void String(std::string value, std::uint32_t offset);
  void StartObject(std::uint32_t offset);
  void StartArray(std::uint32_t offset);
  void End() { levels_.pop_back(); }

 private:
  struct Level {
    google::protobuf::Struct* object = nullptr;  // one of the two is set
    google::protobuf::ListValue* list = nullptr;
    FieldPath path{};
    std::uint32_t node = 0;
    std::size_t depth = 0;  // messages within messages down to this one
    std::string key{};      // of the value that comes next
    std::uint32_t key_offset = 0;
    absl::flat_hash_map<std::string, std::uint32_t> keys{};
  };
  struct Slot {
    google::protobuf::Value* value;
    FieldPath path;
    std::uint32_t node;
    std::size_t depth;
  };
  // Where the next value goes, as the member `number` of Value. A second value under one key goes to a place of its
  // own.
  Slot Next(const char* member, int number, std::uint32_t offset);

  Reading& reading_;
  std::vector<Level> levels_;
  std::deque<google::protobuf::Value> spares_;  // one for each, as values may be open within one another
};

}  // namespace withy

#endif  // WITHY_DOCUMENT_JSON_EXTENSION_H_
