// A table of stations as written, and the profiles drawn through it.
#ifndef WITHY_ROD_READ_TAPER_H_
#define WITHY_ROD_READ_TAPER_H_

#include "withy/rod/blank.h"
#include "withy/v1/blank.pb.h"

namespace withy {

// Rows that say no source, in a reading that says none, take `otherwise`.
TaperTable ReadTaper(const v1::Taper& taper, FieldPath at, Source otherwise = Source::kPlan);

// Through the rows that know it; empty where none does, where places fall back, or where a row holds what cannot be (a
// negative place, a diameter of zero or less, a wall of more than half the diameter). Of a row that knows its inner but
// not its outer diameter the wall follows from the outer profile there.
Profile OuterProfile(const TaperTable& table);
Profile WallProfile(const TaperTable& table);

// True where every row that tells the wall was read from an instrument.
bool WallIsMeasured(const TaperTable& table);
// The largest uncertainty that a row gives for its wall or inner diameter, as that of a wall, in metres.
std::optional<double> WallPlusMinus(const TaperTable& table);

// Lays a later reading over a table (see TaperTable). Where either has rows out of order, the later one alone counts.
TaperTable LaidOver(const TaperTable& before, const TaperTable& later);

}  // namespace withy

#endif  // WITHY_ROD_READ_TAPER_H_
