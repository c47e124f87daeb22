#include <algorithm>

#include "absl/strings/str_format.h"
#include "rules.h"

namespace withy::wraps {
namespace {

constexpr Code kThreadUnknown = {
    .name = "wraps/thread-unknown",
    .severity = Severity::kCannotTell,
    .summary = "The wrapping thread of a wrap, or its thickness, is not known",
    .why =
        "Turns, length of wrapping thread and spools all follow from it. Letters and numbers differ between "
        "sellers.",
    .action = "Name the wrapping thread in `thread`; wind it side by side along a rule and enter `turns_per_10_mm`.",
};

void JudgeThreadUnknown(const View& view, std::vector<Finding>& findings) {
  OncePerEntry first;
  std::vector<bool> told(view.rod.threads.size(), false);
  for (const Wrap& wrap : view.rod.wraps) {
    // a decorative wrap has its threads in its pattern; a name that leads nowhere is told where references are
    if (wrap.thread.empty() && wrap.kind != "decorative" && first(wrap)) {
      findings.push_back(
          MakeFinding(kThreadUnknown, wrap.at, absl::StrFormat("the wrapping thread of '%s' is not known", wrap.id)));
    }
    if (wrap.thread_index < 0 || told[wrap.thread_index]) continue;
    const Thread& thread = view.rod.threads[wrap.thread_index];
    if (thread.diameter) continue;
    told[wrap.thread_index] = true;
    findings.push_back(
        MakeFinding(kThreadUnknown, thread.at, absl::StrFormat("the thickness of '%s' is not known", thread.id)));
  }
}

constexpr Code kThreadByLetter = {
    .name = "wraps/thread-by-letter",
    .severity = Severity::kAdvice,
    .summary = "A wrapping thread is known by its size letter alone",
    .why =
        "Sellers do not mean the same by a letter: turns and length of thread may be off by a third, and the mass with "
        "them.",
    .action = "Wind it side by side along a rule and enter `turns_per_10_mm`.",
};

void JudgeThreadByLetter(const View& view, std::vector<Finding>& findings) {
  for (const Thread& thread : view.rod.threads) {
    if (!thread.diameter || thread.diameter->source != Source::kAssumed) continue;
    const double turns = 10 / thread.diameter->value.mm();
    findings.push_back(MakeFinding(
        kThreadByLetter, thread.at.Field("size"),
        absl::StrFormat("size %s of '%s' is taken as %.0f turns over 10 mm", thread.size, thread.id, turns),
        {{"turns_per_10_mm", turns}}));
  }
}

constexpr Code kLengthUnknown = {
    .name = "wraps/length-unknown",
    .severity = Severity::kCannotTell,
    .summary = "How long a wrap is along the rod is not known",
    .why = "Its wrapping thread cannot be reckoned, and nobody can tell whether it meets its neighbour.",
    .action = "Enter `length` or `turns`. On a guide the length of the foot in its model will do.",
};

// Whether what the wrap is on is described; a name that leads nowhere is told where references are.
bool HostIsKnown(const Rod& rod, const Wrap& wrap) {
  const auto named = [&](const auto& thing) { return thing.id == wrap.on; };
  const auto any = [&](const auto& things) { return std::any_of(things.begin(), things.end(), named); };
  return wrap.on.empty() || any(rod.guides) || any(rod.handle.parts) || any(rod.blank.joints) || any(rod.wraps) ||
         any(rod.blank.sections) || (rod.tip_top && named(*rod.tip_top));
}

void JudgeLengthUnknown(const View& view, std::vector<Finding>& findings) {
  OncePerEntry first;
  for (const Wrap& wrap : view.rod.wraps) {
    // turns of a thread that is not known are told with the thread
    if (wrap.length || wrap.turns || !HostIsKnown(view.rod, wrap) || !first(wrap)) continue;
    findings.push_back(
        MakeFinding(kLengthUnknown, wrap.at, absl::StrFormat("the length of %s is not known", NameOf(wrap))));
  }
}

bool IsCover(const Finish& finish) {
  return finish.kind == "epoxy" || finish.kind == "varnish";
}
bool IsPreserver(const Finish& finish) {
  return finish.kind == "color_preserver";
}

constexpr Code kCoatOrder = {
    .name = "wraps/coat-order",
    .severity = Severity::kWarning,
    .summary = "Colour preserver goes on over the finish",
    .why =
        "It has to be in the wrapping thread before anything else is; over epoxy or varnish it keeps no colour "
        "and peels.",
    .action = "Put the preserver first in `coats`.",
};

void JudgeCoatOrder(const View& view, std::vector<Finding>& findings) {
  OncePerEntry first;
  for (const Wrap& wrap : view.rod.wraps) {
    bool covered = false, late = false;
    for (const int coat : wrap.coats) {
      late = late || (covered && IsPreserver(view.rod.finishes[coat]));
      covered = covered || IsCover(view.rod.finishes[coat]);
    }
    if (!late || !first(wrap)) continue;
    findings.push_back(MakeFinding(kCoatOrder, wrap.at.Field("coats"),
                                   absl::StrFormat("'%s' is preserved after it is finished", wrap.id)));
  }
}

constexpr Code kPreserverMissing = {
    .name = "wraps/preserver-missing",
    .severity = Severity::kAdvice,
    .summary = "Plain nylon goes under a finish without colour preserver",
    .why = "The finish soaks in, and the wrapping thread turns dark and clear, so that foot and blank show through.",
    .action =
        "Put a colour preserver first in `coats`, take wrapping thread that is `preserved`, or leave it so "
        "where the look is meant.",
};

void JudgePreserverMissing(const View& view, std::vector<Finding>& findings) {
  OncePerEntry first;
  const std::vector<Finish>& finishes = view.rod.finishes;
  const auto any = [&](const Wrap& wrap, bool (*is)(const Finish&)) {
    return std::any_of(wrap.coats.begin(), wrap.coats.end(), [&](int coat) { return is(finishes[coat]); });
  };
  for (const Wrap& wrap : view.rod.wraps) {
    if (wrap.thread_index < 0) continue;
    const Thread& thread = view.rod.threads[wrap.thread_index];
    if (thread.material != "nylon" || thread.preserved || !any(wrap, IsCover) || any(wrap, IsPreserver)) continue;
    if (!first(wrap)) continue;
    findings.push_back(MakeFinding(kPreserverMissing, wrap.at.Field("coats"),
                                   absl::StrFormat("'%s' of '%s' has no colour preserver", wrap.id, thread.id)));
  }
}

}  // namespace

std::vector<Rule<View>> ThreadRules() {
  return {{&kThreadUnknown, JudgeThreadUnknown},
          {&kThreadByLetter, JudgeThreadByLetter},
          {&kLengthUnknown, JudgeLengthUnknown},
          {&kCoatOrder, JudgeCoatOrder},
          {&kPreserverMissing, JudgePreserverMissing}};
}

}  // namespace withy::wraps
