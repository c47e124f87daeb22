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
std::optional<double> WallOf(const Station& station) {
  const std::optional<double> outer = OuterOf(station);
  std::optional<double> wall;
  if (station.wall) wall = station.wall->meters();
  if (station.inner && outer && station.inner->meters() >= 0) wall = (*outer - station.inner->meters()) / 2;
  if (wall && outer && *wall > *outer / 2 * (1 + 1e-12)) return -1;
  return wall;
}

}  // namespace

TaperTable ReadTaper(const v1::Taper& taper, FieldPath at) {
  TaperTable table;
  table.at = std::move(at);
  table.source = SourceOf(taper.reading().source());
  if (const auto pm = LengthOf(taper.reading().at_plus_minus())) table.at_plus_minus_m = std::abs(pm->meters());
  std::optional<double> largest;
  table.stations.reserve(taper.stations_size());
  for (int row = 0; row < taper.stations_size(); ++row) {
    const v1::Station& from = taper.stations(row);
    Station station;
    station.row = row;
    station.at = LengthOf(from.at());
    station.outer = LengthOf(from.outer());
    station.outer_across = LengthOf(from.outer_across());
    if (from.has_wall()) station.wall = LengthOf(from.wall());
    if (from.has_inner()) station.inner = LengthOf(from.inner());
    Widen(largest, PlusMinusMeters(from.outer()));
    table.stations.push_back(station);
  }
  table.diameter_plus_minus_m = largest;
  if (const auto pm = LengthOf(taper.reading().diameter_plus_minus())) {
    table.diameter_plus_minus_m = std::abs(pm->meters());
  }
  return table;
}

Profile OuterProfile(const TaperTable& table) { return Draw(table, OuterOf); }
Profile WallProfile(const TaperTable& table) { return Draw(table, WallOf); }

bool WallIsMeasured(const v1::Taper& taper) {
  for (const v1::Station& station : taper.stations()) {
    if (!station.has_wall() && !station.has_inner()) continue;
    const v1::Source::Value own = station.has_wall() ? station.wall().source() : station.inner().source();
    const v1::Source::Value source = own == v1::Source::UNSPECIFIED ? taper.reading().source() : own;
    if (source != v1::Source::MEASURED) return false;
  }
  return true;
}

std::optional<double> WallPlusMinus(const v1::Taper& taper) {
  std::optional<double> largest;
  for (const v1::Station& station : taper.stations()) {
    if (station.has_wall()) Widen(largest, PlusMinusMeters(station.wall()));
    if (const auto pm = PlusMinusMeters(station.inner()); station.has_inner() && pm) Widen(largest, *pm / 2);
  }
  return largest;
}

}  // namespace withy
