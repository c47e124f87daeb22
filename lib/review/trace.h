// Which figures of a report are known with their uncertainty, and of what it is made: the numbers of the rod and of the
// answers behind them, by their path in the report.
//
//   Trace trace = TraceOf(rod, answers);
//   trace.at("fit.overall_length_mm").Shares()   // of inputs that answers.inputs names
//
// Made only when somebody asks why (withy/review/why.h): filling the report does not pay for it.
#ifndef WITHY_REVIEW_TRACE_H_
#define WITHY_REVIEW_TRACE_H_

#include <map>
#include <string>

#include "answers.h"

namespace withy {

// In the unit of the figure; items of lists by their number: "balance.parts[3].mass_g".
using Trace = std::map<std::string, Uncertain>;

Trace TraceOf(const Rod& rod, const Answers& answers);

}  // namespace withy

#endif  // WITHY_REVIEW_TRACE_H_
