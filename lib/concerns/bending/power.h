// The weight that drops the tip of a level rod by a third of its free length.
#ifndef WITHY_BENDING_POWER_H_
#define WITHY_BENDING_POWER_H_

#include <optional>

#include "bend.h"

namespace withy::bending {

// Unset where no weight does it, or the beam is none. `near` is a weight that will not be far off, where one is known:
// that of the bare blank for the finished rod.
std::optional<Power> PowerOf(const LoadedBeam& rod, const std::optional<Power>& near = std::nullopt);

}  // namespace withy::bending

#endif  // WITHY_BENDING_POWER_H_
