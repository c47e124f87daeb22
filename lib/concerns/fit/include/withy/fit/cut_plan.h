// The cut plan: what comes off the butt, in which stages, what the rod's length then is, and the ways out where no cut
// gives the length ordered. It asks the law of the cut (withy/rod/rest_law.h) and re-plans with every entry of the log;
// what is off already it never gives back.
//
//   plan->cut_for_target_m   // 0.1717: the whole cut, +/- cut_for_target_plus_minus_m
//   plan->stages[0]          // take 0.0759, leave 2.1339, dry fit, expect 2.311 +/- ...
//   plan->verdict            // of the rod as planned: kCannotTell before the first dry fit, as a rule
//
// Two kinds of length, never mixed in one number: of the finished rod (`overall`), and as a dry fit reads it, from the
// host's own butt end to the blank's tip end (`expect`, `read`). They differ by `beyond_m`, a constant: where the host
// begins and how far the tip-top reaches beyond the blank. Where that is not known there are no overall lengths, and
// `measure` says what is missing.
#ifndef WITHY_FIT_CUT_PLAN_H_
#define WITHY_FIT_CUT_PLAN_H_

#include <optional>
#include <string>
#include <vector>

#include "withy/fit/length_verdict.h"
#include "withy/rod/rod.h"

namespace withy {

// Metres. One point of the law, from this cut on.
struct LengthAtCut {
  double cut_m = 0, overall_m = 0;
  std::optional<double> overall_before_m;  // just below this cut, where the length jumps
  double shorter_per = 0;                  // what one more unit off takes off the rod, from here on
};

// Where blank and handle touch, or what is built up on the blank binds; from the butt end of the finished rod, the
// blank's place as supplied.
struct BlankContact {
  enum class Kind { kStop, kStep, kTaper, kArbor };
  Kind kind = Kind::kTaper;
  std::optional<double> from_m, to_m, bore_m, on_blank_m;
};

// The blank come to rest, from the butt end of the finished rod.
struct Resting {
  std::optional<double> butt_m, depth_m;  // butt face; from the host's mouth to it
  std::optional<double> shorter_per;      // what one more unit off takes off the rod
  std::vector<BlankContact> contacts;
};

// Take, leave, dry fit, expect. Lengths as a dry fit reads them; those after the first count on the dry fits before
// them having read what was expected.
struct StagedCut {
  double take_m = 0;   // off now, kerf included
  double total_m = 0;  // off since supplied, then
  double leave_m = 0;  // of the assembled blank
  double expect_from_m = 0, expect_m = 0, expect_to_m = 0;
  std::optional<double> overall_m;
  std::optional<double> depth_mark_m;  // new butt face to the host's mouth; unset = nothing to mark
  bool decides = false;                // the dry fit decides what comes after it
};

// A dry fit against what was expected of it.
struct DryFitSeen {
  FieldPath at;
  double cut_m = 0, read_m = 0;                 // as read, of the blank as it then was
  std::optional<double> expected_m, tighter_m;  // expected of that blank, from the profiles as read
  double rest_m = 0;             // where the butt face came to rest, from the host's own butt end
  std::optional<double> bore_m;  // that follows there, where the butt edge is what touches
};

struct Remedy {
  enum class Kind { kCut, kTip, kPlug, kRemove, kOrder };  // cheapest first
  Kind kind = Kind::kCut;
  FieldPath blocked_by;  // the entry that closed the length; empty = none
  std::string text;
  std::optional<double> overall_m;
};

// The other lever: the length ordered from the tip, the butt left as it is.
struct TipLever {
  double cut_m = 0;
  double tip_m = 0;                 // blank at the tip then
  std::optional<double> tube_in64;  // smallest tube in half sixty-fourths that goes over all that is in it
  std::optional<double> stiffer;    // (diameter then / now)^3: bending stiffness of a thin tube of the same wall
};

struct CutPlan {
  enum class Outcome { kReached, kJump, kTargetTooLong, kTargetTooShort, kClosed, kDoesNotEnter };
  int host = -1;  // in Handle::parts, the part that the blank comes to rest in; -1 = it runs through
  RestLaw::From law = RestLaw::From::kThrough;
  double done_m = 0, planned_m = 0;  // off the butt by the log; by log or plan, whichever is more
  double limit_m = 0;                // no plan takes more: half of the butt section
  std::optional<double> beyond_m;    // overall length less that of a dry fit; without a tip-top to the blank's tip
  std::optional<double> cut_for_target_m, cut_for_target_plus_minus_m;
  std::optional<Outcome> outcome;                          // unset = cannot be told
  std::optional<double> nearest_below_m, nearest_above_m;  // overall
  std::optional<FieldPath> closed_by;                      // the entry of the log that closed the length
  bool jump_near = false;
  bool contradicted = false;  // the latest dry fit is none that bore and blank can have: nothing is planned by either
  std::optional<double> tighter_m;  // blank less bore, beyond what was read; unset without a dry fit
  // `planned` is the rod that all other answers are of. Its place is the rod's, which a dry fit or the design may give
  // instead of the law; the contacts are the law's, and left out where it puts the butt face elsewhere.
  Resting now, planned;
  std::vector<LengthAtCut> lengths;
  std::vector<StagedCut> stages;
  bool no_sure_cut = false;  // something is to come off, and any cut might be too much
  std::vector<DryFitSeen> dry_fits;
  std::vector<Remedy> remedies;
  std::optional<TipLever> tip;
};

// Of the rod as planned: with d the distance from the length ordered and U its expanded uncertainty, meets where d + U
// is within the tolerance, misses where d - U is not, cannot be told between the two, nor where a jump of the length
// lies within the uncertainty of the diameters. Unset = no length is ordered.
std::optional<LengthVerdict> VerdictOf(const Rod& rod);

// What the order allows; 1/8 in (common practice, no source) where it names no tolerance.
double LengthTolerance(const Rod& rod);

// Unset where what the butt does in its handle is not known.
std::optional<CutPlan> PlanCut(const Rod& rod);

// What would settle the length; empty = nothing is open.
std::string MeasureForLength(const Rod& rod, const std::optional<CutPlan>& plan);

}  // namespace withy

#endif  // WITHY_FIT_CUT_PLAN_H_
