// Family H: wall, modulus and density of a tube from bench readings.
#ifndef WITHY_TESTS_REFERENCE_IDENTIFY_ANSWERS_H_
#define WITHY_TESTS_REFERENCE_IDENTIFY_ANSWERS_H_

#include <vector>

#include "rapidjson/document.h"
#include "support/bench_blank.h"

namespace withy::reference {

// From the exact readings. Modulus and walls with the density known, density with the wall at the butt known: the two
// problems of the family that are well posed.
rapidjson::Value AnswerIdentification(const rapidjson::Value& entry, rapidjson::Document::AllocatorType& allocator);

// The tube of a case with the readings of `measurements` ("measurements_exact", "measurements_noisy"), nothing known of
// it but its diameters.
testing::BenchBlank BenchBlankOf(const rapidjson::Value& entry, const char* measurements);

}  // namespace withy::reference

#endif  // WITHY_TESTS_REFERENCE_IDENTIFY_ANSWERS_H_
