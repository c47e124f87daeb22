#include "withy/review/work_plan.h"

#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "bench_cuts.h"
#include "cautions.h"
#include "figure_text.h"
#include "text_parts.h"
#include "text_table.h"
#include "work_steps.h"

namespace withy {
namespace {

using Align = TextTable::Align;

std::string StepText(int number, const v1::WorkStep& step, const TextStyle& style) {
  const std::string margin(5, ' ');
  std::string text;
  const auto lines = [&](std::string_view first, std::string_view sentence, Ink ink) {
    std::string_view before = first;
    for (const std::string& line : Wrapped(sentence, style.width - static_cast<int>(margin.size()))) {
      absl::StrAppend(&text, std::string(before), Painted(line, ink, style), "\n");
      before = margin;
    }
  };
  lines(PaddedLeft(absl::StrCat(number, ". "), static_cast<int>(margin.size())),
        (step.done() ? "[done] " : "") + step.title(), step.done() ? Ink::kGood : Ink::kStrong);
  if (step.done()) return text;
  for (const std::string& detail : step.details()) lines(margin, detail, Ink::kPlain);
  for (const std::string& caution : step.cautions()) lines(margin, "Mind: " + caution, Ink::kWarning);
  if (!step.closes().empty()) lines(margin, "Closes: " + step.closes() + ".", Ink::kFaint);
  return text;
}

std::string MixTable(const v1::BondingReport& bonding, const TextStyle& style) {
  TextTable table({{"adhesive", Align::kLeft},
                   {"for", Align::kLeft},
                   {"need ml"},
                   {"mix ml"},
                   {"resin"},
                   {"hardener"},
                   {"resin g"},
                   {"hardener g"},
                   {"mix after cuts"}});
  for (const v1::MixedBatch& batch : bonding.batches()) {
    const std::string first = (batch.potting() ? "pot " : "") + (batch.joints_size() > 0 ? batch.joints(0) : "");
    table.AddRow({batch.adhesive(),
                  first + (batch.joints_size() > 1 ? absl::StrCat(" +", batch.joints_size() - 1) : ""),
                  FigureText(WITHY_FIGURE(batch, need_ml), 1), FigureText(WITHY_FIGURE(batch, mix_ml), 1),
                  FigureText(WITHY_FIGURE(batch, resin_ml), 1), FigureText(WITHY_FIGURE(batch, hardener_ml), 1),
                  FigureText(WITHY_FIGURE(batch, resin_g), 2), FigureText(WITHY_FIGURE(batch, hardener_g), 2),
                  FigureText(WITHY_FIGURE(batch, mix_after_cuts_ml), 1)});
  }
  return table.ToText(style);
}

}  // namespace

v1::WorkPlan PlanWork(const v1::Design& design, const v1::Report& report, LengthUnits units) {
  const PlanInput input = {design, report, units};
  v1::WorkPlan plan;
  plan.set_format("withy-plan/1");
  plan.set_design_digest(report.design_digest());
  for (const auto add :
       {AddMeasuring, AddCuts, AddArbors, AddReaming, AddGlued, AddPreparation, AddGlueUps, AddGuides, AddBalancing}) {
    add(input, plan);
  }
  return plan;
}

std::string PlanText(std::string_view file, const v1::Design& design, const v1::Report& report,
                     const ShowOptions& options) {
  const TextStyle& style = options.style;
  const v1::WorkPlan plan = PlanWork(design, report, options.units);
  std::string steps;
  int number = 0;
  for (const v1::WorkStep& step : plan.steps()) steps += StepText(++number, step, style);
  std::string text = TitleText(file, design, report, style);
  text += SectionText("What to do, in order", steps, style);
  const std::string when = CutsAreToCome(report.fit().cut_plan()) ? ", for the blank before the cuts to come" : "";
  text += SectionText("Adhesive to mix" + when, MixTable(report.bonding(), style), style);
  return text + SectionText("Mind", BulletText(caution::kRating, style), style);
}

}  // namespace withy
