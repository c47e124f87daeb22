// Family D: natural frequencies of clamped beams.
#ifndef WITHY_TESTS_REFERENCE_FREQUENCY_ANSWERS_H_
#define WITHY_TESTS_REFERENCE_FREQUENCY_ANSWERS_H_

#include "rapidjson/document.h"

namespace withy::reference {

// The answers to one case, as an object with the names of the case's `expected`; null for a kind of case not known here.
rapidjson::Value AnswerFrequencies(const rapidjson::Value& entry, rapidjson::Document::AllocatorType& allocator);

}  // namespace withy::reference

#endif  // WITHY_TESTS_REFERENCE_FREQUENCY_ANSWERS_H_
