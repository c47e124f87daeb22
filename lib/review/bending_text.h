// How the rod bends and rings, as a section of the text for people: each load case of the finished rod (of the bare blank
// where that alone can be told), what rods are told apart by, and what rings. Made from the report alone.
#ifndef WITHY_REVIEW_BENDING_TEXT_H_
#define WITHY_REVIEW_BENDING_TEXT_H_

#include <string>

#include "withy/review/show_text.h"
#include "withy/v1/report.pb.h"

namespace withy {

// With its heading; empty for a design without a blank. Where nothing can be told: one line with what to measure.
// Places are counted from the end that is bent, as a builder thinks of them: the tip-top's ring, or the bare blank's tip.
std::string BendingText(const v1::Report& report, const ShowOptions& options);

}  // namespace withy

#endif  // WITHY_REVIEW_BENDING_TEXT_H_
