// How far something comes on its way along a profile.
#ifndef WITHY_FIT_FIRST_PAST_H_
#define WITHY_FIT_FIRST_PAST_H_

#include <optional>

#include "withy/numerics/profile.h"

namespace withy::fit {

enum class Past { kAbove, kBelow };

// The first place on the way from `from` to `to`, either direction, beyond which the profile is above (below) `value`
// by more than 1e-12. Unset where it nowhere is. Requires: not empty.
std::optional<double> FirstPast(const Profile& profile, double from, double to, double value, Past past);

}  // namespace withy::fit

#endif  // WITHY_FIT_FIRST_PAST_H_
