// What an adhesive and the bench say together, with the defaults for what they do not say.
#ifndef WITHY_BONDING_ADHESIVE_H_
#define WITHY_BONDING_ADHESIVE_H_

#include <optional>

#include "withy/rod/rod.h"

namespace withy {

// Where the shop does not say (common practice, no source): an ordinary room; the least that is measured well is 3 ml of
// each part; ten minutes from the first touch to closed.
inline constexpr double kRoom_c = 21;
inline constexpr double kSmallestBatch_m3 = 6e-6;
inline constexpr double kGluingTime_s = 600;

double TemperatureOf(const Shop& shop);
double SmallestBatchOf(const Shop& shop);
double WasteOf(const Shop& shop);  // factor >= 1
double GluingTimeOf(const Shop& shop);

bool IsEpoxy(const Adhesive& adhesive);
// Has two parts; else it is used as it comes.
bool IsMixed(const Adhesive& adhesive);

// Of a time that is printed for one temperature at another, halved by every 10 C (mixing.h). As printed where it is not
// known for which. Unset where the time is not known, or comes out as none or without end.
std::optional<double> TimeAt(const Maybe<double>& printed_s, const std::optional<double>& printed_for_c, double at_c);

// How long it can be worked in that shop. Unset where it is not mixed, or that is not known.
std::optional<double> PotLifeOf(const Adhesive& adhesive, const Shop& shop);

// Cured epoxy where its density is not written: 1150, band 1100 to 1200 kg/m3 (matrix table of a composites course).
inline constexpr double kEpoxy_kg_m3 = 1150, kEpoxyPlusMinus_kg_m3 = 50;

// As written, else that of epoxy; unset where it is neither.
std::optional<double> DensityOf(const Adhesive& adhesive);

}  // namespace withy

#endif  // WITHY_BONDING_ADHESIVE_H_
