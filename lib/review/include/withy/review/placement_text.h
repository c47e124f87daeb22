// A proposal for the guides for people: the loads, guide by guide where it stands and where it should, the layout
// against others, what had to be taken for granted. Made from the report alone. Reads in 80 columns.
#ifndef WITHY_REVIEW_PLACEMENT_TEXT_H_
#define WITHY_REVIEW_PLACEMENT_TEXT_H_

#include <string>
#include <string_view>

#include "withy/review/show_text.h"

namespace withy {

std::string PlacementText(std::string_view file, const v1::Design& design, const v1::PlacementReport& placement,
                          const ShowOptions& options);

}  // namespace withy

#endif  // WITHY_REVIEW_PLACEMENT_TEXT_H_
