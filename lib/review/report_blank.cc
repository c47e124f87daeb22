// Sections in the report.
#include "figures.h"
#include "report_parts.h"

namespace withy {
namespace {

void FillStations(const SectionAnswer& answer, v1::SectionReport& to) {
  const auto add = [&](double at, double outer, double inner) {
    to.add_at_mm(at * kMm);
    to.add_outer_mm(outer * kMm);
    if (answer.wall_known) to.add_wall_mm((outer - inner) / 2 * kMm);
  };
  for (const Frustum& f : answer.frusta) add(f.s0, f.outer0, f.inner0);
  if (!answer.frusta.empty()) add(answer.frusta.back().s1, answer.frusta.back().outer1, answer.frusta.back().inner1);
  for (const double stiffness : answer.ei_n_m2) to.add_ei_n_m2(stiffness);
}

void ReportSection(const Section& section, const SectionAnswer& answer, v1::SectionReport& to) {
  to.set_id(section.id);
  to.set_cut_butt_mm(section.cut_butt.amount.mm());
  to.set_cut_tip_mm(section.cut_tip.amount.mm());
  if (section.from_m) to.set_length_mm((*section.to_m - *section.from_m).value() * kMm);
  PutWithPlusMinus(answer.mass_kg, kGrams, [&](double g) { to.set_mass_g(g); },
                   [&](double g) { to.set_mass_plus_minus_g(g); });
  if (answer.mass_kg && answer.moment_kg_m && answer.mass_kg->value() > 0) {
    // As supplied, like the stations.
    const std::optional<Uncertain> balance = *answer.moment_kg_m / *answer.mass_kg + *section.from_m;
    PutWithPlusMinus(balance, kMm, [&](double mm) { to.set_balance_from_butt_mm(mm); },
                     [&](double mm) { to.set_balance_from_butt_plus_minus_mm(mm); });
  }
  if (answer.mass_kg) to.set_mass_from(SourceWord(answer.mass_from));
  FillStations(answer, to);
  if (answer.properties && answer.properties->mass_kg > 0) {
    Put(std::optional<double>(answer.properties->InertiaAtBalance()), kAsIs,
        [&](double value) { to.set_inertia_at_balance_kg_m2(value); });
  }
}

}  // namespace

const char* SourceWord(Source source) {
  switch (source) {
    case Source::kMeasured: return "measured";
    case Source::kCatalogue: return "catalogue";
    case Source::kEstimated: return "estimated";
    case Source::kComputed:
    case Source::kAssumed: return "computed";
    case Source::kPlan: break;
  }
  return "plan";
}

void ReportSections(const Rod& rod, const Answers& answers, v1::SectionsReport& report) {
  for (const SectionAnswer& answer : answers.sections.sections) {
    ReportSection(rod.blank.sections[answer.section], answer, *report.add_sections());
  }
  if (answers.fit.pieces) report.set_pieces(*answers.fit.pieces);
  PutWithPlusMinus(answers.fit.packed_length_m, kMm, [&](double mm) { report.set_packed_length_mm(mm); },
                   [&](double mm) { report.set_packed_length_plus_minus_mm(mm); });
  PutWithPlusMinus(rod.blank.length_m, kMm, [&](double mm) { report.set_blank_length_mm(mm); },
                   [&](double mm) { report.set_blank_length_plus_minus_mm(mm); });
  PutWithPlusMinus(answers.sections.tip_diameter_m, kMm, [&](double mm) { report.set_tip_diameter_mm(mm); },
                   [&](double mm) { report.set_tip_diameter_plus_minus_mm(mm); });
  PutWithPlusMinus(answers.sections.butt_diameter_m, kMm, [&](double mm) { report.set_butt_diameter_mm(mm); },
                   [&](double mm) { report.set_butt_diameter_plus_minus_mm(mm); });
}

}  // namespace withy
