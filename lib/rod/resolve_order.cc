// The order: what was asked for, and the reel and line it is for.
#include "read_quantity.h"
#include "resolver.h"

namespace withy {
namespace {

// As the schema says it of reel.side.
int SideOf(const v1::Intent& order) {
  switch (order.reel().side()) {
    case v1::Side::ABOVE:
      return 1;
    case v1::Side::BELOW:
      return -1;
    default:
      break;
  }
  const std::string& technique = order.technique();
  if (technique == "casting" || technique == "conventional") return 1;
  return technique.empty() || technique == "surf" ? 0 : -1;
}

}  // namespace

void ResolveOrder(Resolver& r) {
  const v1::Intent& from = r.design.intent();
  const FieldPath at = FieldPath().Field("intent");
  const FieldPath reel = at.Field("reel");
  const FieldPath line = at.Field("line");
  Order& order = r.rod.order;
  order.technique = from.technique();
  order.hand = from.hand();
  order.overall_length = ReadLength(from.overall_length(), at, "overall_length");
  order.balance_from_butt = ReadLength(from.balance_from_butt(), at, "balance_from_butt");
  order.holding_point = ReadLength(from.holding_point_from_butt(), at, "holding_point_from_butt");
  order.has_reel = from.has_reel();
  order.reel_mass = ReadMass(from.reel().mass(), reel, "mass");
  order.reel_foot_center = ReadLength(from.reel().foot_center_from_butt(), reel, "foot_center_from_butt");
  order.side = SideOf(from);
  order.spool_diameter = ReadLength(from.reel().spool_diameter(), reel, "spool_diameter");
  order.spool_axis_height = ReadLength(from.reel().spool_axis_height(), reel, "spool_axis_height");
  order.spool_axis_angle_deg = ReadAngle(from.reel().spool_axis_angle(), reel, "spool_axis_angle");
  order.spool_lip = ReadLength(from.reel().spool_lip_from_foot_center(), reel, "spool_lip_from_foot_center");
  if (from.line().has_friction()) {
    order.friction = Known<double>{from.line().friction(), std::nullopt, Source::kPlan, line.Field("friction")};
  }
  if (const auto strength = ReadForce(from.line().strength(), line, "strength")) {
    order.line_strength_n = strength->value;
  }
  order.line_diameter = ReadLength(from.line().diameter(), line, "diameter");
  order.knot_diameter = ReadLength(from.line().knot_diameter(), line, "knot_diameter");
  if (const auto min = ReadMass(from.lure().min(), at, "lure")) order.lure_min = min->value;
  if (const auto max = ReadMass(from.lure().max(), at, "lure")) order.lure_max = max->value;
}

}  // namespace withy
