// Mass and balance before the potting, for people: what the rod weighs and where it balances, what everything weighs, how
// many counterweights to put in and where to stop, what they cost, and what would do instead.
//
//   std::cout << BalanceText("rod.txtpb", design, review.report, {.units = LengthUnits::kInch});
//
// Made from the report alone (BalanceReport), with names taken from the design; computes nothing. Masses in g, moments in
// N m (the sheet is read beside a scale, not a lever). Reads in 80 columns.
#ifndef WITHY_REVIEW_BALANCE_TEXT_H_
#define WITHY_REVIEW_BALANCE_TEXT_H_

#include <string>
#include <string_view>

#include "withy/review/show_text.h"

namespace withy {

std::string BalanceText(std::string_view file, const v1::Design& design, const v1::Report& report,
                        const ShowOptions& options);

}  // namespace withy

#endif  // WITHY_REVIEW_BALANCE_TEXT_H_
