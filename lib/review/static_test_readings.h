// A static test that is to be recorded, looked at before it is.
#ifndef WITHY_REVIEW_STATIC_TEST_READINGS_H_
#define WITHY_REVIEW_STATIC_TEST_READINGS_H_

#include <string>
#include <vector>

#include "withy/review/bench_readings.h"

namespace withy {

// Those of RefusalsOf that are of a static test; empty where none is to be recorded.
std::vector<Refusal> RefusalsOfStaticTest(const v1::Design& design, const v1::Report& report,
                                          const BenchReadings& readings, LengthUnits units);

// "10 times", "1/25.4 of": where one number is another one `unit` times or ten times over, or that part of it; else
// empty.
std::string TimesOff(double number, double meant, double unit);

}  // namespace withy

#endif  // WITHY_REVIEW_STATIC_TEST_READINGS_H_
