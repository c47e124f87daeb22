// Which of the three forms some bytes are in, told from the content.
#ifndef WITHY_DOCUMENT_CONTENT_FORM_H_
#define WITHY_DOCUMENT_CONTENT_FORM_H_

#include <optional>
#include <string>
#include <string_view>

#include "withy/document/document.h"

namespace withy {

struct ContentForm {
  std::optional<Form> form{};  // unset: none of the three
  bool empty = false;          // nothing, or white space only
  std::string seems_to_be{};   // where none: "a PNG image", "text in UTF-16"; empty where nobody can say
};

// Binary begins with `format` (field 1, text, "withy/..."); JSON with `{` after white space and a byte order mark; text
// with anything a text form can begin with.
ContentForm FormOfContent(std::string_view bytes);

}  // namespace withy

#endif  // WITHY_DOCUMENT_CONTENT_FORM_H_
