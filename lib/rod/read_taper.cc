#include "read_taper.h"

#include <algorithm>
#include <utility>

#include "read_quantity.h"

namespace withy {
namespace {

void Widen(std::optional<double>& largest, std::optional<double> value) {
  if (value) largest = std::max(largest.value_or(0), *value);
}

// Empty where a row cannot be used, so that no figure rests on a table that is wrong somewhere.
template <typename ValueOf>
Profile Draw(const TaperTable& table, ValueOf value_of) {
  std::vector<Profile::Knot> knots;
  for (const Station& station : table.stations) {
    const std::optional<double> value = value_of(station);
    if (!value || !station.at) continue;
    const double at = station.at->meters();
    if (at < 0 || *value <= 0 || (!knots.empty() && at < knots.back().x)) return {};
    knots.push_back({at, *value});
  }
  return knots.empty() ? Profile() : Profile(std::move(knots));
}

std::optional<double> OuterOf(const Station& station) {
  if (!station.outer) return std::nullopt;
  const double outer = station.outer->meters();
  return station.outer_across ? (outer + station.outer_across->meters()) / 2 : outer;
}

// Half a hair over the radius is rounding, not a wall that cannot be.
std::optional<double> WallOf(const Station& station, const Profile& outer_profile) {
  std::optional<double> outer = OuterOf(station);
  if (!outer && station.at && !outer_profile.empty()) outer = outer_profile.At(station.at->meters());
  std::optional<double> wall;
  if (station.wall) wall = station.wall->meters();
  if (station.inner && outer && station.inner->meters() >= 0) wall = (*outer - station.inner->meters()) / 2;
  if (wall && outer && *wall > *outer / 2 * (1 + 1e-12)) return -1;
  return wall;
}

Source OwnOr(const v1::Length& q, Source otherwise) {
  return q.source() == v1::Source::UNSPECIFIED ? otherwise : SourceOf(q.source());
}

Station ReadStation(const v1::Station& from, int row, Source otherwise) {
  Station station;
  station.row = row;
  station.at = LengthOf(from.at());
  station.outer = LengthOf(from.outer());
  station.outer_across = LengthOf(from.outer_across());
  station.outer_source = OwnOr(from.outer(), otherwise);
  if (from.has_wall()) {
    station.wall = LengthOf(from.wall());
    station.wall_source = OwnOr(from.wall(), otherwise);
    station.wall_plus_minus_m = PlusMinusMeters(from.wall());
  }
  if (from.has_inner()) {
    station.inner = LengthOf(from.inner());
    station.wall_source = OwnOr(from.inner(), otherwise);
    if (const auto pm = PlusMinusMeters(from.inner())) station.wall_plus_minus_m = *pm / 2;
  }
  return station;
}

}  // namespace

TaperTable ReadTaper(const v1::Taper& taper, FieldPath at, Source otherwise) {
  TaperTable table;
  table.tables = {at};
  table.at = std::move(at);
  const Source said = SourceOf(taper.reading().source());
  const Source source = said == Source::kPlan ? otherwise : said;
  if (const auto pm = LengthOf(taper.reading().at_plus_minus())) table.at_plus_minus_m = std::abs(pm->meters());
  std::optional<double> largest;
  table.stations.reserve(taper.stations_size());
  for (int row = 0; row < taper.stations_size(); ++row) {
    table.stations.push_back(ReadStation(taper.stations(row), row, source));
    Widen(largest, PlusMinusMeters(taper.stations(row).outer()));
  }
  table.diameter_plus_minus_m = largest;
  if (const auto pm = LengthOf(taper.reading().diameter_plus_minus())) {
    table.diameter_plus_minus_m = std::abs(pm->meters());
  }
  return table;
}

Profile OuterProfile(const TaperTable& table) { return Draw(table, OuterOf); }

Profile WallProfile(const TaperTable& table) {
  const Profile outer = OuterProfile(table);
  return Draw(table, [&outer](const Station& station) { return WallOf(station, outer); });
}

bool WallIsMeasured(const TaperTable& table) {
  for (const Station& station : table.stations) {
    if ((station.wall || station.inner) && station.wall_source != Source::kMeasured) return false;
  }
  return true;
}

std::optional<double> WallPlusMinus(const TaperTable& table) {
  std::optional<double> largest;
  for (const Station& station : table.stations) Widen(largest, station.wall_plus_minus_m);
  return largest;
}

}  // namespace withy
