#include <algorithm>

#include "arbors.h"
#include "on_blank.h"

namespace withy {
namespace {

constexpr double kInch_m = 0.0254, kSame_m = 1e-9;
constexpr int kMostRows = 200;

std::optional<double> BoreAt(const Part& part, double own_m) {
  const bool plugs = part.bore_known == BoreKnown::kPlugs;
  if (part.bore.empty() || !(part.bore_known == BoreKnown::kProfile || plugs)) return std::nullopt;
  if (plugs && (own_m < part.bore.begin() || own_m > part.bore.end())) return std::nullopt;
  return part.bore.At(own_m);
}

std::vector<double> BothEndsAndInches(double length_m) {
  std::vector<double> at;
  for (int i = 0; i * kInch_m < length_m - kSame_m && i < kMostRows; ++i) at.push_back(i * kInch_m);
  at.push_back(length_m);
  return at;
}

}  // namespace

std::vector<ReamTable> ReamTablesOf(const Rod& rod) {
  std::vector<ReamTable> tables;
  for (int i = 0; i < static_cast<int>(rod.handle.parts.size()); ++i) {
    const Part& part = rod.handle.parts[i];
    if (!part.reamed || part.fitting != FitKind::kRigid || !part.start.from_butt_m || !part.length) continue;
    if (!(part.length->value.meters() > 0)) continue;
    ReamTable table;
    table.part = i;
    for (const double own_m : BothEndsAndInches(part.length->value.meters())) {
      const auto blank_m = rod.BlankDiameterAt(part.start.from_butt_m->value() + own_m);
      if (!blank_m) break;
      table.rows.push_back({own_m, *blank_m, *blank_m + GlueClearanceOf(part), BoreAt(part, own_m)});
    }
    const bool whole = !table.rows.empty() && table.rows.back().at_m >= part.length->value.meters() - kSame_m;
    if (whole) tables.push_back(std::move(table));
  }
  std::stable_sort(tables.begin(), tables.end(), [&](const ReamTable& a, const ReamTable& b) {
    return rod.handle.parts[a.part].start.from_butt_m->value() < rod.handle.parts[b.part].start.from_butt_m->value();
  });
  return tables;
}

}  // namespace withy
