// How items of lists are named in a path: by id where that tells them apart, else by number.
#ifndef WITHY_REVIEW_ITEM_NAMES_H_
#define WITHY_REVIEW_ITEM_NAMES_H_

#include <google/protobuf/message.h>

#include <string>
#include <unordered_set>

#include "withy/findings/field_path.h"

namespace withy {

// The names of one list's items, asked for in order: the id, or nothing where it has none or an earlier one has the
// same.
class ItemNames {
 public:
  std::string NameOf(const google::protobuf::Message& item);

 private:
  std::unordered_set<std::string> seen_;
};

// `path` with each item by its id, or by its number where an earlier item has the same id; numbers are filled in.
FieldPath Unambiguous(const FieldPath& path, const google::protobuf::Message& root);

// The same path, ids left out: what a figure is looked up by.
std::string ByNumber(const FieldPath& path);

}  // namespace withy

#endif  // WITHY_REVIEW_ITEM_NAMES_H_
