// How the line bends the rod through its rings, as a section of the text for people: each load case that pulls through the
// line, and what it does ring by ring. Made from the report alone.
#ifndef WITHY_REVIEW_LINE_LOAD_TEXT_H_
#define WITHY_REVIEW_LINE_LOAD_TEXT_H_

#include <string>

#include "withy/review/show_text.h"
#include "withy/v1/report.pb.h"

namespace withy {

// With its heading; empty where no load pulls through the line. Where nothing can be told: one line with what to measure.
// Places are counted from the tip-top's ring, as guides are.
std::string LineLoadText(const v1::Report& report, const ShowOptions& options);

}  // namespace withy

#endif  // WITHY_REVIEW_LINE_LOAD_TEXT_H_
