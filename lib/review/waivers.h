// The waivers of a design at work.
#ifndef WITHY_REVIEW_WAIVERS_H_
#define WITHY_REVIEW_WAIVERS_H_

#include <vector>

#include "withy/review/review.h"

namespace withy {

// Sorts `found` into the findings and the waived ones of `review`.
void SortByWaivers(const Document& document, std::vector<Finding> found, Review& review);

// The order of `Review::findings`: by place in the file (what has none comes last), then as in the catalogue. Sets the
// position of those that have none yet.
void SortByPlace(const Document& document, std::vector<Finding>& findings);

}  // namespace withy

#endif  // WITHY_REVIEW_WAIVERS_H_
