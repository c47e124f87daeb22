#include "adhesive.h"

#include <algorithm>
#include <cmath>

#include "withy/bonding/bonding.h"
#include "withy/bonding/mixing.h"

namespace withy {
namespace {

double PositiveOr(const Maybe<double>& known, double otherwise) {
  return known && known->value > 0 ? known->value : otherwise;
}

}  // namespace

double TemperatureOf(const Shop& shop) {
  return shop.temperature_c.value_or(kRoom_c);
}

double SmallestBatchOf(const Shop& shop) {
  return PositiveOr(shop.smallest_batch_m3, kSmallestBatch_m3);
}

double WasteOf(const Shop& shop) {
  return std::max(1.0, shop.adhesive_waste.value_or(1));
}

double MixFor(double need_m3, const Shop& shop) {
  return std::max(WasteOf(shop) * need_m3, SmallestBatchOf(shop));
}

double GluingTimeOf(const Shop& shop) {
  return PositiveOr(shop.gluing_time_s, kGluingTime_s);
}

bool IsEpoxy(const Adhesive& adhesive) {
  return adhesive.kind == "epoxy_paste" || adhesive.kind == "epoxy_liquid";
}

bool IsMixed(const Adhesive& adhesive) {
  return adhesive.by_volume || adhesive.by_mass || IsEpoxy(adhesive);
}

std::optional<double> TimeAt(const Maybe<double>& printed_s, const std::optional<double>& printed_for_c, double at_c) {
  if (!printed_s || !(printed_s->value > 0)) return std::nullopt;
  const double at = PotLifeAt(printed_s->value, printed_for_c.value_or(at_c), at_c);
  return std::isfinite(at) && at > 0 ? std::optional(at) : std::nullopt;
}

std::optional<double> PotLifeOf(const Adhesive& adhesive, const Shop& shop) {
  return IsMixed(adhesive) ? TimeAt(adhesive.pot_life_s, adhesive.pot_life_at_c, TemperatureOf(shop)) : std::nullopt;
}

std::optional<double> DensityOf(const Adhesive& adhesive) {
  if (adhesive.density_kg_m3 && adhesive.density_kg_m3->value > 0) return adhesive.density_kg_m3->value;
  return IsEpoxy(adhesive) ? std::optional(kEpoxy_kg_m3) : std::nullopt;
}

}  // namespace withy
