// A later reading of the taper laid over the rows that are there.
#include <algorithm>
#include <optional>
#include <utility>

#include "read_taper.h"

namespace withy {
namespace {

// Two rows closer than this were read at one place: what a tape laid along a blank is read to (common practice, no
// source).
constexpr double kSamePlaceM = 0.0005;

bool InOrder(const TaperTable& table) {
  std::optional<Length> before;
  for (const Station& station : table.stations) {
    if (!station.at) continue;
    if (before && *station.at < *before) return false;
    before = station.at;
  }
  return true;
}

// What a reading covers: from its first to its last row that tells the value; nothing where none does.
struct Range {
  std::optional<double> from, to;
  bool Covers(const Station& station) const {
    if (!from || !station.at) return false;
    return station.at->meters() >= *from - kSamePlaceM && station.at->meters() <= *to + kSamePlaceM;
  }
};

template <typename Tells>
Range RangeOf(const TaperTable& table, Tells tells) {
  Range range;
  for (const Station& station : table.stations) {
    if (!station.at || !tells(station)) continue;
    if (!range.from) range.from = station.at->meters();
    range.to = station.at->meters();
  }
  return range;
}

bool TellsOuter(const Station& station) {
  return station.outer.has_value();
}
bool TellsWall(const Station& station) {
  return station.wall || station.inner;
}

}  // namespace

TaperTable LaidOver(const TaperTable& before, const TaperTable& later) {
  if (before.stations.empty() || !InOrder(before) || !InOrder(later)) return later;
  const Range outer = RangeOf(later, TellsOuter), wall = RangeOf(later, TellsWall);
  TaperTable table = before;
  bool outer_left = false;
  for (Station& station : table.stations) {
    if (outer.Covers(station)) station.outer = station.outer_across = std::nullopt;
    if (wall.Covers(station)) {
      station.wall = station.inner = std::nullopt;
      station.wall_plus_minus_m = std::nullopt;
    }
    outer_left = outer_left || TellsOuter(station);
  }
  std::erase_if(table.stations, [](const Station& s) { return !TellsOuter(s) && !TellsWall(s); });
  if (!outer_left) table.diameter_plus_minus_m = std::nullopt;
  if (later.diameter_plus_minus_m) {
    table.diameter_plus_minus_m = std::max(table.diameter_plus_minus_m.value_or(0), *later.diameter_plus_minus_m);
  }
  if (later.at_plus_minus_m) {
    table.at_plus_minus_m = std::max(table.at_plus_minus_m.value_or(0), *later.at_plus_minus_m);
  }
  const int added = static_cast<int>(table.tables.size());
  table.tables.insert(table.tables.end(), later.tables.begin(), later.tables.end());
  for (Station station : later.stations) {
    station.table += added;
    table.stations.push_back(station);
  }
  // rows without a place come first, where every reader passes them over
  std::stable_sort(table.stations.begin(), table.stations.end(),
                   [](const Station& a, const Station& b) { return a.at < b.at; });
  if (std::none_of(table.stations.begin(), table.stations.end(), [](const Station& s) { return s.table == 0; })) {
    table.at = later.at;
  }
  return table;
}

}  // namespace withy
