// Family G: a rod under a taut line through rings.
#ifndef WITHY_TESTS_REFERENCE_LINE_LOAD_ANSWERS_H_
#define WITHY_TESTS_REFERENCE_LINE_LOAD_ANSWERS_H_

#include "rapidjson/document.h"

namespace withy::reference {

// The answer to one case, as an object with the names of the case's `expected`. Null where the library has no single
// shape for it. Written with the library's public functions alone.
rapidjson::Value AnswerLineLoad(const rapidjson::Value& entry, rapidjson::Document::AllocatorType& allocator);

}  // namespace withy::reference

#endif  // WITHY_TESTS_REFERENCE_LINE_LOAD_ANSWERS_H_
