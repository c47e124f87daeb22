// Family E: mass properties of straight tubes and assemblies.
#ifndef WITHY_TESTS_REFERENCE_MASS_PROPERTIES_H_
#define WITHY_TESTS_REFERENCE_MASS_PROPERTIES_H_

#include "rapidjson/document.h"

namespace withy::reference {

// The answers to one case, as an object with the names of the case's `expected`. Null where the type of the case is not
// known here. Written with the library's public functions alone.
rapidjson::Value AnswerMassProperties(const rapidjson::Value& entry, rapidjson::Document::AllocatorType& allocator);

}  // namespace withy::reference

#endif  // WITHY_TESTS_REFERENCE_MASS_PROPERTIES_H_
