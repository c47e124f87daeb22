// Why a figure of the report is what it is: its inputs, formula and sources, down to what the author wrote, and which of
// them its uncertainty comes from.
//
//   absl::StatusOr<v1::WhyReport> why = Why(*read.document, review.report, "fit.overall_length_mm");
//   std::cout << WhyText(*why, style);       // as a tree
//   std::cout << MessageToJson(*why);        // what `withy why --json` prints
//
// Formula, source and inputs of a figure are declared beside its concern (withy/rod/figure.h). Shares are those of the
// variance to first order (JCGM 100:2008, 5.1.2): an input that counts twice has four times the share. They are told of
// figures that are carried with an uncertainty, and of inputs that state one.
#ifndef WITHY_REVIEW_WHY_H_
#define WITHY_REVIEW_WHY_H_

#include <string>
#include <string_view>
#include <vector>

#include "absl/status/statusor.h"
#include "withy/document/document.h"
#include "withy/review/terminal_text.h"
#include "withy/rod/figure.h"
#include "withy/v1/report.pb.h"
#include "withy/v1/why.pb.h"

namespace withy {

struct WhyOptions {
  int depth = 2;  // levels of inputs below the figure, >= 1
};

// Opens `figure`, a path in the report as findings and `withy show` write it: "balance.parts[module].mass_g". A figure's
// uncertainty ("...mass_plus_minus_g") is the figure's. A path of a message or list is answered with all figures in it,
// unopened. NotFound, with the nearest name, for what the report does not have; InvalidArgument for what is no path.
//
// `report` is the review's of `document`. Resolves the design once more, which is what it costs.
absl::StatusOr<v1::WhyReport> Why(const Document& document, const v1::Report& report, std::string_view figure,
                                  const WhyOptions& options = {});

// As a tree that reads without colour, then the inputs of its uncertainty.
std::string WhyText(const v1::WhyReport& why, const TextStyle& style);

// Every declared figure, in the order of the concerns.
const std::vector<Figure>& Figures();

}  // namespace withy

#endif  // WITHY_REVIEW_WHY_H_
