// Weighed totals of several sections.
#include <unordered_map>
#include <unordered_set>

#include "draft.h"
#include "withy/sections/material.h"
#include "withy/sections/total.h"

namespace withy {
namespace {

// Of what was on the scales over what is left now; 1 without diameters, where nothing was cut.
double ThenOverNow(const Draft& draft, const Weighing::Off& off) {
  if (!draft.distribution) return 1;
  const double length = draft.section->length->value.meters();
  const double then = draft.distribution->Properties(off.butt_m, length - off.tip_m).mass_kg;
  const double now = draft.distribution->Properties(draft.from, draft.to).mass_kg;
  return now > 0 ? then / now : 1;
}

// The drafts of a weighing in its order; empty where it speaks of anything but sections of the rod whose masses can be
// told, or names one twice.
std::vector<Draft*> DraftsOf(const Weighing& weighing, const std::unordered_map<std::string, Draft*>& by_id) {
  std::vector<Draft*> drafts;
  std::unordered_set<std::string> seen;
  if (weighing.with_reel) return {};
  for (const std::string& id : weighing.what) {
    const auto found = by_id.find(id);
    if (found == by_id.end() || !found->second->mass_kg || !seen.insert(id).second) return {};
    drafts.push_back(found->second);
  }
  return drafts;
}

void Apply(const Weighing& weighing, const std::vector<Draft*>& drafts, Inputs& inputs, SectionsAnswers& answers,
           bool& unstated) {
  std::vector<Weighed> together;
  for (std::size_t i = 0; i < drafts.size(); ++i) {
    together.push_back({*drafts[i]->mass_kg * Uncertain(ThenOverNow(*drafts[i], weighing.off[i])), drafts[i]->measured});
  }
  const Uncertain total = inputs.Add(weighing.mass.value.kilograms(), MassPlusMinus(weighing.mass, unstated),
                                    weighing.mass.at.ToString());
  const TotalFit fit = FitTotal(together, total);
  if (!fit.gave_way) {
    answers.remainder_kg = fit.misfit.value();
    return;
  }
  for (std::size_t i = 0; i < drafts.size(); ++i) {
    Draft& draft = *drafts[i];
    if (draft.measured) continue;
    draft.mass_kg = *draft.mass_kg * fit.ratios[i];
    if (draft.moment_kg_m) draft.moment_kg_m = *draft.moment_kg_m * fit.ratios[i];
    draft.fixed_by_total = true;
  }
}

}  // namespace

void ApplyTotals(const Rod& rod, std::vector<Draft>& drafts, Inputs& inputs, SectionsAnswers& answers, bool& unstated) {
  std::unordered_map<std::string, Draft*> by_id;
  for (Draft& draft : drafts) by_id.emplace(draft.section->id, &draft);
  std::unordered_set<const Draft*> used;
  // The latest first; a section that a later weighing fixed is not moved again.
  for (auto weighing = rod.weighings.rbegin(); weighing != rod.weighings.rend(); ++weighing) {
    const std::vector<Draft*> of = DraftsOf(*weighing, by_id);
    bool free = !of.empty();
    for (const Draft* draft : of) free = free && !used.contains(draft);
    if (!free) continue;
    used.insert(of.begin(), of.end());
    Apply(*weighing, of, inputs, answers, unstated);
  }
}

}  // namespace withy
