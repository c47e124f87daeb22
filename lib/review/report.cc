// The report: the answers of the concerns in their fixed units, with what was assumed and what could not be told.
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "answers.h"
#include "figures.h"
#include "report_parts.h"

namespace withy {
namespace {

void ReportGuides(const Rod& rod, const GuidesAnswers& answers, v1::GuidesReport& report) {
  for (const GuideAnswer& answer : answers.guides) {
    const Guide& guide = rod.guides[answer.guide];
    v1::PlacedGuide& to = *report.add_guides();
    to.set_id(guide.id);
    to.set_model(guide.model);
    Put(guide.from_tip, kMm, [&](double mm) { to.set_from_tip_mm(mm); });
    Put(guide.ring.from_butt_m, kMm, [&](double mm) { to.set_from_butt_mm(mm); });
    Put(guide.ring_height, kMm, [&](double mm) { to.set_ring_height_mm(mm); });
    Put(guide.ring_inner, kMm, [&](double mm) { to.set_ring_inner_mm(mm); });
    Put(answer.blank_diameter_m, kMm, [&](double mm) { to.set_blank_diameter_mm(mm); });
    Put(guide.mass, kGrams, [&](double g) { to.set_mass_g(g); });
  }
}

void ReportWraps(const Rod& rod, const WrapsAnswers& answers, v1::WrapsReport& report) {
  for (std::size_t i = 0; i < rod.wraps.size(); ++i) {
    const Wrap& wrap = rod.wraps[i];
    const WrapAnswer& answer = answers.wraps[i];
    v1::PlacedWrap& to = *report.add_wraps();
    to.set_id(wrap.id);
    to.set_on(wrap.on);
    to.set_thread(wrap.thread);
    Put(wrap.start.from_butt_m, kMm, [&](double mm) { to.set_start_mm(mm); });
    Put(wrap.length, kMm, [&](double mm) { to.set_length_mm(mm); });
    Put(answer.turns, kAsIs, [&](double turns) { to.set_turns(turns); });
    Put(answer.thread_length_m, kMm, [&](double mm) { to.set_thread_length_mm(mm); });
    if (answer.thread_kg && answer.finish_kg) {
      Put(std::optional<double>(*answer.thread_kg + *answer.finish_kg), kGrams, [&](double g) { to.set_mass_g(g); });
    }
  }
  for (const ThreadUse& use : answers.threads) {
    v1::ThreadTotal& to = *report.add_threads();
    to.set_id(use.thread);
    if (use.complete) Put(std::optional<double>(use.length_m), kMm, [&](double mm) { to.set_length_mm(mm); });
  }
}

// Some are met in several concerns.
class AssumptionList {
 public:
  explicit AssumptionList(v1::Report& report) : report_(report) {}
  void Add(const std::vector<Assumption>& assumptions) {
    for (const Assumption& assumption : assumptions) {
      const std::string at = assumption.at.ToString();
      if (!told_.emplace(at, assumption.used).second) continue;
      v1::Assumption& to = *report_.add_assumptions();
      to.set_at(at);
      to.set_used(assumption.used);
      to.set_why(assumption.why);
    }
  }

 private:
  v1::Report& report_;
  std::set<std::pair<std::string, std::string>> told_;  // place and value
};

void AddUnknowns(const std::vector<Unknown>& unknowns, v1::Report& report) {
  for (const Unknown& unknown : unknowns) {
    v1::Unknown& to = *report.add_unknown();
    to.set_figure(unknown.figure);
    to.set_measure(unknown.measure);
  }
}

}  // namespace

v1::Report MakeReport(const Rod& rod, const Answers& answers) {
  v1::Report report;
  report.set_format("withy-report/1");
  AssumptionList assumptions(report);
  for (const auto* list : {&rod.assumptions, &answers.sections.assumptions, &answers.fit.assumptions,
                           &answers.bonding.assumptions, &answers.wraps.assumptions, &answers.balance.assumptions,
                           &answers.bending.assumptions, &answers.line_load.assumptions}) {
    assumptions.Add(*list);
  }
  for (const auto* list : {&rod.unknowns, &answers.sections.unknowns, &answers.fit.unknowns, &answers.bonding.unknowns,
                           &answers.guides.unknowns, &answers.wraps.unknowns, &answers.balance.unknowns,
                           &answers.bending.unknowns, &answers.line_load.unknowns}) {
    AddUnknowns(*list, report);
  }
  ReportSections(rod, answers, *report.mutable_sections());
  ReportBending(answers.bending, *report.mutable_bending());
  ReportLineLoad(rod, answers.line_load, *report.mutable_line_load());
  ReportFit(rod, answers.fit, *report.mutable_fit());
  ReportBonding(answers.bonding, *report.mutable_bonding());
  ReportGuides(rod, answers.guides, *report.mutable_guides());
  ReportWraps(rod, answers.wraps, *report.mutable_wraps());
  ReportBalance(answers.balance, *report.mutable_balance());
  ReportClosed(rod, report);
  return report;
}

}  // namespace withy
