// How a finding speaks of a field: what it takes, how to write it, which names there are.
#ifndef WITHY_DOCUMENT_FIELD_WORDS_H_
#define WITHY_DOCUMENT_FIELD_WORDS_H_

#include <string>
#include <string_view>
#include <vector>

#include "field_table.h"
#include "google/protobuf/descriptor.h"
#include "withy/document/document.h"

namespace withy {

// "text in quotes", "a number", "one of `BUTT` and `TIP`", "a message in braces".
std::string Expected(const FieldInfo& field, Form form);
// A whole sentence with an example in the form ("Write it with its unit: `length { mm: 12.5 }`."), as close to `found`
// (what stands there, as Reading quotes it) as can be; empty where there is nothing to add.
std::string HowToWrite(const FieldInfo& field, Form form, std::string_view found);
// Whether the field is a message with a unit (quantity.proto).
bool IsQuantity(const FieldInfo& field);
// "; did you mean `length`?", or nothing for an empty name.
std::string DidYouMean(std::string_view name);
// "`BUTT`, `TIP` and `OTHER`".
std::string ListOf(const std::vector<std::string_view>& names);
// In the order of the schema.
std::vector<std::string_view> EnumNames(const google::protobuf::EnumDescriptor& type);

}  // namespace withy

#endif  // WITHY_DOCUMENT_FIELD_WORDS_H_
