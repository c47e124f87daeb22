// A rule: a code and the function that judges by it, declared side by side and listed once.
//
//   constexpr Code kRingInner = {.name = "guides/ring-inner", ...};
//   void JudgeRingInner(const GuidesView& view, std::vector<Finding>& findings) { ... }
//
//   std::vector<Rule<GuidesView>> RingRules() { return {{&kRingInner, JudgeRingInner}, ...}; }
//
// The catalogue and the run are both made from that list, so that neither can forget a rule.
#ifndef WITHY_FINDINGS_RULE_H_
#define WITHY_FINDINGS_RULE_H_

#include <initializer_list>
#include <vector>

#include "withy/findings/finding.h"

namespace withy {

// `View` holds what the rules of one concern look at. A rule appends findings of its own code only.
template <typename View>
struct Rule {
  const Code* code = nullptr;
  void (*judge)(const View& view, std::vector<Finding>& findings) = nullptr;
};

// Several groups of rules as one list, in that order.
template <typename View>
std::vector<Rule<View>> Joined(std::initializer_list<std::vector<Rule<View>>> groups) {
  std::vector<Rule<View>> rules;
  for (const std::vector<Rule<View>>& group : groups) rules.insert(rules.end(), group.begin(), group.end());
  return rules;
}

// Their codes, in order.
template <typename View>
std::vector<Code> CodesOf(const std::vector<Rule<View>>& rules) {
  std::vector<Code> codes;
  codes.reserve(rules.size());
  for (const Rule<View>& rule : rules) codes.push_back(*rule.code);
  return codes;
}

// Runs them in order.
template <typename View>
void Judge(const std::vector<Rule<View>>& rules, const View& view, std::vector<Finding>& findings) {
  for (const Rule<View>& rule : rules) rule.judge(view, findings);
}

}  // namespace withy

#endif  // WITHY_FINDINGS_RULE_H_
