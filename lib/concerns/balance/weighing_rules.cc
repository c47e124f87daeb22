#include <algorithm>

#include "absl/strings/str_format.h"
#include "rules.h"
#include "whole.h"

namespace withy::balance {
namespace {

constexpr Code kWeighingContradicts = {
    .name = "balance/weighing-contradicts",
    .severity = Severity::kWarning,
    .summary = "A weighing of the rod says what cannot have been",
    .why = "What was on the rod when it lay on the scales or the edge decides how the reading is used.",
    .action = "Correct the entry: say what was not on yet, and how many counterweights were in.",
};

const char* DoneTo(Closed::Kind kind) {
  switch (kind) {
    case Closed::Kind::kGlued: return "glued on";
    case Closed::Kind::kWrapped: return "wrapped";
    default: return nullptr;
  }
}

void JudgeMissing(const View& view, const WholeWeighing& weighing, std::vector<Finding>& findings) {
  for (const Closed& closed : view.rod.closed) {
    const char* done = DoneTo(closed.kind);
    const bool listed = std::find(weighing.missing.begin(), weighing.missing.end(), closed.id) != weighing.missing.end();
    const int then = EntryOf(closed.at);
    if (!done || !listed || then < 0 || then >= EntryOf(weighing.at)) continue;
    findings.push_back(MakeFinding(
        kWeighingContradicts, weighing.at.Field("missing"),
        absl::StrFormat("'%s' was missing, and it was %s before (%s)", closed.id, done, closed.at.ToString())));
    findings.back().related.push_back(closed.at);
  }
}

// Trial weights need no cover.
int MostThatGoIn(const CounterweightStack& stack) {
  CounterweightRoom room = stack.room();
  room.cover_m = 0;
  return CounterweightStack(stack.unit(), room).fit();
}

void JudgeWeightsIn(const View& view, const WholeWeighing& weighing, std::vector<Finding>& findings) {
  const auto& plan = view.answers.counterweights;
  if (weighing.weights == 0 || weighing.weights == weighing.potted || (plan && !plan->stack)) return;
  const int most = plan ? MostThatGoIn(*plan->stack) : 0;
  const std::uint32_t elsewhere = plan ? PottedElsewhere(view.rod, weighing, plan->part) : 0;
  if (weighing.weights <= most + elsewhere) return;
  findings.push_back(MakeFinding(
      kWeighingContradicts, weighing.at.Field("weights"),
      plan ? absl::StrFormat("%d counterweights were in, and %d go into '%s'", weighing.weights - elsewhere, most,
                             plan->part)
           : absl::StrFormat("%d counterweights were in, and no part has a cavity for any", weighing.weights),
      {{"weights", double(weighing.weights)}, {"fit", double(most)}}));
}

void JudgeWeighingContradicts(const View& view, std::vector<Finding>& findings) {
  for (const WholeWeighing& weighing : view.rod.wholes) {
    JudgeMissing(view, weighing, findings);
    JudgeWeightsIn(view, weighing, findings);
  }
}

constexpr Code kPottedRoom = {
    .name = "balance/potted-room",
    .severity = Severity::kWarning,
    .summary = "More counterweights are potted than go into the cavity",
    .why = "Where they are then is not known, and so neither is the balance.",
    .action = "Correct the entry, or measure the cavity and one counterweight again.",
};

void JudgePottedRoom(const View& view, std::vector<Finding>& findings) {
  const auto& plan = view.answers.counterweights;
  if (!plan || !plan->potted || !plan->stack) return;
  const int most = MostThatGoIn(*plan->stack);
  const Closed* closed = view.rod.FindClosed(Closed::Kind::kPotted, plan->part);
  if (!closed || *plan->planned <= static_cast<std::uint32_t>(most)) return;
  findings.push_back(MakeFinding(kPottedRoom, closed->at,
                                 absl::StrFormat("%d are potted, and %d go into '%s'", *plan->planned, most, plan->part),
                                 {{"potted", double(*plan->planned)}, {"fit", double(most)}}));
}

}  // namespace

std::vector<Rule<View>> WeighingRules() {
  return {{&kWeighingContradicts, JudgeWeighingContradicts}, {&kPottedRoom, JudgePottedRoom}};
}

}  // namespace withy::balance
