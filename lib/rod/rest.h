// Where the blank comes to rest in the handle, and with it every origin along the finished rod.
#ifndef WITHY_ROD_REST_H_
#define WITHY_ROD_REST_H_

#include "resolver.h"

namespace withy {

// What the rest rests on: chosen before any place is known.
struct RestPlan {
  RestBasis basis = RestBasis::kUnknown;
  int part = -1;    // the part that was tried on, the one that the law is of, or the cap; -1 = none: at the butt end
  int dry_fit = -1;  // in Rod::dry_fits
};
RestPlan PlanRest(Resolver& r);

// Fills in Rod::blank_butt_m and the origins that follow from it. `part` is the plan's part, in place; unset where it
// has none. The two lengths stand for a point on the blank where only that is known.
struct Datums {
  std::optional<Uncertain> tip_end_on_blank_m;   // outermost point of the tip-top
  std::optional<Uncertain> tip_ring_on_blank_m;  // its ring's centre
};
struct PlacedPart {
  std::optional<Uncertain> start_m, length_m;
};
Datums SettleRest(Resolver& r, const RestPlan& plan, const PlacedPart& part);

// A butt face that lies on a shoulder of its handle but for a rounding is put on it, so that all that asks for the bore
// there sees the side towards the mouth. After every place is known.
void PutButtOnShoulder(Rod& rod);

// A place that is written and measured against the latest dry fit that holds. After every place is known.
void CompareRestWithDryFit(Resolver& r);

}  // namespace withy

#endif  // WITHY_ROD_REST_H_
