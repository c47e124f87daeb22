#include "withy/review/calibration.h"

#include <cmath>

#include "withy/sections/sections.h"

namespace withy {
namespace {

// What a figure or reading is called, and the unit at the bench: SI times `factor`.
struct Naming {
  const char* name;
  const char* unit;
  double factor;
};

Naming NamingOf(UnknownKind kind) {
  switch (kind) {
    case UnknownKind::kModulus:
      return {"modulus", "GPa", 1e-9};
    case UnknownKind::kDensity:
      return {"density", "g/cm3", 1e-3};
    case UnknownKind::kWallAtButt:
      return {"wall at butt", "mm", 1e3};
    case UnknownKind::kWallAtTip:
      return {"wall at tip", "mm", 1e3};
    case UnknownKind::kWall:
      return {"wall", "mm", 1e3};
  }
  return {"", "", 1};
}

Naming NamingOf(ReadingKind kind) {
  switch (kind) {
    case ReadingKind::kMass:
      return {"mass", "g", 1e3};
    case ReadingKind::kBalance:
      return {"balance point", "mm", 1e3};
    case ReadingKind::kDrop:
      return {"drop", "mm", 1e3};
    case ReadingKind::kFrequency:
      return {"frequency", "Hz", 1};
  }
  return {"", "", 1};
}

const char* StateName(IdentificationState state) {
  switch (state) {
    case IdentificationState::kFound:
      return "found";
    case IdentificationState::kNotEnough:
      return "not enough";
    case IdentificationState::kContradictory:
      return "contradictory";
    case IdentificationState::kCannotTell:
      return "cannot tell";
  }
  return "";
}

// To six digits: beyond what any reading knows, and the same on every machine, which the last digits of a search are
// not.
double SixDigits(double value) {
  if (value == 0 || !std::isfinite(value)) return value;
  const int digits = 5 - static_cast<int>(std::floor(std::log10(std::abs(value))));
  const double scale = std::pow(10, std::abs(digits));
  return digits >= 0 ? std::round(value * scale) / scale : std::round(value / scale) * scale;
}

std::string SectionId(const Rod& rod, int section) {
  return section < 0 ? "" : rod.blank.sections[section].id;
}

void PutFigure(const Rod& rod, const IdentifiedFigure& from, v1::CalibratedFigure& to) {
  const Naming naming = NamingOf(from.kind);
  to.set_at(from.at.ToString());
  to.set_kind(naming.name);
  to.set_section(SectionId(rod, from.section));
  to.set_unit(naming.unit);
  if (from.value) to.set_value(SixDigits(*from.value * naming.factor));
  if (from.plus_minus) to.set_plus_minus(SixDigits(*from.plus_minus * naming.factor));
  if (from.said) to.set_said(*from.said * naming.factor);
  to.set_held(from.held);
}

void PutReading(const IdentifiedReading& from, v1::CalibrationReading& to) {
  const Naming naming = NamingOf(from.kind);
  to.set_at(from.at.ToString());
  to.set_kind(naming.name);
  to.set_unit(naming.unit);
  if (from.measured != 0) to.set_measured(from.measured * naming.factor);
  if (from.plus_minus > 0) to.set_plus_minus(SixDigits(from.plus_minus * naming.factor));
  if (from.fitted) to.set_fitted(SixDigits(*from.fitted * naming.factor));
  if (from.deviation) to.set_deviation(SixDigits(*from.deviation));
  to.set_rejected(from.rejected);
  to.set_remark(from.remark);
}

}  // namespace

Identification IdentifyBlank(const Rod& rod, WallModel wall) {
  Inputs inputs = rod.inputs;
  return Identify(rod, ComputeSections(rod, inputs), wall);
}

v1::Calibration CalibrationOf(const v1::Design& design, const Rod& rod, const Identification& found) {
  v1::Calibration to;
  to.set_format("withy-calibration/1");
  to.set_design_digest(DesignDigest(design));
  to.set_state(StateName(found.state));
  to.set_verdict(found.verdict);
  for (const IdentifiedFigure& figure : found.figures) PutFigure(rod, figure, *to.add_figures());
  for (const IdentifiedReading& reading : found.readings) PutReading(reading, *to.add_readings());
  for (const OpenCombination& combination : found.open) {
    v1::OpenCombination& open = *to.add_open();
    open.set_text(combination.text);
    if (combination.doubt) open.set_doubt_percent(SixDigits(*combination.doubt * 100));
  }
  for (const NextReading& reading : found.next) {
    v1::NextReading& next = *to.add_next();
    next.set_text(reading.text);
    next.set_kind(NamingOf(reading.kind).name);
    next.set_section(SectionId(rod, reading.section));
    next.set_narrows(SixDigits(reading.narrows));
  }
  if (found.misfit) to.set_misfit(SixDigits(*found.misfit));
  if (found.condition) to.set_condition(SixDigits(*found.condition));
  for (const Assumption& assumption : found.assumptions) {
    v1::CalibrationAssumption& assumed = *to.add_assumptions();
    assumed.set_at(assumption.at.ToString());
    assumed.set_used(assumption.used);
    assumed.set_why(assumption.why);
  }
  return to;
}

}  // namespace withy
