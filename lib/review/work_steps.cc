#include "work_steps.h"

#include <algorithm>
#include <cmath>

#include "absl/strings/ascii.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "bench_cuts.h"
#include "bench_text.h"
#include "cautions.h"
#include "figure_text.h"
#include "trim_tables.h"
#include "withy/review/trim_text.h"
#include "withy/units/format.h"
#include "withy/units/quantity.h"

namespace withy {
namespace {

constexpr std::string_view kAnew = "How thick and how wide follows from the last cut: print this again after it.";

v1::WorkStep& Add(v1::WorkPlan& plan, std::string_view kind, const std::string& title) {
  v1::WorkStep& step = *plan.add_steps();
  step.set_kind(std::string(kind));
  step.set_title(title);
  return step;
}

void Detail(v1::WorkStep& step, const std::string& sentence) {
  if (!sentence.empty()) step.add_details(sentence);
}

// "Try it on dry." of "try it on dry".
std::string AsSentence(std::string text) {
  if (text.empty()) return text;
  text[0] = absl::ascii_toupper(static_cast<unsigned char>(text[0]));
  if (text.back() != '.') text += '.';
  return text;
}

void Caution(v1::WorkStep& step, std::string_view sentence) {
  step.add_cautions(std::string(sentence));
}

bool IsClosed(const v1::Report& report, std::string_view kind, const std::string& what) {
  return std::any_of(report.closed().begin(), report.closed().end(),
                     [&](const v1::ClosedFact& fact) { return fact.kind() == kind && fact.what() == what; });
}

// A step has a caution only where no earlier one has it: told once, at the first time it matters.
bool IsTold(const v1::WorkPlan& plan, std::string_view sentence) {
  for (const v1::WorkStep& step : plan.steps()) {
    for (const std::string& told : step.cautions()) {
      if (told == sentence) return true;
    }
  }
  return false;
}

void CautionOnce(v1::WorkPlan& plan, v1::WorkStep& step, std::string_view sentence) {
  if (!IsTold(plan, sentence)) Caution(step, sentence);
}

void AddCutsDone(const PlanInput& input, v1::WorkPlan& plan) {
  for (int i = 0; i < input.report.closed_size(); ++i) {
    const v1::ClosedFact& fact = input.report.closed(i);
    if (fact.kind() != "cut") continue;
    v1::WorkStep& step = Add(plan, "cut", absl::StrCat(fact.what(), ": ", ClosedText(fact, input.units)));
    step.set_done(true);
    step.add_what(fact.what());
    step.set_figures(absl::StrCat("closed[", i, "]"));
    step.set_closes("what is off is off");
  }
}

void AddCut(const PlanInput& input, const v1::StagedCut& cut, int number, v1::WorkPlan& plan) {
  const LengthUnits units = input.units;
  v1::WorkStep& step =
      Add(plan, "cut",
          absl::StrCat("Take ", BenchText(cut.take_mm(), units), " off the butt",
                       cut.has_leave_mm() ? ", leave " + BenchText(cut.leave_mm(), units) : "", ", dry fit"));
  if (cut.has_depth_mark_mm()) {
    Detail(step,
           absl::StrCat("Tape the depth mark at ", BenchText(cut.depth_mark_mm(), units), " from the new butt face."));
  }
  if (cut.has_expect_from_mm() && cut.has_expect_to_mm()) {
    Detail(step, absl::StrCat("Expect ", BenchRange(cut.expect_from_mm(), cut.expect_to_mm(), units),
                              " from the handle's own butt end to the blank's tip end."));
  }
  Detail(step, absl::StrCat("Record both: withy trim FILE --cut '", TypedLength(cut.take_mm(), units),
                            "' --overall 'what you read'; the cuts that follow are then planned anew."));
  step.set_closes("what is off is off");
  step.set_figures(absl::StrCat("fit.cut_plan.stages[", number, "]"));
  if (input.report.fit().cut_plan().cut_done_mm() == 0) CautionOnce(plan, step, caution::kWarranty);
  CautionOnce(plan, step, caution::kSaw);
  CautionOnce(plan, step, caution::kDust);
}

std::string ArborSentence(const v1::FittedArbor& arbor, const std::string& host, LengthUnits units) {
  std::string text = absl::StrCat(arbor.id().empty() ? "one more" : arbor.id(), " in ", host);
  if (arbor.has_start_mm()) absl::StrAppend(&text, " at ", BenchText(arbor.start_mm(), units), " from the butt end");
  if (arbor.has_outer_mm()) absl::StrAppend(&text, ", to ", FormatFixed(arbor.outer_mm(), 2), " mm");
  if (arbor.has_turns()) absl::StrAppend(&text, ": ", Counted(static_cast<int>(arbor.turns()), "turn"), " of tape");
  if (arbor.has_tape_length_mm()) absl::StrAppend(&text, ", ", FormatFixed(arbor.tape_length_mm(), 0), " mm");
  return text + ".";
}

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

// One batch mixed and used, and the wait behind it.
void AddBatch(const PlanInput& input, int number, v1::WorkPlan& plan) {
  const v1::MixedBatch& batch = input.report.bonding().batches(number);
  const bool potting = IsPotting(input.report, batch);
  v1::WorkStep& step = Add(plan, potting ? "pot" : "glue",
                           absl::StrCat(potting ? "Pot the counterweights in " : "Glue ",
                                        absl::StrJoin(batch.joints(), ", "), " with ", batch.adhesive()));
  for (const std::string& id : batch.joints()) step.add_what(id);
  for (const std::string& sentence : MixSentences(batch)) Detail(step, sentence);
  Detail(step, "Wipe what comes out while it is soft.");
  const std::string& host = input.report.fit().cut_plan().host();
  const bool length =
      !host.empty() && std::find(batch.joints().begin(), batch.joints().end(), host) != batch.joints().end();
  step.set_closes(potting ? "the balance" : length ? "the length of the rod, and what is glued" : "what is glued");
  step.set_figures(absl::StrCat("bonding.batches[", number, "]"));
  if (potting && UsesLead(input.design)) Caution(step, caution::kLead);
  CautionOnce(plan, step, caution::kEpoxy);
  CautionOnce(plan, step, caution::kExotherm);
  v1::WorkStep& cure = Add(plan, "cure", "Let it cure standing upright");
  cure.set_figures(step.figures());
  Detail(cure, batch.has_set_minutes() ? absl::StrCat("It may be let go of after ", Minutes(batch.set_minutes()),
                                                      " at ", FormatFixed(batch.at_celsius(), 0), " C.")
                                       : "The product's data sheet says when it may be let go of.");
  Detail(cure, "Turn it now and then until it stands, so that no side runs dry.");
}

bool InABatch(const v1::BondingReport& bonding, const v1::GluedJoint& joint) {
  const auto& batches = bonding.batches();
  return std::any_of(batches.begin(), batches.end(), [&](const v1::MixedBatch& batch) {
    return std::find(batch.joints().begin(), batch.joints().end(), joint.what()) != batch.joints().end();
  });
}

// What is glued, or to be glued without a batch of its own.
void AddOtherJoints(const PlanInput& input, bool done, v1::WorkPlan& plan) {
  std::vector<std::string> ids, sentences;
  for (const v1::GluedJoint& joint : input.report.bonding().joints()) {
    const bool listed = std::find(ids.begin(), ids.end(), joint.what()) != ids.end();
    if (joint.done() != done || joint.potting() || listed) continue;
    if (!done && InABatch(input.report.bonding(), joint)) continue;
    ids.push_back(joint.what());
    sentences.push_back(absl::StrCat(
        joint.what(), " with ", joint.adhesive(), ": ",
        joint.has_volume_ml() ? "nothing is mixed." : "how much cannot be told yet; 'withy show' says why."));
  }
  if (ids.empty()) return;
  v1::WorkStep& step = Add(plan, "glue", (done ? "Glued: " : "Glue ") + absl::StrJoin(ids, ", "));
  for (const std::string& id : ids) step.add_what(id);
  step.set_done(done);
  step.set_closes("what is glued");
  step.set_figures("bonding.joints");
  if (done) return;
  for (const std::string& sentence : sentences) Detail(step, sentence);
}

}  // namespace

void AddMeasuring(const PlanInput& input, v1::WorkPlan& plan) {
  const v1::CutPlan& cut_plan = input.report.fit().cut_plan();
  if (cut_plan.measure().empty()) return;
  v1::WorkStep& step = Add(plan, "measure", "Measure what the length rests on");
  Detail(step, AsSentence(cut_plan.measure()));
  step.set_figures("fit.cut_plan.measure");
}

void AddCuts(const PlanInput& input, v1::WorkPlan& plan) {
  AddCutsDone(input, plan);
  int number = 0;
  for (const v1::StagedCut& cut : BenchCuts(input.report.fit().cut_plan(), input.units, LargestCutMm(input.design))) {
    AddCut(input, cut, number++, plan);
  }
}

void AddArbors(const PlanInput& input, v1::WorkPlan& plan) {
  std::vector<std::string> sentences, ids;
  bool done = true;
  for (const v1::FittedPart& part : input.report.fit().parts()) {
    for (const v1::FittedArbor& arbor : part.arbors()) {
      sentences.push_back(ArborSentence(arbor, part.id(), input.units));
      ids.push_back(arbor.id());
      done = done && (IsClosed(input.report, "glued", arbor.id()) || IsClosed(input.report, "glued", part.id()));
    }
  }
  if (sentences.empty()) return;
  if (CutsAreToCome(input.report.fit().cut_plan())) sentences = {std::string(kAnew)};
  v1::WorkStep& step = Add(plan, "build", "Build " + Counted(static_cast<int>(ids.size()), "arbor"));
  for (const std::string& sentence : sentences) Detail(step, sentence);
  for (const std::string& id : ids) step.add_what(id);
  step.set_done(done);
  step.set_figures("fit.parts");
}

void AddReaming(const PlanInput& input, v1::WorkPlan& plan) {
  for (int i = 0; i < input.report.fit().reaming_size(); ++i) {
    const v1::ReamTable& table = input.report.fit().reaming(i);
    if (table.rows_size() == 0) continue;
    const v1::ReamRow& first = table.rows(0);
    const v1::ReamRow& last = table.rows(table.rows_size() - 1);
    v1::WorkStep& step = Add(plan, "ream", "Ream " + table.part());
    Detail(step, CutsAreToCome(input.report.fit().cut_plan())
                     ? std::string(kAnew)
                     : absl::StrCat("From ", FormatFixed(first.ream_mm(), 2), " mm at its butt end to ",
                                    FormatFixed(last.ream_mm(), 2), " mm at its front; 'withy trim' has every inch."));
    step.add_what(table.part());
    step.set_closes("a bore does not get narrower");
    step.set_done(IsClosed(input.report, "reamed", table.part()));
    step.set_figures(absl::StrCat("fit.reaming[", i, "]"));
    if (!step.done()) CautionOnce(plan, step, caution::kDust);
  }
}

void AddPreparation(const PlanInput& input, v1::WorkPlan& plan) {
  const auto& joints = input.report.bonding().joints();
  if (std::all_of(joints.begin(), joints.end(),
                  [](const v1::GluedJoint& joint) { return joint.done() || joint.potting(); })) {
    return;
  }
  v1::WorkStep& step = Add(plan, "prepare", "Prepare what is glued: degrease, abrade, degrease");
  Detail(step,
         "Abrade the gloss where the joint will be and nowhere else, bores too, and wipe until the cloth stays clean.");
  Detail(step, "A film of water must stay whole on it and not bead (water-break test, ASTM F22); let it dry.");
  Detail(step, "Slide everything on dry once more, in order, and tape off what is to stay clean.");
  Caution(step, caution::kFibres);
  Caution(step, caution::kSolvent);
  CautionOnce(plan, step, caution::kDust);
}

bool IsPotting(const v1::Report& report, const v1::MixedBatch& batch) {
  if (batch.joints_size() == 0) return false;
  return std::all_of(batch.joints().begin(), batch.joints().end(), [&](const std::string& id) {
    const auto& joints = report.bonding().joints();
    return std::any_of(joints.begin(), joints.end(),
                       [&](const v1::GluedJoint& joint) { return joint.potting() && joint.what() == id; });
  });
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
    if (!IsPotting(input.report, input.report.bonding().batches(i)) || PottedFirst(input.design))
      AddBatch(input, i, plan);
  }
  AddOtherJoints(input, /*done=*/false, plan);
}

void AddGuides(const PlanInput& input, v1::WorkPlan& plan) {
  if (input.report.guides().guides_size() == 0 && input.report.wraps().wraps_size() == 0) return;
  v1::WorkStep& step = Add(plan, "wrap", "Guides, wraps and finish");
  Detail(step, "All of it before the rod is balanced: what hangs at the tip counts most.");
  step.set_figures("wraps");
}

void AddBalancing(const PlanInput& input, v1::WorkPlan& plan) {
  const v1::CounterweightPlan& weights = input.report.balance().counterweights();
  const bool potted = IsClosed(input.report, "potted", weights.part());
  if (weights.count() > 0 && !PottedFirst(input.design) && !potted) {
    v1::WorkStep& step =
        Add(plan, "balance",
            absl::StrCat("Balance with ", Counted(static_cast<int>(weights.count()), "trial weight"), " taped in"));
    if (weights.has_stop_short_at_tip_g()) {
      Detail(step, absl::StrCat("Reel on, knife edge at the hold: stop just tip-heavy, by ",
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
    if (IsPotting(input.report, input.report.bonding().batches(i)) && !PottedFirst(input.design))
      AddBatch(input, i, plan);
  }
}

}  // namespace withy
