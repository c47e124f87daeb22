#include "place_wraps.h"

#include "read_quantity.h"
#include "withy/v1/wraps.pb.h"

namespace withy {

Along PlaceOnGuide(const v1::Wrap& written, const Guide& guide, const Wrap& wrap) {
  if (!wrap.length) return {};
  const double length = wrap.length->meters();
  double inner = LengthOf(written.before_ring()).value_or(Length()).meters();
  const auto beyond = LengthOf(written.beyond_foot());
  const auto foot = Positive(guide.foot_length);
  if (written.has_length() && beyond && foot) inner = foot->meters() + beyond->meters() - length;
  return guide.ring.Moved(wrap.foot == 1 ? inner : -inner - length);
}

Along PlaceOnJoint(const Joint& joint, const Wrap& wrap) {
  if (!wrap.length) return {};
  if (wrap.foot == 1) {
    return joint.upper_start_m ? Along{std::nullopt, Uncertain(*joint.upper_start_m)} : Along{};
  }
  return joint.lower_end_m ? Along{std::nullopt, Uncertain(*joint.lower_end_m - wrap.length->meters())} : Along{};
}

Along PlaceOnTip(const Rod& rod, const Wrap& wrap) {
  const auto tube = Positive(rod.tip_top->tube_length);
  if (!wrap.length || !tube) return {};
  return Along{rod.blank_tip_m, rod.blank.length_m}.Moved(-tube->meters() - wrap.length->meters());
}

Along PlaceOnPart(const Part& part, Wrap& wrap) {
  const auto part_length = Positive(part.length);
  if (wrap.high_end != End::kUnknown) {
    const bool at_tip_side = wrap.high_end == End::kButt;  // high towards the hand: it runs up to the part behind it
    if (!wrap.high && !part.outer.empty() && part_length) {
      wrap.high = Length::Meters(part.outer.At(at_tip_side ? part_length->meters() : 0));
    }
    if (at_tip_side) return part_length ? part.start.Moved(part_length->meters()) : Along{};
    return wrap.length ? part.start.Moved(-wrap.length->meters()) : Along{};
  }
  if (wrap.kind == "keeper") wrap.over_foot = true;
  if (!wrap.length) wrap.length = part_length;
  return part.start;
}

}  // namespace withy
