// Where a walk through a design is: a chain on the stack, turned into a field path only when there is something to say.
#ifndef WITHY_DOCUMENT_SPOT_H_
#define WITHY_DOCUMENT_SPOT_H_

#include <google/protobuf/message.h>

#include <string>
#include <utility>

#include "withy/findings/field_path.h"

namespace withy {

struct Spot {
  const Spot* parent = nullptr;                              // nullptr: the design itself
  const google::protobuf::FieldDescriptor* field = nullptr;  // of the parent's message
  int index = -1;                                            // in a list; -1: not a list
  const std::string* id = nullptr;                           // of the list item, where it has one

  FieldPath Path() const {
    if (parent == nullptr) return FieldPath();
    FieldPath path = parent->Path().Field(field->name());
    if (index < 0) return path;
    return std::move(path).Item(id == nullptr ? "" : *id, index);
  }
};

}  // namespace withy

#endif  // WITHY_DOCUMENT_SPOT_H_
