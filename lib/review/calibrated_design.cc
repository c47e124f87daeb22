// Writing what was found into a design.
#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>
#include <vector>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "google/protobuf/util/message_differencer.h"
#include "withy/document/rewrite.h"
#include "withy/review/calibration.h"

namespace withy {
namespace {

// To as many digits as the uncertainty has two of; a power of ten of the unit.
double Rounded(double value, double plus_minus) {
  if (!(plus_minus > 0)) return value;
  const double digits = 1 - std::floor(std::log10(plus_minus));
  const double scale = std::pow(10, std::abs(digits));
  return digits >= 0 ? std::round(value * scale) / scale : std::round(value / scale) * scale;
}

template <typename Quantity>
void Estimate(double plus_minus, Quantity& quantity) {
  quantity.set_plus_minus(Rounded(plus_minus, plus_minus));
  quantity.set_source(v1::Source::ESTIMATED);
}

// "mass of blank", "drop hang-250": what it is, and the last item of its path.
std::string ReadingName(const IdentifiedReading& reading) {
  std::string item;
  for (const FieldPath::Step& step : reading.at.steps()) {
    if (step.field.empty()) item = step.id.empty() ? absl::StrCat(step.index) : step.id;
  }
  switch (reading.kind) {
    case ReadingKind::kMass:
      return "mass of " + item;
    case ReadingKind::kBalance:
      return "balance point of " + item;
    case ReadingKind::kDrop:
      return "drop " + item;
    case ReadingKind::kFrequency:
      return "beat " + item;
  }
  return item;
}

class Writer {
 public:
  Writer(const Document& document, const Rod& rod, const Identification& found)
      : rod_(rod), found_(found), edited_(document.design) {}

  // False where a wall has no row in the design that it could stand in.
  bool WriteFigures() {
    for (const IdentifiedFigure& figure : found_.figures) {
      if (figure.held || !figure.value || !figure.plus_minus) continue;
      const bool wall = figure.kind != UnknownKind::kModulus && figure.kind != UnknownKind::kDensity;
      for (const int section : figure.sections) {
        if (wall && !WriteWalls(section)) return false;
        if (!wall) WriteLaminate(figure, section);
      }
    }
    return true;
  }

  void WriteChange(const CalibrationMark& mark) {
    v1::Identity& identity = *edited_.mutable_identity();
    v1::Change& change = *identity.add_changes();
    change.set_date(mark.date);
    change.set_author(mark.author);
    std::vector<std::string> readings;
    for (const IdentifiedReading& reading : found_.readings) {
      if (!reading.rejected && reading.fitted) readings.push_back(ReadingName(reading));
    }
    change.set_summary(absl::StrCat("calibrated: ", absl::StrJoin(Written(), ", "), " estimated from ",
                                    absl::StrJoin(readings, ", ")));
    paths_.push_back(FieldPath().Field("identity").Field("changes").Item("", identity.changes_size() - 1));
  }

  const v1::Design& edited() const { return edited_; }
  const std::vector<FieldPath>& paths() const { return paths_; }

 private:
  v1::Section& SectionAt(int section) { return *edited_.mutable_blank()->mutable_sections(section); }

  void WriteLaminate(const IdentifiedFigure& figure, int section) {
    const bool modulus = figure.kind == UnknownKind::kModulus;
    const double factor = modulus ? 1e-9 : 1e-3;
    const double value = *figure.value * factor, plus_minus = *figure.plus_minus * factor;
    if (modulus) {
      v1::Modulus& to = *SectionAt(section).mutable_modulus();
      to.Clear();
      to.set_gpa(Rounded(value, plus_minus));
      Estimate(plus_minus, to);
    } else {
      v1::Density& to = *SectionAt(section).mutable_density();
      to.Clear();
      to.set_g_per_cm3(Rounded(value, plus_minus));
      Estimate(plus_minus, to);
    }
    paths_.push_back(rod_.blank.sections[section].at.Field(modulus ? "modulus" : "density"));
  }

  // Doubt of a wall at a place: between those of its ends.
  double WallPlusMinus(int section, double share) const {
    double butt = 0, tip = 0;
    for (const IdentifiedFigure& figure : found_.figures) {
      if (figure.held || std::count(figure.sections.begin(), figure.sections.end(), section) == 0) continue;
      const double plus_minus = figure.plus_minus.value_or(0);
      if (figure.kind == UnknownKind::kWallAtButt || figure.kind == UnknownKind::kWall) butt = plus_minus;
      if (figure.kind == UnknownKind::kWallAtTip || figure.kind == UnknownKind::kWall) tip = plus_minus;
    }
    return butt + (tip - butt) * share;
  }

  // Rows of the design's own table whose wall is none that was measured: the first, the last, and those that have one.
  bool WriteWalls(int section) {
    if (std::count(walls_written_.begin(), walls_written_.end(), section) > 0) return true;
    walls_written_.push_back(section);
    const Section& known = rod_.blank.sections[section];
    const FieldPath own = known.at.Field("taper");
    const auto rows_end = known.taper.stations.size();
    bool wrote = false;
    for (std::size_t i = 0; i < rows_end; ++i) {
      const Station& station = known.taper.stations[i];
      const bool has_wall = station.wall || station.inner, end = i == 0 || i + 1 == rows_end;
      if (!(known.taper.tables[station.table] == own) || !station.at || !(has_wall || end)) continue;
      if (has_wall && station.wall_source == Source::kMeasured) continue;
      WriteWall(section, station);
      wrote = true;
    }
    return wrote;
  }

  // As an inner diameter where one is written.
  void WriteWall(int section, const Station& station) {
    const Section& known = rod_.blank.sections[section];
    const double at = station.at->meters();
    const double wall = found_.walls[section].At(at) * 1e3;
    const double plus_minus = WallPlusMinus(section, std::clamp(at / known.length->value.meters(), 0.0, 1.0)) * 1e3;
    v1::Station& row = *SectionAt(section).mutable_taper()->mutable_stations(station.row);
    const bool inner = row.has_inner();
    v1::Length& to = inner ? *row.mutable_inner() : *row.mutable_wall();
    const double value = inner ? known.outer.At(at) * 1e3 - 2 * wall : wall;
    to.Clear();
    to.set_mm(Rounded(value, plus_minus));
    Estimate(inner ? 2 * plus_minus : plus_minus, to);
    paths_.push_back(known.taper.PathOf(station).Field(inner ? "inner" : "wall"));
  }

  std::vector<std::string> Written() const {
    std::vector<std::string> names;
    const auto add = [&](const char* name, auto... kinds) {
      const bool any = std::any_of(found_.figures.begin(), found_.figures.end(), [&](const IdentifiedFigure& f) {
        return !f.held && f.value && ((f.kind == kinds) || ...);
      });
      if (any) names.push_back(name);
    };
    add("modulus", UnknownKind::kModulus);
    add("density", UnknownKind::kDensity);
    add("walls", UnknownKind::kWall, UnknownKind::kWallAtButt, UnknownKind::kWallAtTip);
    return names;
  }

  const Rod& rod_;
  const Identification& found_;
  v1::Design edited_;
  std::vector<FieldPath> paths_;
  std::vector<int> walls_written_;
};

}  // namespace

absl::StatusOr<std::string> WithCalibration(const Document& document, const Rod& rod, const Identification& found,
                                            const CalibrationMark& mark) {
  if (found.state != IdentificationState::kFound) {
    return absl::FailedPreconditionError(absl::StrCat(document.name, ": nothing to write: ", found.verdict));
  }
  Writer writer(document, rod, found);
  if (!writer.WriteFigures()) {
    return absl::FailedPreconditionError(
        absl::StrCat(document.name, ": the taper table stands in the log alone: copy its rows to the section first"));
  }
  if (writer.paths().empty()) {
    return absl::FailedPreconditionError(absl::StrCat(document.name, ": nothing to write: everything was measured"));
  }
  // Estimates that stand there already are no change.
  if (google::protobuf::util::MessageDifferencer::Equals(writer.edited(), document.design)) return document.bytes;
  writer.WriteChange(mark);
  return RewriteFields(document, writer.edited(), writer.paths());
}

}  // namespace withy
