// What follows from a design, for people: lengths, sections, handle, guides, wraps, mass and balance, and what was
// assumed or cannot be told. Made from the report alone, with names taken from the design; computes nothing.
//
//   std::cout << ShowText("rod.txtpb", design, review.report, {.units = LengthUnits::kMm});
//
// Diameters are in mm and masses in g always, as at the bench. Reads in 80 columns.
#ifndef WITHY_REVIEW_SHOW_TEXT_H_
#define WITHY_REVIEW_SHOW_TEXT_H_

#include <string>
#include <string_view>

#include "withy/review/length_units.h"
#include "withy/review/terminal_text.h"
#include "withy/v1/design.pb.h"
#include "withy/v1/report.pb.h"

namespace withy {

struct ShowOptions {
  LengthUnits units = LengthUnits::kMm;  // the overall length is shown in both
  TextStyle style;
};

// A blank figure is shown as "-": it could not be told, and the last section says what would settle it.
std::string ShowText(std::string_view file, const v1::Design& design, const v1::Report& report,
                     const ShowOptions& options);

}  // namespace withy

#endif  // WITHY_REVIEW_SHOW_TEXT_H_
