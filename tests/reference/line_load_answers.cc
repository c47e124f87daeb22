#include "reference/line_load_answers.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string_view>
#include <vector>

#include "reference/fields.h"
#include "support/tube_beam.h"
#include "withy/numerics/strung_beam.h"

namespace withy::reference {
namespace {

double Radians(double degrees) {
  return degrees * std::numbers::pi / 180;
}

Beam BeamOf(const Value& in) {
  const double length = Get(in, "L_m");
  if (in.HasMember("EI_constant_Nm2")) return {{{0, length, {Get(in, "EI_constant_Nm2")}, {}}}, {}};
  const double outer0 = Get(in, "od_butt_m"), outer1 = Get(in, "od_tip_m");
  return TubeBeam({0, outer0, outer0 - 2 * Get(in, "wall_butt_m")},
                  {length, outer1, outer1 - 2 * Get(in, "wall_tip_m")}, Get(in, "E_Pa"), 0);
}

std::vector<BeamRing> RingsOf(const Value& in) {
  std::vector<BeamRing> rings;
  for (const Value& guide : in["guides"].GetArray()) rings.push_back({Get(guide, "s_m"), Get(guide, "offset_m"), 0});
  return rings;
}

StrungLoad LoadOf(const Value& in) {
  const std::string_view slip = in["slip"].GetString();
  return {.clamp_angle = Radians(Get(in, "butt_angle_deg")),
          .side = in["side"].GetInt(),
          .reel_s = Get(in, "reel_s_m"),
          .reel_offset = Get(in, "reel_offset_m"),
          .tension = Get(in, "tension_far_N"),
          .far_angle = Radians(Get(in, "far_direction_phi_deg")),
          .friction = Get(in, "friction_mu"),
          .slip = slip == "out"  ? LineSlip::kOut
                  : slip == "in" ? LineSlip::kIn
                                 : LineSlip::kNone};
}

Value RingAnswer(const BeamRing& at, const RingUnderLine& ring, Allocator& allocator) {
  const double c = std::cos(ring.angle), s = std::sin(ring.angle);
  return Fields(allocator)
      .Put("s_m", at.s)
      .Put("offset_m", at.offset)
      .Put("axis_x_m", ring.axis_x)
      .Put("axis_y_m", ring.axis_y)
      .Put("theta_rad", ring.angle)
      .Put("ring_x_m", ring.x)
      .Put("ring_y_m", ring.y)
      .Put("line_in_angle_rad", ring.line_in)
      .Put("line_out_angle_rad", ring.line_out)
      .Put("line_deflection_angle_rad", ring.turn)
      .Put("tension_in_N", ring.tension_in)
      .Put("tension_out_N", ring.tension_out)
      .Put("force_x_N", ring.force_x)
      .Put("force_y_N", ring.force_y)
      .Put("force_magnitude_N", std::hypot(ring.force_x, ring.force_y))
      .Put("force_direction_rad", std::atan2(ring.force_y, ring.force_x))
      .Put("force_tangential_N", ring.force_x * c + ring.force_y * s)
      .Put("force_normal_N", ring.force_y * c - ring.force_x * s)
      .Put("moment_on_axis_Nm", ring.moment_on_axis)
      .Put("rod_moment_before_Nm", ring.moment_before)
      .Put("rod_moment_after_Nm", ring.moment_after)
      .Take();
}

Value SpanAnswer(const LineSpan& span, const Clearance& clearance, Allocator& allocator) {
  return Fields(allocator)
      .Put("length_m", span.length)
      .Put("direction_rad", span.direction)
      .Put("tension_N", span.tension)
      .Put("min_clearance_m", clearance.least)
      .Put("s_of_min_clearance_m", clearance.s)
      .Take();
}

}  // namespace

Value AnswerLineLoad(const Value& entry, Allocator& allocator) {
  const Value& in = entry["input"];
  const Beam beam = BeamOf(in);
  const std::vector<BeamRing> rings = RingsOf(in);
  const StrungLoad load = LoadOf(in);
  const StrungBeam bent = SolveStrungBeam(beam, rings, load);
  if (bent.state != ElasticaState::kSolved) return Value();
  const std::vector<double> outer{Get(in, "od_butt_m"), Get(in, "od_tip_m")};
  const std::vector<Clearance> clearances = ClearancesOf(beam, outer, rings, load, bent);
  const StrungPeaks peaks = PeaksOf(beam, outer, rings, load, bent);
  Value guides(rapidjson::kArrayType), spans(rapidjson::kArrayType);
  double least = HUGE_VAL;
  for (std::size_t k = 0; k < rings.size(); ++k) {
    guides.PushBack(RingAnswer(rings[k], bent.rings[k], allocator), allocator);
    spans.PushBack(SpanAnswer(bent.spans[k], clearances[k], allocator), allocator);
    least = std::min(least, clearances[k].least);
  }
  const double tip_to_line = load.clamp_angle - load.far_angle - bent.tip().angle;
  return Fields(allocator)
      .Put("tip_x_m", bent.tip().x)
      .Put("tip_y_m", bent.tip().y)
      .Put("tip_angle_rad", bent.tip().angle)
      .Put("tip_to_line_angle_rad", std::remainder(tip_to_line, 2 * std::numbers::pi))
      .Put("root_moment_Nm", bent.points.front().moment)
      .Put("max_abs_moment_Nm", peaks.moment)
      .Put("s_of_max_moment_m", peaks.moment_s)
      .Put("max_abs_curvature_per_m", peaks.curvature)
      .Put("s_of_max_curvature_m", peaks.curvature_s)
      .Put("max_abs_outer_fibre_strain", peaks.strain)
      .Put("s_of_max_strain_m", peaks.strain_s)
      .Put("strain_energy_J", bent.strain_energy)
      .Put("line_path_reel_to_tiptop_m", bent.path)
      .Put("tension_at_reel_N", bent.tension_at_reel)
      .Put("min_clearance_m", least)
      .Put("guides", std::move(guides))
      .Put("spans", std::move(spans))
      .Take();
}

}  // namespace withy::reference
