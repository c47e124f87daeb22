// Families A, B, C and F: large deflections of uniform and tapered cantilevers, and small ones.
#ifndef WITHY_TESTS_REFERENCE_BENDING_ANSWERS_H_
#define WITHY_TESTS_REFERENCE_BENDING_ANSWERS_H_

#include "rapidjson/document.h"

namespace withy::reference {

// The answers to one case, as an object with the names of the case's `expected`. Null where the library has no single
// shape for it. Written with the library's public functions alone.
rapidjson::Value AnswerTipLoad(const rapidjson::Value& entry, rapidjson::Document::AllocatorType& allocator);  // A
rapidjson::Value AnswerUniform(const rapidjson::Value& entry, rapidjson::Document::AllocatorType& allocator);  // B
rapidjson::Value AnswerTapered(const rapidjson::Value& entry, rapidjson::Document::AllocatorType& allocator);  // C, F

}  // namespace withy::reference

#endif  // WITHY_TESTS_REFERENCE_BENDING_ANSWERS_H_
