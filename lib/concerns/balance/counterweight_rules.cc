#include <algorithm>
#include <cmath>
#include <string>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "rules.h"

namespace withy::balance {
namespace {

// One unit steps over the order's tolerance: just tip-heavy is off it already, and balance/target says what comes
// nearest.
bool StepsOverOrder(const View& view, const CounterweightPlan& plan) {
  const Maybe<Length>& ordered = view.rod.order.balance_from_butt;
  if (!ordered || plan.status != CounterweightStatus::kBalanced || !plan.balance_after_m) return false;
  return std::abs(*plan.balance_after_m - ordered->value.meters()) > ToleranceOf(*ordered).meters();
}

// The plan, where it can be told and the rod as designed does not meet the order anyway; null otherwise.
const CounterweightPlan* PlanOf(const View& view) {
  const auto& plan = view.answers.counterweights;
  if (!plan || !plan->status || MeetsOrder(view) || StepsOverOrder(view, *plan)) return nullptr;
  return &*plan;
}

// "about the order's balance point"
std::string AboutAim(const View& view) {
  return absl::StrCat("about ", AimWord(view.answers.aim->kind));
}

// With what would do instead, the first two.
std::string Help(const View& view, std::string first) {
  const auto& instead = view.answers.instead;
  for (std::size_t i = 0; i < std::min<std::size_t>(instead.size(), 2); ++i) absl::StrAppend(&first, " ", instead[i].text);
  return first;
}

constexpr Code kCount = {
    .name = "balance/counterweight-count",
    .severity = Severity::kWarning,
    .summary = "Another number of counterweights would balance the rod",
    .why = "Counterweights are potted for good; until then one more or less costs nothing.",
    .action = "Tape in the number that balances, try it on an edge with the reel on, and pot them last.",
};

void JudgeCount(const View& view, std::vector<Finding>& findings) {
  const CounterweightPlan* plan = PlanOf(view);
  if (!plan || !plan->count || plan->potted || plan->planned.value_or(0) == 0) return;
  const int planned = static_cast<int>(std::min<std::uint32_t>(*plan->planned, CounterweightStack::kMostUnits));
  const int off = std::abs(planned - *plan->count);
  if (off == 0 || planned > plan->stack->fit() || (off == 1 && plan->confidence == Confidence::kOneMoreOrLess)) return;
  const std::vector<Number> numbers = {{"planned", double(planned)},
                                       {"count", double(*plan->count)},
                                       {"moment_after_n_m", plan->moment_after_n_m->value()},
                                       {"plus_minus_n_m", plan->moment_after_n_m->plus_minus()}};
  const FieldPath at = plan->at.Field("count");
  if (plan->confidence == Confidence::kCannotTell) {
    Finding finding =
        CannotTell(kCount, at,
                   absl::StrFormat("too uncertain to tell whether %d or %d counterweights balance the rod %s", planned,
                                   *plan->count, AboutAim(view)),
                   "weigh the rod with its reel and trial weights, and lay it on an edge");
    finding.numbers = numbers;
    findings.push_back(std::move(finding));
    return;
  }
  findings.push_back(MakeFinding(kCount, at,
                                 absl::StrFormat("%d planned, and with %d potted the rod is just tip-heavy %s", planned,
                                                 *plan->count, AboutAim(view)),
                                 numbers));
}

constexpr Code kButtHeavy = {
    .name = "balance/butt-heavy",
    .severity = Severity::kWarning,
    .summary = "Counterweights are in or planned, and the rod is butt-heavy without any more",
    .why = "They would add mass and swing weight and make the balance worse.",
    .action = "Leave them out, or make the butt or the reel lighter.",
};

void JudgeButtHeavy(const View& view, std::vector<Finding>& findings) {
  const CounterweightPlan* plan = PlanOf(view);
  if (!plan || plan->status != CounterweightStatus::kButtHeavy || plan->planned.value_or(0) == 0) return;
  const Uncertain& moment = plan->potted ? *plan->moment_after_n_m : *plan->moment_without_n_m;
  if (moment.value() + moment.plus_minus() >= 0) return;
  const std::string figures = absl::StrFormat("butt-heavy by %.3f N m %s, ", -moment.value(), AboutAim(view));
  findings.push_back(MakeFinding(
      kButtHeavy, plan->at,
      plan->potted ? absl::StrFormat("%swith the %d that are potted", figures, *plan->planned) : figures + "without any",
      {{"planned", double(*plan->planned)}, {"moment_n_m", moment.value()}, {"plus_minus_n_m", moment.plus_minus()}},
      Help(view, plan->potted ? "What is potted stays." : "Leave them out.")));
}

constexpr Code kRoom = {
    .name = "balance/counterweight-room",
    .severity = Severity::kError,
    .summary = "The counterweights and their cover do not fit behind the blank",
    .why = "Weights that stand where the blank comes to rest keep it from going home.",
    .action = "Take fewer or heavier ones, or a thinner cover.",
};

// What the whole cavity does not hold is spoken of where it fits (fit/weights-do-not-fit).
bool CavityHolds(const View& view, const CounterweightStack& stack, const std::string& part_id, int count) {
  const Part* part = view.rod.FindPart(part_id);
  if (!part || !part->cavity || !part->cavity->length) return true;
  CounterweightRoom room = stack.room();
  room.length_m = part->cavity->length->value.meters();
  return count <= CounterweightStack(stack.unit(), room).fit();
}

void JudgeRoom(const View& view, std::vector<Finding>& findings) {
  const auto& plan = view.answers.counterweights;
  if (!plan || !plan->stack || plan->potted) return;
  const CounterweightStack& stack = *plan->stack;
  const int planned = static_cast<int>(std::min<std::uint32_t>(plan->planned.value_or(0), CounterweightStack::kMostUnits));
  if (planned <= stack.fit() || !CavityHolds(view, stack, plan->part, planned)) return;
  const double need_mm = (stack.EndOf(planned) - stack.room().start_m + stack.room().cover_m) * 1000;
  const double free_mm = stack.room().length_m * 1000;
  findings.push_back(MakeFinding(
      kRoom, plan->at,
      absl::StrFormat("%d counterweights and their cover take %.1f mm, and %.1f mm are free behind the blank: %d fit", planned,
                      need_mm, free_mm, stack.fit()),
      {{"planned", double(planned)}, {"fit", double(stack.fit())}, {"need_mm", need_mm}, {"free_mm", free_mm}}));
}

constexpr Code kRoomLimited = {
    .name = "balance/room-limited",
    .severity = Severity::kWarning,
    .summary = "All the counterweights that fit leave the rod tip-heavy",
    .why = "The cavity runs out before the rod balances.",
    .action = "Take heavier counterweights (tungsten is 1.7 times as dense as lead), or change the reel or the butt.",
};

void JudgeRoomLimited(const View& view, std::vector<Finding>& findings) {
  const CounterweightPlan* plan = PlanOf(view);
  if (!plan || !plan->planned || plan->potted || !plan->count || *plan->planned == 0) return;
  if (plan->status != CounterweightStatus::kRoomLimited && plan->status != CounterweightStatus::kNoRoom) return;
  // One more would go in front of them.
  const double arm = view.answers.aim->at_m.value() - plan->stack->EndOf(*plan->count);
  const double after = plan->moment_after_n_m->value(), plus_minus = plan->moment_after_n_m->plus_minus();
  if (after - plus_minus <= kStandardGravity * plan->unit_kg.value() * std::max(arm, 0.0)) return;
  findings.push_back(
      MakeFinding(kRoomLimited, plan->at,
                  absl::StrFormat("%d fit, and leave it tip-heavy by %.3f N m %s", *plan->count, after, AboutAim(view)),
                  {{"fit", double(*plan->count)}, {"moment_after_n_m", after}, {"plus_minus_n_m", plus_minus}},
                  Help(view, std::string(kRoomLimited.action))));
}

constexpr Code kPotting = {
    .name = "balance/potting-adds",
    .severity = Severity::kAdvice,
    .summary = "The potting's own mass takes the place of counterweights",
    .why = "A rod that is level with trial weights taped in is butt-heavy once they are potted.",
    .action = "Stop short of level by what the potting will add.",
};

void JudgePotting(const View& view, std::vector<Finding>& findings) {
  const CounterweightPlan* plan = PlanOf(view);
  if (!plan || !plan->planned || plan->potted || plan->potted_first || !plan->count) return;
  if (plan->count_if_potting_ignored.value_or(0) <= *plan->count || !plan->stop_short_at_tip_kg) return;
  const double short_g = *plan->stop_short_at_tip_kg * 1000;
  findings.push_back(MakeFinding(
      kPotting, plan->at,
      absl::StrFormat("%d trial weights would level the rod %s, and potting leaves room for %d",
                      *plan->count_if_potting_ignored, AboutAim(view), *plan->count),
      {{"if_potting_ignored", double(*plan->count_if_potting_ignored)},
       {"count", double(*plan->count)},
       {"stop_short_at_tip_g", short_g}},
      absl::StrFormat("Tape in %d and stop: the rod then lifts %.1f g at the tip-top's ring.", *plan->count, short_g)));
}

constexpr Code kLead = {
    .name = "balance/lead",
    .severity = Severity::kAdvice,
    .summary = "The counterweights are of lead",
    .why = "Lead is poisonous: it comes off on the hands, and filed or melted it is breathed in.",
    .action =
        "Do not melt, file or sand it, wash your hands, and pot it so that none is open. Read its data sheet, and look up the "
        "rules that hold where the rod is used.",
};

void JudgeLead(const View& view, std::vector<Finding>& findings) {
  for (const Part& part : view.rod.handle.parts) {
    if (!part.weights || part.weights->material != "lead" || part.weights->count == 0u) continue;
    findings.push_back(MakeFinding(kLead, part.weights->at.Field("material"),
                                   absl::StrFormat("the counterweights of '%s' are of lead", part.id)));
  }
}

}  // namespace

std::vector<Rule<View>> CounterweightRules() {
  return {{&kCount, JudgeCount},
          {&kButtHeavy, JudgeButtHeavy},
          {&kRoom, JudgeRoom},
          {&kRoomLimited, JudgeRoomLimited},
          {&kPotting, JudgePotting},
          {&kLead, JudgeLead}};
}

}  // namespace withy::balance
