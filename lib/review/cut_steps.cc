// Measure, cut, build, ream.
#include <vector>

#include "absl/strings/ascii.h"
#include "absl/strings/str_cat.h"
#include "bench_cuts.h"
#include "bench_text.h"
#include "cautions.h"
#include "trim_tables.h"
#include "withy/units/format.h"
#include "work_step.h"
#include "work_steps.h"

namespace withy {
namespace {

constexpr std::string_view kAnew = "How thick and how wide follows from the last cut: print this again after it.";

// "Try it on dry." of "try it on dry".
std::string AsSentence(std::string text) {
  if (text.empty()) return text;
  text[0] = absl::ascii_toupper(static_cast<unsigned char>(text[0]));
  if (text.back() != '.') text += '.';
  return text;
}

void AddCutsDone(const PlanInput& input, v1::WorkPlan& plan) {
  for (int i = 0; i < input.report.closed_size(); ++i) {
    const v1::ClosedFact& fact = input.report.closed(i);
    if (fact.kind() != "cut") continue;
    v1::WorkStep& step = AddStep(plan, "cut", absl::StrCat(fact.what(), ": ", ClosedText(fact, input.units)));
    step.set_done(true);
    step.add_what(fact.what());
    step.set_figures(absl::StrCat("closed[", i, "]"));
    step.set_closes("what is off is off");
  }
}

void AddCut(const PlanInput& input, const BenchCut& bench_cut, v1::WorkPlan& plan) {
  const v1::StagedCut& cut = bench_cut.cut;
  const LengthUnits units = input.units;
  v1::WorkStep& step =
      AddStep(plan, "cut",
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
  step.set_figures(absl::StrCat("fit.cut_plan.stages[", bench_cut.stage, "]"));
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

}  // namespace

void AddMeasuring(const PlanInput& input, v1::WorkPlan& plan) {
  const v1::CutPlan& cut_plan = input.report.fit().cut_plan();
  if (cut_plan.measure().empty()) return;
  v1::WorkStep& step = AddStep(plan, "measure", "Measure what the length rests on");
  Detail(step, AsSentence(cut_plan.measure()));
  step.set_figures("fit.cut_plan.measure");
}

void AddCuts(const PlanInput& input, v1::WorkPlan& plan) {
  AddCutsDone(input, plan);
  const std::vector<BenchCut> cuts =
      BenchCuts(input.report.fit().cut_plan(), input.units, CutLimitsOf(input.design));
  if (CutIsMissing(input.report.fit().cut_plan())) {
    AddStep(plan, "measure", "No cut is planned: " + NoCutBecause(input.report.fit().cut_plan(), input.design));
  }
  const std::size_t shown = ShownCuts(cuts.size());
  for (std::size_t i = 0; i < shown; ++i) AddCut(input, cuts[i], plan);
  if (shown == cuts.size()) return;
  v1::WorkStep& step = AddStep(plan, "cut", absl::StrCat("Cut ", MoreCuts(cuts.size() - shown)));
  step.set_closes("what is off is off");
  step.set_figures("fit.cut_plan.stages");
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
  v1::WorkStep& step = AddStep(plan, "build", "Build " + Counted(static_cast<int>(ids.size()), "arbor"));
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
    v1::WorkStep& step = AddStep(plan, "ream", "Ream " + table.part());
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

}  // namespace withy
