// The codes of the review itself: they speak of waivers.
#ifndef WITHY_REVIEW_CODES_H_
#define WITHY_REVIEW_CODES_H_

#include <vector>

#include "withy/findings/finding.h"

namespace withy {

inline constexpr Code kUnusedWaiver = {
    .name = "review/unused-waiver", .severity = Severity::kWarning,
    .summary = "A waiver that waives nothing",
    .why = "What it was written for is gone, or its place or code is misspelt and the finding still stands. Left in the "
           "design it would hide the next finding of that kind.",
    .action = "Remove the waiver, or correct its code and place.", .since = 1};

inline constexpr Code kUnknownWaiverCode = {
    .name = "review/unknown-waiver-code", .severity = Severity::kWarning,
    .summary = "A waiver for a code that does not exist",
    .why = "It can never waive anything.", .action = "Write the code as the finding prints it.", .since = 1};

inline constexpr Code kWaiverPath = {
    .name = "review/waiver-path", .severity = Severity::kWarning,
    .summary = "A waiver whose place cannot be read",
    .why = "It does not count, because nobody can say what it is for.",
    .action = "Write the place as the finding prints it, like guides[g5].from_tip, or leave it out for everywhere.",
    .since = 1};

inline constexpr Code kNotWaivable = {
    .name = "review/not-waivable",
    .severity = Severity::kWarning,
    .summary = "A waiver for what cannot be waived",
    .why =
        "What is not known, and what of the file is not understood, stays so whoever accepts it. The waiver does not "
        "count: with it the verdict would speak of a rod that nobody has looked at.",
    .action = "Remove the waiver, and measure or correct what the finding speaks of.",
    .since = 1};

std::vector<Code> ReviewCodes();

}  // namespace withy

#endif  // WITHY_REVIEW_CODES_H_
