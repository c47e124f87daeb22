// Any bytes that read as a design: the review must end, and hold no number that is not finite.
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>

#include "support/finite.h"
#include "withy/review/review.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const withy::ReadResult read = withy::ReadDesign("fuzz", std::string(reinterpret_cast<const char*>(data), size));
  if (!read.document) return 0;
  withy::Review review = withy::ReviewDesign(read);
  withy::ApplyWaivers(*read.document, {}, review);
  const std::string wrong = withy::FirstNotFinite(review.report) + withy::FirstNotFinite(review.rod);
  if (!wrong.empty()) {
    std::fprintf(stderr, "not finite: %s\n", wrong.c_str());
    std::abort();
  }
  return 0;
}
