// Family N: balance of what lies along a rod, and counterweights.
#ifndef WITHY_TESTS_REFERENCE_BALANCE_ANSWERS_H_
#define WITHY_TESTS_REFERENCE_BALANCE_ANSWERS_H_

#include "rapidjson/document.h"

namespace withy::reference {

// The answers to one case, as an object with the names of the case's `expected`. Written with the library's public
// functions alone.
rapidjson::Value AnswerBalance(const rapidjson::Value& entry, rapidjson::Document::AllocatorType& allocator);

}  // namespace withy::reference

#endif  // WITHY_TESTS_REFERENCE_BALANCE_ANSWERS_H_
