// Adhesives and the bench they are mixed at.
#include <algorithm>
#include <cmath>
#include <utility>

#include "read_quantity.h"
#include "resolver.h"

namespace withy {
namespace {

std::optional<Ratio> ReadRatio(const v1::Parts& parts) {
  const bool usable =
      parts.resin() > 0 && parts.hardener() > 0 && std::isfinite(parts.resin()) && std::isfinite(parts.hardener());
  return usable ? std::optional<Ratio>(Ratio{parts.resin(), parts.hardener()}) : std::nullopt;
}

Adhesive ReadAdhesive(const v1::Adhesive& from, int i) {
  const v1::Mix& mix = from.mix();
  Adhesive adhesive;
  adhesive.id = from.id();
  adhesive.at = FieldPath().Field("adhesives").Item(from.id(), i);
  const FieldPath at = adhesive.at.Field("mix");
  adhesive.kind = from.kind();
  adhesive.by_volume = ReadRatio(mix.by_volume());
  adhesive.by_mass = ReadRatio(mix.by_mass());
  adhesive.density_kg_m3 = ReadDensity(mix.density(), at, "density");
  adhesive.pot_life_s = ReadTime(mix.pot_life(), at, "pot_life");
  adhesive.pot_life_at_c = CelsiusOf(mix.pot_life_at());
  adhesive.pot_life_mass = ReadMass(mix.pot_life_mass(), at, "pot_life_mass");
  adhesive.set_s = ReadTime(mix.set(), at, "set");
  adhesive.full_cure_s = ReadTime(mix.full_cure(), at, "full_cure");
  adhesive.cure_at_c = CelsiusOf(mix.cure_at());
  return adhesive;
}

// Bores that cannot be are left out: the check of plausible ranges speaks of them.
std::vector<Length> ReadStock(const google::protobuf::RepeatedPtrField<v1::Length>& bores) {
  std::vector<Length> stock;
  for (const v1::Length& bore : bores) {
    if (const auto length = LengthOf(bore); length && length->meters() > 0) stock.push_back(*length);
  }
  std::sort(stock.begin(), stock.end());
  return stock;
}

Shop ReadShop(const v1::Shop& from) {
  const FieldPath at = FieldPath().Field("shop");
  Shop shop;
  shop.smallest_batch_m3 = ReadVolume(from.smallest_batch(), at, "smallest_batch");
  if (from.adhesive_waste() >= 1 && std::isfinite(from.adhesive_waste())) shop.adhesive_waste = from.adhesive_waste();
  shop.counterweight_unit = ReadMass(from.counterweight_unit(), at, "counterweight_unit");
  shop.saw_kerf = ReadLength(from.saw_kerf(), at, "saw_kerf");
  shop.largest_single_cut = ReadLength(from.largest_single_cut(), at, "largest_single_cut");
  shop.last_cut = ReadLength(from.last_cut(), at, "last_cut");
  shop.gluing_time_s = ReadTime(from.gluing_time(), at, "gluing_time");
  shop.temperature_c = CelsiusOf(from.temperature());
  shop.winding_check_bores = ReadStock(from.winding_check_bores());
  return shop;
}

}  // namespace

void ResolveBonds(Resolver& r) {
  for (int i = 0; i < r.design.adhesives_size(); ++i) {
    r.rod.adhesives.push_back(ReadAdhesive(r.design.adhesives(i), i));
  }
  r.rod.shop = ReadShop(r.design.shop());
  for (const auto& [order, entry, at] : r.log.glued) {
    r.rod.glue_ups.push_back({entry->bond(), ReadRatio(entry->by_volume()), ReadRatio(entry->by_mass()), at});
  }
}

}  // namespace withy
