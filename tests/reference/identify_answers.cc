#include "reference/identify_answers.h"

#include "reference/fields.h"
#include "withy/bending/identify.h"
#include "withy/document/document.h"
#include "withy/rod/resolve.h"

namespace withy::reference {
namespace {

Identification IdentificationOf(const testing::BenchBlank& blank) {
  const ReadResult read = ReadDesign("case", blank.Text());
  if (!read.document) return {};
  const Rod rod = Resolve(*read.document);
  Inputs inputs = rod.inputs;
  return Identify(rod, ComputeSections(rod, inputs));
}

std::optional<double> ValueOf(const Identification& found, UnknownKind kind) {
  for (const IdentifiedFigure& figure : found.figures) {
    if (figure.kind == kind) return figure.value;
  }
  return std::nullopt;
}

}  // namespace

Value AnswerIdentification(const Value& entry, Allocator& allocator) {
  const Value& truth = entry["expected"];
  testing::BenchBlank known_density = BenchBlankOf(entry, "measurements_exact"), known_wall = known_density;
  known_density.density_kg_m3 = Get(truth, "rho_kg_m3");
  known_wall.wall_butt_m = Get(truth, "wall_butt_m");
  const Identification by_density = IdentificationOf(known_density), by_wall = IdentificationOf(known_wall);
  Fields answer(allocator);
  answer.Put("E_Pa", ValueOf(by_density, UnknownKind::kModulus));
  answer.Put("rho_kg_m3", ValueOf(by_wall, UnknownKind::kDensity));
  answer.Put("wall_butt_m", ValueOf(by_density, UnknownKind::kWallAtButt));
  answer.Put("wall_tip_m", ValueOf(by_density, UnknownKind::kWallAtTip));
  return answer.Take();
}

}  // namespace withy::reference
