// Follows a field path through a message, one step at a time, turning names, ids and keys into field numbers and
// indices.
#ifndef WITHY_DOCUMENT_PATH_CURSOR_H_
#define WITHY_DOCUMENT_PATH_CURSOR_H_

#include <string>

#include "google/protobuf/message.h"
#include "withy/findings/field_path.h"

namespace withy {

class PathCursor {
 public:
  explicit PathCursor(const google::protobuf::Message& root) : message_(&root) {}

  // Takes one step; false where the schema or the message has nothing there, and the cursor stays put.
  bool Advance(const FieldPath::Step& step);

  // The field stepped on last; null at the root.
  const google::protobuf::FieldDescriptor* field() const { return field_; }
  // The index of the item stepped on last in a list; -1 where the last step was a field or a map entry.
  int index() const { return index_; }
  // The message here: of a field or item that holds one; else null.
  const google::protobuf::Message* message() const { return message_; }

 private:
  bool AdvanceToField(const std::string& name);
  bool AdvanceToItem(const FieldPath::Step& step);

  const google::protobuf::Message* message_;
  const google::protobuf::Message* owner_ = nullptr;  // of a list or map field that was stepped on
  const google::protobuf::FieldDescriptor* field_ = nullptr;
  int index_ = -1;
};

// The `id` of a message that has such a field and a value in it; else empty.
std::string IdOf(const google::protobuf::Message& message);

// `path` with the id of every list item that has one.
FieldPath WithIds(const FieldPath& path, const google::protobuf::Message& root);

}  // namespace withy

#endif  // WITHY_DOCUMENT_PATH_CURSOR_H_
