// The codes of resolve.
#ifndef WITHY_ROD_CODES_H_
#define WITHY_ROD_CODES_H_

#include "withy/findings/finding.h"

namespace withy {

inline constexpr Code kEntryNotUnderstood = {
    .name = "rod/entry-not-understood", .severity = Severity::kCannotTell,
    .summary = "An entry of the log is not understood",
    .why = "It may be a cut. A length that is worked out without it would be wrong by as much as was taken off, and no "
           "later step could put it back.",
    .action = "Give the entry a content that is known here (a cut needs its section and amount), or read the design with "
              "a newer version.",
    .since = 1};

inline constexpr Code kCorrectionNotOfEarlier = {
    .name = "rod/correction-not-of-earlier",
    .severity = Severity::kError,
    .summary = "A correction, or an entry instead of another, that does not go with an earlier one",
    .why =
        "The log is in the order of the bench, and only what was already written can have been wrong. A correction of "
        "itself or of a later entry has no effect, so that what it was meant for may still count. What stands instead of "
        "another needs a correction that says the other was wrong, and only one entry takes its place.",
    .action = "Name the earlier entry that was wrong, move the correction to the end of the log, or add the one that is "
              "missing.",
    .since = 1};

inline constexpr Code kNoBlank = {
    .name = "rod/no-blank",
    .severity = Severity::kCannotTell,
    .summary = "Nothing is said of a blank",
    .why = "Everything sits on the blank: without a section no length, no bore and no place can be judged.",
    .action = "Measure the length of each section of the blank, and its outer diameter at both ends and in between.",
    .since = 1};

inline constexpr Code kPlaceCycle = {
    .name = "rod/place-cycle", .severity = Severity::kError,
    .summary = "Places that wait for each other",
    .why = "Each of these things is placed against another of them, so that none has a place to start from.",
    .action = "Give one of them a place of its own: from_butt, from_tip or from_section_butt.", .since = 1};

inline constexpr Code kPlaceAmbiguous = {
    .name = "rod/place-ambiguous", .severity = Severity::kError,
    .summary = "A place against a wrap that lies in several places",
    .why = "One entry for the wraps of several guides is several wraps: after or before it could be any of them.",
    .action = "Give the wrap that is meant an entry of its own, or place this thing from the tip.", .since = 1};

inline constexpr Code kMeasurementsDiffer = {
    .name = "rod/measurements-differ", .severity = Severity::kWarning,
    .summary = "Two measurements of one thing differ",
    .why = "Both cannot be right, and every figure rests on one of them: the later is used.",
    .action = "Measure again. Where a logged one was wrong, add a correction to the log.", .since = 1};

inline constexpr Code kNothingLeft = {
    .name = "rod/nothing-left", .severity = Severity::kError,
    .summary = "The cuts take more than the section has",
    .why = "Nothing of the section is left to build on.",
    .action = "Check the amounts and the ends of the cuts, and the section's length as supplied.", .since = 1};

inline constexpr Code kCutBeyondPlan = {
    .name = "rod/cut-beyond-plan", .severity = Severity::kAdvice,
    .summary = "More was cut off than planned",
    .why = "What is off stays off: every figure uses what was taken, and the plan no longer says anything.",
    .action = "Look at the finished length again, and bring the plan up to what was done.", .since = 1};

inline constexpr Code kBroken = {
    .name = "rod/broken", .severity = Severity::kError,
    .summary = "A section broke and is not repaired",
    .why = "The figures speak of the rod as it was before it broke.",
    .action = "Log the repair (step: \"repaired\") and what was cut off, or plan a new section.", .since = 1};

inline constexpr Code kTooManyThings = {
    .name = "rod/too-many", .severity = Severity::kError,
    .summary = "More of one kind of thing than any rod has",
    .why = "Uncertainty is carried along the chain of all of them; beyond 64 sections, 1000 parts, 2000 guides or 20,000 "
           "wraps nothing is worked out.",
    .action = "Split the design: one file is one rod.", .since = 1};

inline constexpr Code kDryFitStale = {
    .name = "rod/dry-fit-stale", .severity = Severity::kCannotTell,
    .summary = "The butt is shorter than it was at the last dry fit",
    .why = "A cut butt is thinner and goes deeper into the handle, so the dry fit no longer tells the length.",
    .action = "Try the handle on again after the cut, and log the fit.", .since = 1};

inline constexpr Code kCutAgainstFits = {
    .name = "rod/cut-against-fits", .severity = Severity::kWarning,
    .summary = "A logged cut does not go with the dry fits before and after it",
    .why = "What comes off the butt shortens the rod by that much, and by a little more where the thinner butt goes deeper. "
           "A cut that says less or much more was mistyped, or an entry is missing, and the next cut would be reckoned "
           "from it.",
    .action = "Look at the amount and its unit before anything more is cut. Where it is wrong, log a correction and the cut "
              "as it was.",
    .since = 1};

inline constexpr Code kRestUnknown = {
    .name = "rod/rest-unknown", .severity = Severity::kCannotTell,
    .summary = "Where the blank comes to rest in the handle is not known",
    .why = "In a one-piece handle the blank stops where it fills the bore; the finished length depends on it.",
    .action = "Try the handle on dry, measure butt end to tip end of the blank, and log the fit.", .since = 1};

inline constexpr Code kJointMissing = {
    .name = "rod/joint-missing", .severity = Severity::kCannotTell,
    .summary = "How two sections meet is not known",
    .why = "The length of the rod depends on how far one section goes into the other.",
    .action = "Describe the joint: its kind, and the overlap measured on the seated sections.", .since = 1};

inline constexpr Code kFitTooLong = {
    .name = "rod/fit-too-long", .severity = Severity::kError,
    .summary = "A dry fit longer than blank and part laid end to end",
    .why = "However little of the blank goes in, the two cannot be longer together than one after the other. The reading or "
           "its unit is wrong, or a cut is logged that was not made; nothing is reckoned from it.",
    .action = "Measure again from the part's own butt end to the tip end of the blank, and correct the entry that was wrong.",
    .since = 1};

inline constexpr Code kFitTooShort = {
    .name = "rod/fit-too-short", .severity = Severity::kError,
    .summary = "A dry fit shorter than the blank alone",
    .why = "The blank lies between the handle's butt end and its own tip end, so that the two together are at least as long "
           "as what is left of it. The reading or its unit is wrong, or a cut is missing; nothing is reckoned from it.",
    .action = "Measure again from the handle's own butt end to the tip end of the blank, and correct the entry that was "
              "wrong, or log the cut.",
    .since = 1};

inline constexpr Code kAfterGlueUp = {
    .name = "rod/after-glue-up", .severity = Severity::kError,
    .summary = "A cut or a dry fit after the handle was glued on",
    .why = "A glued blank neither comes out to be cut nor is tried on again. Either it was not glued yet, or it came off, "
           "and what the length rests on depends on which.",
    .action = "Correct the entry that is wrong, or log that the handle was removed.", .since = 1};

inline constexpr Code kPlanClosed = {
    .name = "rod/plan-closed", .severity = Severity::kWarning,
    .summary = "A cut is planned off a butt that is glued in",
    .why = "What is glued stays as it is: the cut cannot be made any more, and every figure leaves it out.",
    .action = "Bring the plan back to what was cut. Where the rod is too long, look at the tip, or at taking the handle off.",
    .since = 1};

inline constexpr Code kGluedUntried = {
    .name = "rod/glued-untried", .severity = Severity::kAdvice,
    .summary = "The handle was glued on without a dry fit",
    .why = "The last dry fit is what tells where the blank lies in the handle, and with it the length of the rod; a length "
           "reckoned from bore and taper alone is easily 10 mm off.",
    .action = "Log the dry fit before the glue-up, if there was one; else measure the rod as it is.", .since = 1};

inline constexpr Code kRemovedNotOn = {
    .name = "rod/removed-not-on", .severity = Severity::kWarning,
    .summary = "Something came off that was not on",
    .why = "An entry is missing, or the wrong thing is named: what is closed, and what is open again, is then not what the "
           "log says.",
    .action = "Log the glue-up or the wrap that came before it, or correct the removal.", .since = 1};

inline constexpr Code kRingOrder = {
    .name = "rod/ring-order",
    .severity = Severity::kError,
    .summary = "Diameters of a part that do not stand in order along it",
    .why = "The table is drawn from the first row to the last; one that jumps back makes it two tables, and nothing is "
           "reckoned from either.",
    .action = "Look at the place of the row, and put the rows in order from the part's own butt end.",
    .since = 1};

inline constexpr Code kBoreWiderThanPart = {
    .name = "rod/bore-wider-than-part",
    .severity = Severity::kError,
    .summary = "A bore that is wider than the part around it",
    .why = "There is no wall left there. One of the two diameters is wrong, and arbors, adhesive and mass are reckoned from "
           "both.",
    .action = "Measure both diameters again; look at the decimal point and at the unit.",
    .since = 1};

inline constexpr Code kCavityAgainstBore = {
    .name = "rod/cavity-against-bore",
    .severity = Severity::kWarning,
    .summary = "A bore narrower than the cavity that lies in it",
    .why = "Where there is a cavity the bore is at least as wide. Whether the blank gets past, and whether counterweights go "
           "in, depends on which of the two was measured right.",
    .action = "Measure the bore at that place and the cavity again.",
    .since = 1};

inline constexpr Code kCounterweightUnit = {
    .name = "rod/counterweight-unit",
    .severity = Severity::kWarning,
    .summary = "The shop's counterweight has another mass than the part's",
    .why = "The plan counts whole units of the part's mass; made up from the shop's stock, the rod balances elsewhere.",
    .action = "Weigh one, and correct the mass that is wrong.",
    .since = 1};

}  // namespace withy

#endif  // WITHY_ROD_CODES_H_
