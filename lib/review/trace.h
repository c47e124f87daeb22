// Which figures of a report are known with their uncertainty, and of what it is made: the numbers of the rod and of the
// answers behind them.
//
//   Trace trace(rod, answers);
//   trace.PlusMinus(path)     // of fit.overall_length_mm: 1.6
//   trace.SharesOf(path)      // {"log[e10].fit.overall", 1}
//
// Made only when somebody asks why (withy/review/why.h): filling the report does not pay for it.
#ifndef WITHY_REVIEW_TRACE_H_
#define WITHY_REVIEW_TRACE_H_

#include <map>
#include <optional>
#include <string>

#include "answers.h"

namespace withy {

class Trace {
 public:
  // Keeps references to both.
  Trace(const Rod& rod, const Answers& answers);

  // In the unit of the figure; unset where it is exact or not traced. `figure` with the numbers of its items.
  std::optional<double> PlusMinus(const FieldPath& figure) const;

  // Share in the variance by the name of the input, what has one name together; empty where it is exact or not traced.
  std::map<std::string, double> SharesOf(const FieldPath& figure) const;

 private:
  void Spread(double share, double cut_m, std::map<std::string, double>& shares) const;

  const Rod& rod_;
  const Answers& answers_;
  std::map<std::string, Uncertain> figures_;  // items of lists by their number: "balance.parts[3].mass_g"
};

}  // namespace withy

#endif  // WITHY_REVIEW_TRACE_H_
