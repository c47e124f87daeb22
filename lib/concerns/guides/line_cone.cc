#include <algorithm>
#include <cmath>
#include <numbers>

#include "absl/strings/str_format.h"
#include "rules.h"

namespace withy::guides {
namespace {

constexpr Code kLineCone = {
    .name = "guides/line-cone",
    .severity = Severity::kWarning,
    .summary = "The butt guide's ring lies outside the line cone of the reel",
    .why =
        "From a fixed spool the line leaves in loops over the whole lip. They run together in a cone about the spool's "
        "axis; a ring off that axis, or too near or too small for that spool, takes them on one side, and they slap "
        "against blank and frame.",
    .action =
        "Put the butt guide where the spool's axis points through its ring, take a higher or lower frame or a larger "
        "ring, or measure height and tilt of the spool again.",
};

// Steepest line from lip to ring, common practice, no source: beyond it loops are seen to slap.
constexpr double kMostAngle_deg = 5;

constexpr double kDegrees = 180 / std::numbers::pi;

// The spool's lip and the ring of the butt guide, seen from the side. Heights are from the blank's axis, on the side
// where the reel hangs; metres.
struct Cone {
  double distance = 0;     // lip to ring's plane, along the blank
  double axis_height = 0;  // of the spool's axis, at the lip
  double ring_height = 0;
  double lip_radius = 0, ring_radius = 0;
  double tilt_deg = 0;  // of the axis towards the blank
  bool tilt_known = false;

  // Of the spool's axis above the ring's centre, in the ring's plane.
  double Off() const { return axis_height - distance * std::tan(tilt_deg / kDegrees) - ring_height; }
  // Tilt at which the axis would meet the ring's centre.
  double AimedTilt_deg() const { return std::atan2(axis_height - ring_height, distance) * kDegrees; }
  bool Misses() const { return std::abs(Off()) > ring_radius; }
  // Of the line against the spool's axis: from the far side of the lip to the near side of the ring, plane geometry.
  double Steepest_deg() const {
    return std::atan(std::max(0.0, lip_radius + std::abs(Off()) - ring_radius) / distance) * kDegrees;
  }
};

// Whether the line leaves the reel over the lip of a spool that stands still: a reel that hangs below, no fly reel.
// Only such a reel has a lip that can be measured.
bool HasFixedSpool(const Order& order) {
  return order.side < 0 && order.technique != "fly" && order.spool_lip;
}

// Unset where there is no fixed spool, a figure is not known, or the ring is told to stand out of all order.
std::optional<Cone> ConeOf(const Rod& rod, const Guide& guide) {
  const Order& order = rod.order;
  if (!HasFixedSpool(order) || !order.spool_diameter || !order.spool_axis_height || !order.reel_foot_m) return {};
  const std::optional<double> blank = rod.DiameterUnder(guide.ring);
  if (!guide.ring.from_butt_m || !guide.ring_height || !guide.ring_inner || !blank) return {};
  if (guide.angle_deg && std::abs(guide.angle_deg->value) > 1e-9) return {};  // turned out of the plane of the reel
  Cone cone;
  cone.distance = guide.ring.from_butt_m->value() - order.reel_foot_m->value() - order.spool_lip->value.meters();
  cone.axis_height = order.spool_axis_height->value.meters();
  cone.ring_height = *blank / 2 + guide.ring_height->value.meters();
  cone.lip_radius = order.spool_diameter->value.meters() / 2;
  cone.ring_radius = guide.ring_inner->value.meters() / 2;
  cone.tilt_known = order.spool_axis_angle_deg.has_value();
  if (cone.tilt_known) cone.tilt_deg = order.spool_axis_angle_deg->value;
  return cone.distance > 0 && cone.ring_radius > 0 ? std::optional(cone) : std::nullopt;
}

void JudgeLineCone(const View& view, std::vector<Finding>& findings) {
  const std::vector<const Guide*> guides = AlongTheRod(view);
  if (guides.empty() || NearTheReel(view)) return;
  const Guide& guide = *guides.front();
  const std::optional<Cone> cone = ConeOf(view.rod, guide);
  if (!cone) return;
  const double off = cone->Off(), steepest = cone->Steepest_deg();
  const bool misses = cone->Misses();
  if (!misses && steepest <= kMostAngle_deg) return;
  std::vector<Number> numbers = {{"off_mm", off * 1000},
                                 {"ring_radius_mm", cone->ring_radius * 1000},
                                 {"aimed_tilt_deg", cone->AimedTilt_deg()},
                                 {"steepest_deg", steepest},
                                 {"most_deg", kMostAngle_deg}};
  if (misses && !cone->tilt_known) {
    Finding finding = CannotTell(
        kLineCone, guide.from_tip->at,
        absl::StrFormat("whether the spool points through the ring of '%s' depends on its tilt: %.1f degrees would",
                        guide.id, cone->AimedTilt_deg()),
        "Measure how far the spool's axis is turned towards the blank and write it in `spool_axis_angle`.");
    finding.numbers = std::move(numbers);
    findings.push_back(std::move(finding));
    return;
  }
  const std::string message =
      misses
          ? absl::StrFormat("the spool's axis passes %.1f mm %s the centre of the ring of '%s', which is %.1f mm wide",
                            std::abs(off) * 1000, off > 0 ? "outside" : "inside", guide.id, 2000 * cone->ring_radius)
          : absl::StrFormat("the line comes from the lip into the ring of '%s' at up to %.1f degrees, more than %.0f",
                            guide.id, steepest, kMostAngle_deg);
  findings.push_back(AtGuide(view, kLineCone, guide, message, std::move(numbers)));
}

}  // namespace

std::optional<bool> InLineCone(const Rod& rod, const Guide& guide) {
  const std::optional<Cone> cone = ConeOf(rod, guide);
  if (!cone || !cone->tilt_known) return std::nullopt;
  return !cone->Misses() && cone->Steepest_deg() <= kMostAngle_deg;
}

std::vector<Rule<View>> ConeRules() {
  return {{&kLineCone, JudgeLineCone}};
}

}  // namespace withy::guides
