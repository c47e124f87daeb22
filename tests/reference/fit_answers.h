// Family J: where a blank comes to rest in a bored module, the cut for a length, staged cuts, verdicts, tape arbors.
#ifndef WITHY_TESTS_REFERENCE_FIT_ANSWERS_H_
#define WITHY_TESTS_REFERENCE_FIT_ANSWERS_H_

#include "rapidjson/document.h"

namespace withy::reference {

// The answers to one case, as an object with the names of the case's `expected`. Written with the library's public
// functions alone.
rapidjson::Value AnswerFit(const rapidjson::Value& entry, rapidjson::Document::AllocatorType& allocator);

}  // namespace withy::reference

#endif  // WITHY_TESTS_REFERENCE_FIT_ANSWERS_H_
