// What somebody at the bench wants to record, looked at before it is: a typing error in a log closes what is not
// closed.
//
//   BenchReadings readings;
//   readings.cut_mm = 1930;                       // 76 in, meant was 3 in
//   for (const Refusal& refusal : RefusalsOf(design, report, readings, units)) ...
//
// Judged by the report of the design as it is before the entry. What cannot be judged (a length that is not known) is
// let through.
#ifndef WITHY_REVIEW_BENCH_READINGS_H_
#define WITHY_REVIEW_BENCH_READINGS_H_

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "withy/review/checked_design.h"
#include "withy/review/length_units.h"
#include "withy/v1/design.pb.h"
#include "withy/v1/report.pb.h"

namespace withy {

struct BenchReadings {
  std::optional<double> cut_mm;      // off the butt
  std::optional<double> tip_cut_mm;  // off the tip
  std::optional<double> plus_minus_mm;  // how far off these lengths may be
  std::optional<double> dry_fit_mm;  // `part`'s own butt end to the blank's tip end, after those cuts
  std::string part;                  // that was tried on, or that counterweights are potted in
  std::optional<double> mass_g;      // of the whole rod
  std::optional<double> balance_mm;  // of the whole rod, from its butt end
  bool with_reel = false;
  std::optional<std::uint32_t> weights;  // in it when it was weighed, or potted now
  bool potted = false;
  std::vector<std::string> missing;  // ids of what was not on it when it was weighed
  // A static test: the weight on the line, how the rod was held, what was seen.
  std::optional<double> lifted_g, butt_angle_deg, line_angle_deg, clamp_mm, tip_drop_mm;
  std::vector<std::string> touched;  // ids of guides
  std::string corrects;  // id of the entry that was wrong
};

// Why something is better not recorded: what is wrong with it, with numbers, and what to do.
struct Refusal {
  std::string message;
  std::string help;
  bool may_be_forced = true;  // somebody may know better; false: it cannot be meant
};

// In the order of BenchReadings. Refused: what is not above zero; a cut of more than is left, or more than 1.5 times
// the largest single cut, or less than a saw takes; a length read worse than to an inch; a dry fit shorter than the blank
// or longer than blank and handle; a number that would fit if it were in another unit (25.4, 28.35) or had its point
// elsewhere (10); what the log has closed (the handle is glued, the counterweights are potted); a balance point off the
// rod; a mass that the rod has with the reel on, where it was off, or the other way round; more counterweights than fit;
// an entry that is not there. Of a static test: a weight that in another unit would be one of the load cases, or more than twice
// the blank's rating; an angle beyond straight up or down; a clamp off the rod; a tip that drops by more than the rod is long.
std::vector<Refusal> RefusalsOf(const v1::Design& design, const v1::Report& report, const BenchReadings& readings,
                                LengthUnits units);

// What the log says against itself with the entries of `after` from number `first_new` on (counted from 0), where
// it did not without them: errors and warnings that stand at one of them or speak of one, and a cut or a dry fit of what
// is broken. Each may be forced.
std::vector<Refusal> ContradictionsOf(const CheckedDesign& after, int first_new);

// The same, what is only worth knowing: "message. help".
std::vector<std::string> RemarksOn(const CheckedDesign& after, int first_new);

// What is left of the assembled blank by the log, whatever is planned; unset where it is not known.
std::optional<double> BlankLeftMm(const v1::Report& report);

}  // namespace withy

#endif  // WITHY_REVIEW_BENCH_READINGS_H_
