// The codes of what the log says of itself, entry against entry.
#ifndef WITHY_ROD_LOG_CODES_H_
#define WITHY_ROD_LOG_CODES_H_

#include "withy/findings/finding.h"

namespace withy {

inline constexpr Code kEntryEmpty = {
    .name = "rod/entry-empty",
    .severity = Severity::kWarning,
    .summary = "An entry of the log that says nothing",
    .why = "Somebody did or read something, and what it was did not get into the log. A cut of nothing or a dry fit without "
           "a reading leaves every plan as it was, as if it had not been done.",
    .action = "Log what was read or done, and correct this entry.",
    .since = 1};

inline constexpr Code kGluedTwice = {
    .name = "rod/glued-twice",
    .severity = Severity::kWarning,
    .summary = "A thing was glued on that was glued on already",
    .why = "What is glued does not come off by itself. An entry of its removal is missing, or the wrong thing is named, and "
           "that one still counts as open.",
    .action = "Log the removal that lies between the two, or correct the entry that is wrong.",
    .since = 1};

inline constexpr Code kGluedBroken = {
    .name = "rod/glued-broken",
    .severity = Severity::kWarning,
    .summary = "A thing was glued on that is broken",
    .why = "A break that is glued in cannot be got at any more; where it was repaired or replaced the log does not say so.",
    .action = "Log the repair (step: \"repaired\") before the glue-up, or correct the entry that is wrong.",
    .since = 1};

inline constexpr Code kFitNotUsed = {
    .name = "rod/fit-not-used",
    .severity = Severity::kAdvice,
    .summary = "A dry fit with the arbors on tells nothing of the bore",
    .why = "An arbor may bind before the blank does. The length is as it was read, but how the next cut changes it cannot "
           "be reckoned from it.",
    .action = "Take the arbors off, try the handle on again, and log that fit; with the arbors on look that the blank goes "
              "as deep.",
    .since = 1};

inline constexpr Code kWeighingNotUsed = {
    .name = "rod/weighing-not-used",
    .severity = Severity::kAdvice,
    .summary = "A weighing of the rod that the balance is not reckoned from",
    .why = "The blank was, or is to be, cut after it: what was weighed is not the rod that this design describes.",
    .action = "Weigh the rod again once the last cut is off.",
    .since = 1};

inline constexpr Code kPointOffRod = {
    .name = "rod/point-off-rod",
    .severity = Severity::kError,
    .summary = "A point of the rod that is not on it",
    .why = "A rod is held, carries its reel and balances between its own two ends. Nothing is reckoned from a balance point "
           "that was read beyond them.",
    .action = "Look at the unit, and at the end that it was measured from: it is the butt end of the finished rod.",
    .since = 1};

}  // namespace withy

#endif  // WITHY_ROD_LOG_CODES_H_
