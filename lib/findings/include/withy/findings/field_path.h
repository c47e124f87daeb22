// A field path names one place in a design the way a person would: `guides[g5].from_tip`.
//
//   FieldPath path = FieldPath().Field("blank").Field("sections").Item("butt", 0).Field("taper");
//   path.ToString()                      // blank.sections[butt].taper
//   FieldPath::Parse("guides[3].angle")  // items without an id are counted from 0
//
// A list item carries its id where it has one (shown, and matched first) and its index (always). Map keys are items whose
// id is the key. Field names are the names of the schema. Nothing here knows the schema or Protocol Buffers.
#ifndef WITHY_FINDINGS_FIELD_PATH_H_
#define WITHY_FINDINGS_FIELD_PATH_H_

#include <string>
#include <string_view>
#include <vector>

#include "absl/status/statusor.h"

namespace withy {

class FieldPath {
 public:
  // One step: a field, or an item of the list or map that the step before named.
  struct Step {
    std::string field;   // empty for an item
    std::string id;      // of an item; empty where it has none
    int index = -1;      // of an item, from 0; -1 where only the id is known (maps, parsed paths)
    bool operator==(const Step&) const = default;
  };

  FieldPath() = default;
  // Returns this path with one more step. The rvalue forms reuse the storage.
  FieldPath Field(std::string_view name) const&;
  FieldPath Field(std::string_view name) &&;
  FieldPath Item(std::string_view id, int index) const&;
  FieldPath Item(std::string_view id, int index) &&;

  // Reads what ToString writes. InvalidArgument on anything else, saying where. An item in square brackets that is all
  // digits is an index, anything else an id; ids with `]`, `[` or `"` are written in double quotes with backslashes.
  static absl::StatusOr<FieldPath> Parse(std::string_view text);

  // "guides[g5].from_tip"; the empty path is "".
  std::string ToString() const;

  const std::vector<Step>& steps() const { return steps_; }
  bool empty() const { return steps_.empty(); }
  // True where this path is `other` or something inside it. Items match by id where both have one, else by index.
  bool IsWithin(const FieldPath& other) const;
  bool operator==(const FieldPath&) const = default;

 private:
  std::vector<Step> steps_;
};

}  // namespace withy

#endif  // WITHY_FINDINGS_FIELD_PATH_H_
