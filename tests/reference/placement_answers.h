// Family P: where the guides go.
#ifndef WITHY_TESTS_REFERENCE_PLACEMENT_ANSWERS_H_
#define WITHY_TESTS_REFERENCE_PLACEMENT_ANSWERS_H_

#include "rapidjson/document.h"
#include "withy/guides/placement.h"

namespace withy::reference {

// The problem of one case's `input`; gaps may grow.
PlacementProblem PlacementOf(const rapidjson::Value& input);

// What the library finds, under the names of the case's `expected`, and what it says of the layouts given there
// (`layouts`, of the case, its input or its `expected`). Written with the library's public functions alone.
rapidjson::Value AnswerPlacement(const rapidjson::Value& entry, rapidjson::Document::AllocatorType& allocator);

}  // namespace withy::reference

#endif  // WITHY_TESTS_REFERENCE_PLACEMENT_ANSWERS_H_
