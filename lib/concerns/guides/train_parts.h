// What a train plan is put together from: its loads, and what keeps guides where they are or from where they may not
// be.
#ifndef WITHY_GUIDES_TRAIN_PARTS_H_
#define WITHY_GUIDES_TRAIN_PARTS_H_

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "withy/guides/train_plan.h"

namespace withy::guides {

// Adds to `notes` what was added to the design's loads or left out and why. Loads held `farthest_clamp_m` from the butt
// end or further are left out. Empty: the design tells of no pull at all. FailedPrecondition: it does, and none of them
// can be used; what to correct.
absl::StatusOr<std::vector<TrainLoad>> TrainLoadsOf(const Rod& rod, int side, double farthest_clamp_m,
                                                    std::vector<std::string>& notes);
// Of those, the one with the largest pull.
const TrainLoad& HeaviestOf(const std::vector<TrainLoad>& loads);
// Direction of the line beyond the tip-top, radians clockwise from the butt's forward axis.
double PhiOf(const LoadCase& load);

// Feet and thread of a guide, from its ring's plane. Where its foot is not known, so long is assumed, and noted.
GuideReach ReachOf(const Rod& rod, const Guide& guide, std::vector<std::string>& notes);

// What stays where it is: locked by hand, wrapped, coated or glued, measured or placed by the log. Says why; empty = it
// may be moved.
std::string StaysBecause(const Rod& rod, const Guide& guide);

// Foremost point of the handle with every hood and nut as far forward as it goes; unset where no part tells its place.
std::optional<double> FrontOfHandle(const Rod& rod);
// Joints with their wraps, and hook keepers.
std::vector<TakenStretch> TakenStretches(const Rod& rod);
// Butt-side end of what the tip-top takes, tube and wrap: metres from the butt end of the finished rod.
double TipTopFrom(const Rod& rod, double tip_ring_m);

// Of the places from `low_m` to `high_m` the longest stretch on which the ring of the butt guide lies in the line cone
// of the reel, all metres from the butt end; all of them where that cannot be told. Unset: none of them.
std::optional<std::pair<double, double>> InConeWithin(const Rod& rod, Guide guide, double low_m, double high_m);

}  // namespace withy::guides

#endif  // WITHY_GUIDES_TRAIN_PARTS_H_
