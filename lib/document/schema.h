// The schema as it was written, comments included. The generated classes know its fields but not what was said of them.
#ifndef WITHY_DOCUMENT_SCHEMA_H_
#define WITHY_DOCUMENT_SCHEMA_H_

#include <google/protobuf/descriptor.h>

#include <string>
#include <string_view>

namespace withy {

// The message withy.v1.`name` with its comments, or nullptr. Options are read as of any descriptor
// (`field->options().GetExtension(v1::word, 0)`). The schema is unpacked when first asked for, once; safe from several
// threads.
const google::protobuf::Descriptor* SchemaMessage(std::string_view name);

// The comment above a message or field as one paragraph; empty where there is none.
std::string CommentOf(const google::protobuf::Descriptor* message);
std::string CommentOf(const google::protobuf::FieldDescriptor* field);

}  // namespace withy

#endif  // WITHY_DOCUMENT_SCHEMA_H_
