#include <utility>

#include "rules.h"

namespace withy {
namespace sections {

Finding AtRow(const View& view, const Code& code, const Section& section, const Station& row, std::string_view field,
              std::string message, std::vector<Number> numbers) {
  FieldPath at = section.taper.PathOf(row);
  if (!field.empty()) at = std::move(at).Field(field);
  Finding finding = MakeFinding(code, std::move(at), std::move(message), std::move(numbers));
  if (!row.at || !section.start_m || !section.from_m || !section.to_m || !view.rod.blank_butt_m) return finding;
  const double s_m = row.at->meters();
  if (s_m < section.from_m->value() || s_m > section.to_m->value()) return finding;
  const Uncertain from_butt = *view.rod.blank_butt_m + *section.start_m + Uncertain(s_m) - *section.from_m;
  finding.from_tip_mm = view.rod.FromTipMm(Along{from_butt, std::nullopt});
  return finding;
}

}  // namespace sections

namespace {

std::vector<Rule<sections::View>> Rules() {
  return Joined({sections::TaperRules(), sections::RowRules(), sections::WallRules(), sections::PieceRules(),
                 sections::MassRules(), sections::CutRules()});
}

}  // namespace

void CheckSections(const Rod& rod, const SectionsAnswers& answers, std::vector<Finding>& findings) {
  Judge(Rules(), sections::View{rod, answers}, findings);
}

std::vector<Code> SectionsCodes() {
  return CodesOf(Rules());
}

}  // namespace withy
