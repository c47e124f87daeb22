// Where the fields of one message stand in the bytes of the text or the JSON form.
//
// The tokens of JSON are tokens of the text form, too (text_lexer.h), and a JSON object is a list of `"name": value`,
// so one walk reads both. REQUIRES bytes that were read without error: nothing is checked here.
#ifndef WITHY_DOCUMENT_FIELD_SPANS_H_
#define WITHY_DOCUMENT_FIELD_SPANS_H_

#include <cstddef>
#include <string_view>
#include <vector>

namespace withy {

// Between the brackets of a message; of the outermost of the text form all bytes.
struct BodySpan {
  std::size_t begin = 0, end = 0;
};

// A field, or one item of `name: [ ... ]`.
struct FieldSpan {
  std::string_view name;  // as written, without quotes
  std::size_t begin = 0;  // of the name, of an item of the item
  std::size_t end = 0;    // behind the value
  BodySpan body;          // of a message; else empty
  bool in_list = false;   // an item between square brackets
};

// Of the outermost message.
BodySpan OutermostBody(std::string_view bytes, bool json);

// In order; lists between square brackets item by item. Linear in the length of the body.
std::vector<FieldSpan> FieldsIn(std::string_view bytes, const BodySpan& body);

}  // namespace withy

#endif  // WITHY_DOCUMENT_FIELD_SPANS_H_
