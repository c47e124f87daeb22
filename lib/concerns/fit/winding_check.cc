#include <algorithm>
#include <cmath>

#include "first_past.h"
#include "on_blank.h"

namespace withy {
namespace {

constexpr double kStep_m = 0.0005;  // of stock bores where the shop names none
constexpr double kTie_m = 1e-12;

// The smallest bore that goes over the blank, and the next one down.
void ChooseBores(const Shop& shop, WindingCheckFit& fit) {
  if (shop.winding_check_bores.empty()) {
    const double steps = std::ceil((fit.blank_m - kTie_m) / kStep_m);
    fit.bore_m = steps * kStep_m;
    if (steps > 1) fit.next_bore_m = (steps - 1) * kStep_m;
    return;
  }
  for (const Length& stock : shop.winding_check_bores) {  // rising
    if (stock.meters() >= fit.blank_m - kTie_m) {
      fit.bore_m = stock.meters();
      return;
    }
    fit.next_bore_m = stock.meters();
  }
}

}  // namespace

std::vector<WindingCheckFit> WindingChecksOf(const Rod& rod) {
  std::vector<WindingCheckFit> fits;
  if (!rod.blank_butt_m || rod.blank.outer.empty()) return fits;
  const Profile blank = rod.blank.outer.Shifted(rod.blank_butt_m->value());
  for (int i = 0; i < static_cast<int>(rod.handle.parts.size()); ++i) {
    const Part& part = rod.handle.parts[i];
    if (part.kind != "winding_check" || !part.on.empty() || !part.start.from_butt_m) continue;
    const double at_m = part.start.from_butt_m->value();
    const auto blank_m = rod.BlankDiameterAt(at_m);
    if (!blank_m || !(*blank_m > 0)) continue;
    WindingCheckFit fit;
    fit.part = i;
    fit.blank_m = *blank_m;
    ChooseBores(rod.shop, fit);
    if (fit.next_bore_m) {
      const auto stops_m = fit::FirstPast(blank, blank.end(), at_m, *fit.next_bore_m, fit::Past::kAbove);
      if (stops_m) fit.next_stops_ahead_m = *stops_m - at_m;
      fit.ream_m = *blank_m - *fit.next_bore_m;
    }
    fits.push_back(fit);
  }
  std::stable_sort(fits.begin(), fits.end(), [&](const WindingCheckFit& a, const WindingCheckFit& b) {
    return rod.handle.parts[a.part].start.from_butt_m->value() < rod.handle.parts[b.part].start.from_butt_m->value();
  });
  return fits;
}

}  // namespace withy
