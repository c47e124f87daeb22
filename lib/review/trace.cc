#include "trace.h"

#include <cmath>
#include <string_view>
#include <utility>

#include "figures.h"
#include "item_names.h"
#include "withy/rod/rest_inputs.h"

namespace withy {
namespace {

class Tracer {
 public:
  // Where figures are from here on.
  Tracer& In(FieldPath path) {
    path_ = std::move(path);
    return *this;
  }
  Tracer& Add(std::string_view name, const std::optional<Uncertain>& value, double scale) {
    if (value) trace_.emplace(path_.Field(name).ToString(), *value * Uncertain(scale));
    return *this;
  }
  std::map<std::string, Uncertain> Take() { return std::move(trace_); }

 private:
  FieldPath path_;
  std::map<std::string, Uncertain> trace_;
};

FieldPath ItemOf(std::string_view concern, std::string_view list, std::size_t index) {
  return FieldPath().Field(concern).Field(list).Item("", static_cast<int>(index));
}

void TraceSections(const Rod& rod, const Answers& answers, Tracer& tracer) {
  for (std::size_t i = 0; i < answers.sections.sections.size(); ++i) {
    const SectionAnswer& answer = answers.sections.sections[i];
    const Section& section = rod.blank.sections[answer.section];
    tracer.In(ItemOf("sections", "sections", i)).Add("mass_g", answer.mass_kg, kGrams);
    if (!section.from_m) continue;
    tracer.Add("cut_butt_mm", section.from_m, kMm).Add("length_mm", *section.to_m - *section.from_m, kMm);
    if (answer.mass_kg && answer.moment_kg_m && answer.mass_kg->value() > 0) {
      tracer.Add("balance_from_butt_mm", *answer.moment_kg_m / *answer.mass_kg + *section.from_m, kMm);
    }
  }
  tracer.In(FieldPath().Field("sections"))
      .Add("packed_length_mm", answers.fit.packed_length_m, kMm)
      .Add("blank_length_mm", rod.blank.length_m, kMm)
      .Add("tip_diameter_mm", answers.sections.tip_diameter_m, kMm)
      .Add("butt_diameter_mm", answers.sections.butt_diameter_m, kMm);
}

void TraceFit(const Rod& rod, const FitAnswers& answers, Tracer& tracer) {
  for (std::size_t i = 0; i < rod.handle.parts.size(); ++i) {
    const Part& part = rod.handle.parts[i];
    tracer.In(ItemOf("fit", "parts", i)).Add("start_mm", part.start.from_butt_m, kMm);
  }
  tracer.In(FieldPath().Field("fit"))
      .Add("overall_length_mm", answers.overall_m, kMm)
      .Add("short_of_target_mm", answers.short_of_target_m, kMm)
      .Add("blank_butt_mm", rod.blank_butt_m, kMm)
      .Add("blank_tip_mm", rod.blank_tip_m, kMm)
      .Add("tip_ring_mm", rod.tip_ring_m, kMm)
      .Add("tip_tube_clearance_mm", answers.tip_tube_clearance_m, kMm);
}

void TraceGuidesAndWraps(const Rod& rod, const Answers& answers, Tracer& tracer) {
  for (std::size_t i = 0; i < answers.guides.guides.size(); ++i) {
    const Guide& guide = rod.guides[answers.guides.guides[i].guide];
    tracer.In(ItemOf("guides", "guides", i)).Add("from_butt_mm", guide.ring.from_butt_m, kMm);
  }
  for (std::size_t i = 0; i < rod.wraps.size(); ++i) {
    tracer.In(ItemOf("wraps", "wraps", i)).Add("start_mm", rod.wraps[i].start.from_butt_m, kMm);
  }
}

void TraceBonding(const BondingAnswers& answers, Tracer& tracer) {
  for (std::size_t i = 0; i < answers.joints.size(); ++i) {
    tracer.In(ItemOf("bonding", "joints", i)).Add("mass_g", answers.joints[i].mass_kg, kGrams);
  }
}

void TraceBalance(const BalanceAnswers& answers, Tracer& tracer) {
  for (std::size_t i = 0; i < answers.parts.size(); ++i) {
    const Contribution& part = answers.parts[i];
    tracer.In(ItemOf("balance", "parts", i)).Add("mass_g", part.mass_kg, kGrams).Add("center_mm", part.center_m, kMm);
  }
  tracer.In(FieldPath().Field("balance"))
      .Add("mass_g", answers.mass_kg, kGrams)
      .Add("balance_from_butt_mm", answers.balance_m, kMm)
      .Add("mass_with_reel_g", answers.mass_with_reel_kg, kGrams)
      .Add("balance_with_reel_mm", answers.balance_with_reel_m, kMm)
      .Add("moment_about_hold_n_m", answers.moment_about_hold_n_m, kAsIs)
      .Add("remainder_g", answers.remainder_kg, kGrams);
  if (!answers.counterweights) return;
  const CounterweightPlan& plan = *answers.counterweights;
  tracer.In(FieldPath().Field("balance").Field("counterweights"))
      .Add("unit_mass_g", plan.unit_kg, kGrams)
      .Add("moment_without_n_m", plan.moment_without_n_m, kAsIs)
      .Add("moment_before_potting_n_m", plan.moment_before_potting_n_m, kAsIs)
      .Add("moment_after_n_m", plan.moment_after_n_m, kAsIs);
}

void TraceBending(const std::optional<BendingOf>& of, std::string_view which, Tracer& tracer) {
  constexpr double kMilli = 1000;
  if (!of) return;
  const FieldPath at = FieldPath().Field("bending").Field(which);
  for (std::size_t i = 0; i < of->cases.size(); ++i) {
    const BentRod& bent = of->cases[i];
    tracer.In(at.Field("cases").Item("", static_cast<int>(i)))
        .Add("load_n", bent.load_n, kAsIs)
        .Add("tip_drop_mm", bent.tip_drop_m, kMm)
        .Add("clamp_moment_n_m", bent.clamp_moment_n_m, kAsIs)
        .Add("peak_strain_millistrain", bent.peak_strain, kMilli);
  }
  if (of->power) tracer.In(at.Field("power")).Add("load_g", of->power->load_kg, kGrams);
  tracer.In(at).Add("frequency_hz", of->first_frequency_hz, kAsIs);
}

// Of the figure: less is what is left when uncertainties cancel.
constexpr double kRounding = 1e-9;

// The cut in question is the one that the law is asked about.
constexpr char kCutForTarget[] = "fit.cut_plan.cut_for_target_mm";

}  // namespace

Trace::Trace(const Rod& rod, const Answers& answers) : rod_(rod), answers_(answers) {
  Tracer tracer;
  TraceSections(rod, answers, tracer);
  TraceFit(rod, answers.fit, tracer);
  TraceGuidesAndWraps(rod, answers, tracer);
  TraceBonding(answers.bonding, tracer);
  TraceBalance(answers.balance, tracer);
  TraceBending(answers.bending.bare, "bare", tracer);
  TraceBending(answers.bending.finished, "finished", tracer);
  figures_ = tracer.Take();
}

std::optional<double> Trace::PlusMinus(const FieldPath& figure) const {
  const auto found = figures_.find(ByNumber(figure));
  if (found == figures_.end()) return std::nullopt;
  if (!(found->second.plus_minus() > kRounding * std::abs(found->second.value()))) return std::nullopt;
  return found->second.plus_minus();
}

// By the law the place of the blank is one input; here it is taken apart.
void Trace::Spread(double share, double cut_m, std::map<std::string, double>& shares) const {
  for (const RestInput& input : RestInputsOf(rod_, cut_m)) shares[input.name] += share * input.of_variance;
}

std::map<std::string, double> Trace::SharesOf(const FieldPath& figure) const {
  std::map<std::string, double> shares;
  const std::string key = ByNumber(figure);
  const auto& plan = answers_.fit.cut;
  if (key == kCutForTarget && plan && plan->cut_for_target_m) Spread(1, *plan->cut_for_target_m, shares);
  const auto found = figures_.find(key);
  if (found == figures_.end()) return shares;
  const std::string by_law = rod_.rest_basis == RestBasis::kLaw ? RestInputName(rod_) : "";
  for (const VarianceShare& share : found->second.Shares()) {
    const std::string& name = answers_.inputs.at(share.input).name;
    if (!by_law.empty() && name == by_law && plan) {
      Spread(share.of_variance, plan->planned_m, shares);
    } else {
      shares[name] += share.of_variance;
    }
  }
  return shares;
}

}  // namespace withy
