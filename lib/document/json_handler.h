// Takes the events of a JSON parser and fills a message from them.
#ifndef WITHY_DOCUMENT_JSON_HANDLER_H_
#define WITHY_DOCUMENT_JSON_HANDLER_H_

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "field_sink.h"
#include "json_extension.h"
#include "reading.h"

namespace withy {

// Offsets are where the value or key begins in the file. After each event the caller asks Reading::stopped().
class JsonHandler {
 public:
  JsonHandler(Reading* reading, google::protobuf::Message* root)
      : reading_(*reading), sink_(root, reading), extension_(reading) {}

  void Null(std::uint32_t offset);
  void Bool(bool value, std::uint32_t offset);
  void Number(std::string_view text, std::uint32_t offset);
  void String(std::string_view text, std::uint32_t offset);
  void StartObject(std::uint32_t offset);
  void Key(std::string_view text, std::uint32_t offset);
  void EndObject(std::uint32_t offset);
  void StartArray(std::uint32_t offset);
  void EndArray(std::uint32_t offset);

  // For errors of grammar: of the object that is open, and of the value that was to come in it.
  FieldPath PathOfMessage() const { return sink_.trail().PathOfMessage(); }
  FieldPath PathOfValue() const;

 private:
  enum class Level { kMessage, kList, kMap };

  // Begins the value that comes next; false where it is not wanted (unknown field, duplicate) or not one `found` can
  // be.
  bool BeginValue(std::uint32_t offset);
  void EndValue(std::uint32_t offset);
  void Refuse(std::uint32_t offset, std::string_view found);
  void OpenMapEntry();
  void SkipDeeper(std::uint32_t offset);
  bool skipping() const { return skipped_ > 0; }
  Level level() const { return levels_.back(); }

  Reading& reading_;
  FieldSink sink_;
  JsonExtension extension_;
  std::vector<Level> levels_;
  std::size_t skipped_ = 0;           // objects and lists open within a value that is not wanted
  const FieldInfo* field_ = nullptr;  // of the key or list; null: the value is not wanted
  std::vector<const FieldInfo*> lists_;
  std::string key_;  // of a map
  std::uint32_t key_offset_ = 0;
};

}  // namespace withy

#endif  // WITHY_DOCUMENT_JSON_HANDLER_H_
