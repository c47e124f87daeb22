// Prepare, glue, cure, balance, pot.
#include <algorithm>
#include <cmath>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "bench_cuts.h"
#include "bench_text.h"
#include "cautions.h"
#include "withy/review/terminal_text.h"
#include "withy/units/format.h"
#include "work_step.h"
#include "work_steps.h"

namespace withy {
namespace {

constexpr double kShown_ml = 0.05;  // less is 0.0 as printed

std::string Minutes(double minutes) {
  if (minutes < 120) return FormatFixed(minutes, 0) + " min";
  return FormatFixed(minutes / 60, minutes < 600 ? 1 : 0) + " h";
}

bool PottedFirst(const v1::Design& design) {
  const auto& parts = design.handle().parts();
  return std::any_of(parts.begin(), parts.end(),
                     [](const v1::Part& part) { return part.weights().potted() == "first"; });
}

bool UsesLead(const v1::Design& design) {
  const auto& parts = design.handle().parts();
  return std::any_of(parts.begin(), parts.end(),
                     [](const v1::Part& part) { return part.weights().material() == "lead"; });
}

// Every other figure of the report is of the blank before the cuts to come.
std::string AfterCutsSentence(const v1::Report& report, const v1::MixedBatch& batch) {
  if (!CutsAreToCome(report.fit().cut_plan())) return "";
  const double moved_ml = batch.mix_after_cuts_ml() - batch.mix_ml();
  if (batch.has_mix_after_cuts_ml() && std::abs(moved_ml) < kShown_ml) return "";
  return absl::StrCat(
      "That is for the blank as it is cut now. After the cuts to come it is ",
      batch.has_mix_after_cuts_ml() ? absl::StrCat("about ", FormatFixed(batch.mix_after_cuts_ml(), 1), " ml")
                                    : "another amount",
      ": print this again then.");
}

std::string ProposedArborsSentence(const v1::BondingReport& bonding, const v1::MixedBatch& batch) {
  double ml = 0;
  for (const v1::GluedJoint& joint : bonding.joints()) {
    const auto& places = batch.joint_at();
    if (std::find(places.begin(), places.end(), joint.at()) != places.end()) ml += joint.proposed_arbors_ml();
  }
  if (ml < kShown_ml) return "";
  return absl::StrCat("The arbors that are proposed would take ", FormatFixed(ml, 1),
                      " ml of what the joints take; enter those that you build in the design.");
}

// One batch mixed and used, and the wait behind it.
void AddBatch(const PlanInput& input, int number, v1::WorkPlan& plan) {
  const v1::MixedBatch& batch = input.report.bonding().batches(number);
  const bool potting = batch.potting();
  v1::WorkStep& step = AddStep(plan, potting ? "pot" : "glue",
                               absl::StrCat(potting ? "Pot the counterweights in " : "Glue ",
                                            absl::StrJoin(batch.joints(), ", "), " with ", batch.adhesive()));
  for (const std::string& id : batch.joints()) step.add_what(id);
  for (const std::string& sentence : MixSentences(batch)) Detail(step, sentence);
  Detail(step, AfterCutsSentence(input.report, batch));
  Detail(step, ProposedArborsSentence(input.report.bonding(), batch));
  Detail(step, "Wipe what comes out while it is soft.");
  const std::string& host = input.report.fit().cut_plan().host();
  const bool length =
      !host.empty() && std::find(batch.joints().begin(), batch.joints().end(), host) != batch.joints().end();
  step.set_closes(potting ? "the balance" : length ? "the length of the rod, and what is glued" : "what is glued");
  step.set_figures(absl::StrCat("bonding.batches[", number, "]"));
  if (potting && UsesLead(input.design)) CautionOnce(plan, step, caution::kLead);
  CautionOnce(plan, step, caution::kEpoxy);
  CautionOnce(plan, step, caution::kExotherm);
  v1::WorkStep& cure = AddStep(plan, "cure", "Let it cure standing upright");
  cure.set_figures(step.figures());
  Detail(cure, batch.has_set_minutes() ? absl::StrCat("It may be let go of after ", Minutes(batch.set_minutes()),
                                                      " at ", FormatFixed(batch.at_celsius(), 0), " C.")
                                       : "The product's data sheet says when it may be let go of.");
  Detail(cure, "Turn it now and then until it stands, so that no side runs dry.");
}

bool InABatch(const v1::BondingReport& bonding, const v1::GluedJoint& joint) {
  const auto& batches = bonding.batches();
  return std::any_of(batches.begin(), batches.end(), [&](const v1::MixedBatch& batch) {
    return !batch.potting() &&
           std::find(batch.joints().begin(), batch.joints().end(), joint.what()) != batch.joints().end();
  });
}

// Why a joint is in no batch.
std::string NotMixed(const v1::GluedJoint& joint) {
  if (!joint.has_volume_ml()) return "how much cannot be told yet; 'withy show' says why.";
  if (!joint.has_pot_life_minutes() || joint.working_minutes() <= joint.pot_life_minutes()) return "nothing is mixed.";
  return absl::StrCat("do not mix it yet. The work takes ", Minutes(joint.working_minutes()), " and it can be worked for ",
                      Minutes(joint.pot_life_minutes()), ": take a slower adhesive, a cooler room or a faster way.");
}

// What is glued, or to be glued without a batch of its own.
void AddOtherJoints(const PlanInput& input, bool done, v1::WorkPlan& plan) {
  std::vector<std::string> ids, sentences;
  for (const v1::GluedJoint& joint : input.report.bonding().joints()) {
    const bool listed = std::find(ids.begin(), ids.end(), joint.what()) != ids.end();
    if (joint.done() != done || joint.potting() || listed) continue;
    if (!done && InABatch(input.report.bonding(), joint)) continue;
    ids.push_back(joint.what());
    sentences.push_back(absl::StrCat(joint.what(), " with ", joint.adhesive(), ": ", NotMixed(joint)));
  }
  if (ids.empty()) return;
  v1::WorkStep& step = AddStep(plan, "glue", (done ? "Glued: " : "Glue ") + absl::StrJoin(ids, ", "));
  for (const std::string& id : ids) step.add_what(id);
  step.set_done(done);
  step.set_closes("what is glued");
  step.set_figures("bonding.joints");
  if (done) return;
  for (const std::string& sentence : sentences) Detail(step, sentence);
}

}  // namespace

void AddPreparation(const PlanInput& input, v1::WorkPlan& plan) {
  const auto& joints = input.report.bonding().joints();
  if (std::all_of(joints.begin(), joints.end(),
                  [](const v1::GluedJoint& joint) { return joint.done() || joint.potting(); })) {
    return;
  }
  v1::WorkStep& step = AddStep(plan, "prepare", "Prepare what is glued: degrease, abrade, degrease");
  Detail(step,
         "Abrade the gloss where the joint will be and nowhere else, bores too, and wipe until the cloth stays clean.");
  Detail(step, "A film of water must stay whole on it and not bead (water-break test, ASTM F22); let it dry.");
  Detail(step, "Slide everything on dry once more, in order, and tape off what is to stay clean.");
  CautionOnce(plan, step, caution::kFibres);
  CautionOnce(plan, step, caution::kSolvent);
  CautionOnce(plan, step, caution::kDust);
}

// "Mix 6.0 ml: 3.0 ml of resin to 3.0 ml of hardener, ..."
std::vector<std::string> MixSentences(const v1::MixedBatch& batch) {
  std::vector<std::string> sentences;
  if (batch.has_mix_ml()) {
    std::string mix = absl::StrCat("Mix ", FormatFixed(batch.mix_ml(), 1), " ml");
    if (batch.has_resin_ml() && batch.has_hardener_ml()) {
      absl::StrAppend(&mix, ": ", FormatFixed(batch.resin_ml(), 1), " ml of resin to ",
                      FormatFixed(batch.hardener_ml(), 1), " ml of hardener");
    }
    if (batch.has_resin_g() && batch.has_hardener_g()) {
      absl::StrAppend(&mix, batch.has_resin_ml() ? ", or by weight " : ": ", FormatFixed(batch.resin_g(), 2), " g to ",
                      FormatFixed(batch.hardener_g(), 2), " g");
    }
    sentences.push_back(mix + (batch.smallest_decides() ? " (the least that can be measured well)." : "."));
  }
  if (batch.has_working_minutes() && batch.has_pot_life_minutes()) {
    sentences.push_back(absl::StrCat("The work takes ", Minutes(batch.working_minutes()), "; there are ",
                                     Minutes(batch.pot_life_minutes()), " at ", FormatFixed(batch.at_celsius(), 0),
                                     " C."));
  }
  return sentences;
}

void AddGlued(const PlanInput& input, v1::WorkPlan& plan) {
  AddOtherJoints(input, /*done=*/true, plan);
}

void AddGlueUps(const PlanInput& input, v1::WorkPlan& plan) {
  for (int i = 0; i < input.report.bonding().batches_size(); ++i) {
    if (!input.report.bonding().batches(i).potting() || PottedFirst(input.design))
      AddBatch(input, i, plan);
  }
  AddOtherJoints(input, /*done=*/false, plan);
}

void AddGuides(const PlanInput& input, v1::WorkPlan& plan) {
  if (input.report.guides().guides_size() == 0 && input.report.wraps().wraps_size() == 0) return;
  v1::WorkStep& step = AddStep(plan, "wrap", "Guides, wraps and finish");
  Detail(step, "All of it before the rod is balanced: what hangs at the tip counts most.");
  step.set_figures("wraps");
}

// "the holding point, 10 1/2\" (266.7 mm) from the butt end"
std::string KnifeEdgeAt(const PlanInput& input) {
  const v1::BalanceReport& balance = input.report.balance();
  if (!balance.has_aim_from_butt_mm()) return balance.aim();
  return absl::StrCat(balance.aim(), ", ", BenchText(balance.aim_from_butt_mm(), input.units), " from the butt end");
}

void AddBalancing(const PlanInput& input, v1::WorkPlan& plan) {
  const v1::CounterweightPlan& weights = input.report.balance().counterweights();
  const bool potted = IsClosed(input.report, "potted", weights.part());
  if (weights.count() > 0 && !PottedFirst(input.design) && !potted) {
    v1::WorkStep& step =
        AddStep(plan, "balance",
                absl::StrCat("Balance with ", Counted(static_cast<int>(weights.count()), "trial weight"), " taped in"));
    if (weights.has_stop_short_at_tip_g()) {
      Detail(step, absl::StrCat("Reel on, knife edge at ", KnifeEdgeAt(input), ": stop just tip-heavy, by ",
                                FormatFixed(weights.stop_short_at_tip_g(), 1),
                                " g hung at the tip-top's ring; the potting adds the rest."));
    }
    if (weights.has_count_planned() && weights.count_planned() != weights.count()) {
      Detail(step, absl::StrCat("The design has ", weights.count_planned(),
                                ": the potting further down is worked out for those."));
    }
    Detail(step, "Record it: withy balance FILE --weighed 'g' --balance 'where' --weights N --with-reel.");
    step.add_what(weights.part());
    step.set_figures("balance.counterweights");
  }
  for (int i = 0; i < input.report.bonding().batches_size(); ++i) {
    if (input.report.bonding().batches(i).potting() && !PottedFirst(input.design))
      AddBatch(input, i, plan);
  }
}

}  // namespace withy
