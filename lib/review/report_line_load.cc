// Line load in the report: turned from the frame of the butt into that of the world.
#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "figures.h"
#include "report_parts.h"

namespace withy {
namespace {

constexpr double kDeg = 180 / std::numbers::pi;
constexpr double kMilli = 1000;
constexpr int kDistances = 48;  // enough for a smooth curve on paper

// One load, on its rod.
class CaseReport {
 public:
  CaseReport(const Rod& rod, const LineTrain& train, const StrungRod& strung, v1::StrungRod& to)
      : train_(train),
        strung_(strung),
        load_(rod.load_cases[strung.load_case]),
        held_(strung.load),
        rod_(rod),
        to_(to) {
    held_.tension *= strung.bent.reached;
    butt_ = load_.butt_angle_deg.value / kDeg;
  }

  void Write() {
    to_.set_id(strung_.id);
    to_.set_at(strung_.at.ToString());
    to_.set_state(StateWord(strung_.bent.state));
    if (!strung_.told()) return;
    WriteLoad();
    WriteReel();
    WriteShape();
    for (std::size_t k = 0; k < strung_.rings.size(); ++k) WriteRing(k, *to_.add_rings());
    for (std::size_t k = 0; k < strung_.bent.spans.size(); ++k) WriteSpan(k, *to_.add_spans());
    WriteTip();
    WriteLine();
    if (strung_.solved()) WriteUncertain();
  }

 private:
  double FromButtMm(double s_m) const { return (strung_.clamp_m + s_m) * kMm; }
  double ForwardMm(double x, double y) const { return (x * std::cos(butt_) - y * std::sin(butt_)) * kMm; }
  double UpMm(double x, double y) const { return (x * std::sin(butt_) + y * std::cos(butt_)) * kMm; }
  // A direction of the line, within half a turn of that of the blank there.
  double LineDeg(double direction, double blank) const {
    return (blank + std::remainder(direction - blank, 2 * std::numbers::pi) + butt_) * kDeg;
  }
  const char* RingsStand() const {
    const bool turned =
        std::any_of(train_.turned.begin(), train_.turned.end(), [](double angle) { return angle != 0; });
    return turned ? "around" : train_.side > 0 ? "above" : "below";
  }
  std::string IdOf(std::size_t ring) const {
    return ring < train_.guides.size() ? rod_.guides[train_.guides[ring]].id : rod_.tip_top->id;
  }
  FieldPath PathOf(std::size_t ring) const {
    return ring < train_.guides.size() ? rod_.guides[train_.guides[ring]].at : rod_.tip_top->at;
  }

  void WriteLoad() {
    to_.set_reached(strung_.bent.reached);
    PutWithPlusMinus(
        strung_.tension_n, kAsIs, [&](double n) { to_.set_tension_n(n); },
        [&](double n) { to_.set_tension_plus_minus_n(n); });
    to_.set_line_angle_deg(load_.LoadAngleDeg());
    to_.set_butt_angle_deg(load_.butt_angle_deg.value);
    to_.set_clamp_mm(strung_.clamp_m * kMm);
  }

  void WriteReel() {
    const double x = held_.reel_s, y = held_.side * held_.reel_offset;
    to_.set_rings_stand(RingsStand());
    to_.set_reel_mm(train_.reel_m * kMm);
    to_.set_reel_height_mm(train_.reel_height_m * kMm);
    to_.set_reel_forward_mm(ForwardMm(x, y));
    to_.set_reel_up_mm(UpMm(x, y));
  }

  // An even distance that falls on a ring is left out: at the ring it counts what is above it.
  std::vector<double> Places() const {
    constexpr double kSameM = 1e-6;
    std::vector<double> places;
    const auto add = [&places](double s) {
      const bool there =
          std::any_of(places.begin(), places.end(), [s](double at) { return std::abs(at - s) < kSameM; });
      if (!there) places.push_back(s);
    };
    for (const BeamRing& ring : strung_.rings) add(ring.s);
    for (int i = 0; i <= kDistances; ++i) add(strung_.blank.beam.length() * i / kDistances);
    add(strung_.peaks.strain_s);
    std::sort(places.begin(), places.end());
    return places;
  }

  void WriteShape() {
    const RingUnderLine& tip = strung_.bent.rings.back();
    const double pull_x = held_.tension * std::cos(-held_.far_angle),
                 pull_y = held_.tension * std::sin(-held_.far_angle);
    for (const double s : Places()) {
      const BeamPoint at = StrungPointAt(strung_.blank.beam, strung_.rings, held_, strung_.bent, s);
      const double of_pull = (tip.x - at.x) * pull_y - (tip.y - at.y) * pull_x;
      to_.add_at_mm(FromButtMm(s));
      to_.add_forward_mm(ForwardMm(at.x, at.y));
      to_.add_up_mm(UpMm(at.x, at.y));
      to_.add_moment_n_m(at.moment);
      to_.add_guides_moment_n_m(at.moment - of_pull);
      to_.add_strain_millistrain(StrainAt(strung_.blank, s, at.moment) * kMilli);
    }
  }

  void WriteRing(std::size_t k, v1::RingUnderLine& to) const {
    const RingUnderLine& ring = strung_.bent.rings[k];
    to.set_id(IdOf(k));
    to.set_at(PathOf(k).ToString());
    to.set_from_butt_mm(FromButtMm(strung_.rings[k].s));
    to.set_offset_mm(strung_.rings[k].offset * kMm);
    to.set_forward_mm(ForwardMm(ring.x, ring.y));
    to.set_up_mm(UpMm(ring.x, ring.y));
    to.set_aside_mm(ring.z * kMm);
    to.set_blank_angle_deg((ring.angle + butt_) * kDeg);
    to.set_line_in_deg(LineDeg(ring.line_in, ring.angle));
    to.set_line_out_deg(LineDeg(ring.line_out, ring.angle));
    to.set_turn_deg(strung_.sense * ring.turn * kDeg);
    to.set_force_n(std::hypot(ring.force_x, ring.force_y, ring.force_z));
    to.set_force_along_n(ring.force_x * std::cos(ring.angle) + ring.force_y * std::sin(ring.angle));
    to.set_force_across_n(TowardsBlank(strung_.rings[k], ring));
    to.set_tension_in_n(ring.tension_in);
    to.set_tension_out_n(ring.tension_out);
  }

  // From the ring's centre to the axis, also of a ring that stands no way off it.
  double TowardsBlank(const BeamRing& stands, const RingUnderLine& ring) const {
    const double across = -held_.side * std::cos(stands.turned);
    return across * (ring.force_y * std::cos(ring.angle) - ring.force_x * std::sin(ring.angle)) -
           std::sin(stands.turned) * ring.force_z;
  }

  void WriteSpan(std::size_t k, v1::LineSpan& to) const {
    const LineSpan& span = strung_.bent.spans[k];
    if (k > 0) to.set_from_ring(IdOf(k - 1));
    to.set_to_ring(IdOf(k));
    to.set_length_mm(span.length * kMm);
    to.set_direction_deg(LineDeg(span.direction, strung_.bent.rings[k].angle));
    to.set_tension_n(span.tension);
    if (k >= strung_.clearances.size()) return;
    to.set_clearance_mm(strung_.clearances[k].least * kMm);
    to.set_clearance_at_mm(FromButtMm(strung_.clearances[k].s));
  }

  void WriteTip() {
    const RingUnderLine& tip = strung_.bent.rings.back();
    to_.set_tip_angle_deg((tip.angle + butt_) * kDeg);
    to_.set_tip_to_line_deg(std::abs(std::remainder(-held_.far_angle - tip.angle, 2 * std::numbers::pi)) * kDeg);
    to_.set_tip_drop_mm(-tip.axis_y * kMm);
    to_.set_clamp_moment_n_m(std::abs(strung_.bent.nodes.front().moment));
    to_.set_peak_strain_millistrain(strung_.peaks.strain * kMilli);
    to_.set_peak_at_mm(FromButtMm(strung_.peaks.strain_s));
    to_.set_strain_energy_j(strung_.bent.strain_energy);
    if (strung_.solved()) to_.set_error_mm(strung_.bent.error * kMm);
  }

  void WriteLine() {
    const StrungBeam& bent = strung_.bent;
    const double far = held_.tension, reel = bent.tension_at_reel;
    to_.set_tension_at_reel_n(reel);
    if (far > 0 && reel > 0) to_.set_friction_loss_percent(100 * (1 - std::min(far, reel) / std::max(far, reel)));
    to_.set_line_path_mm(bent.path * kMm);
    const auto closest = std::min_element(strung_.clearances.begin(), strung_.clearances.end(),
                                          [](const Clearance& a, const Clearance& b) { return a.least < b.least; });
    if (closest != strung_.clearances.end()) {
      to_.set_clearance_mm(closest->least * kMm);
      to_.set_clearance_at_mm(FromButtMm(closest->s));
    }
    if (strung_.most_turned < 0) return;
    to_.set_most_turned(IdOf(strung_.most_turned));
    to_.set_most_turn_deg(strung_.sense * bent.rings[strung_.most_turned].turn * kDeg);
  }

  void WriteUncertain() {
    PutWithPlusMinus(
        strung_.tip_angle, kDeg, [](double) {}, [&](double deg) { to_.set_tip_angle_plus_minus_deg(deg); });
    PutWithPlusMinus(
        strung_.tip_drop_m, kMm, [](double) {}, [&](double mm) { to_.set_tip_drop_plus_minus_mm(mm); });
    PutWithPlusMinus(
        strung_.clamp_moment_n_m, kAsIs, [](double) {}, [&](double n_m) { to_.set_clamp_moment_plus_minus_n_m(n_m); });
    PutWithPlusMinus(
        strung_.most_turn, kDeg, [](double) {}, [&](double deg) { to_.set_most_turn_plus_minus_deg(deg); });
  }

  const LineTrain& train_;
  const StrungRod& strung_;
  const LoadCase& load_;
  StrungLoad held_;  // what of the pull the shape is of
  const Rod& rod_;
  v1::StrungRod& to_;
  double butt_ = 0;  // radians above the horizontal
};

}  // namespace

void ReportLineLoad(const Rod& rod, const LineLoadAnswers& answers, v1::LineLoadReport& report) {
  if (!answers.train) return;
  for (const StrungRod& strung : answers.cases) CaseReport(rod, *answers.train, strung, *report.add_cases()).Write();
}

}  // namespace withy
