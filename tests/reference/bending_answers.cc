#include "reference/bending_answers.h"

#include <cmath>
#include <cstddef>
#include <functional>
#include <numbers>
#include <string_view>
#include <vector>

#include "reference/fields.h"
#include "support/tube_beam.h"
#include "withy/numerics/elastica.h"
#include "withy/sections/tube.h"

namespace withy::reference {
namespace {

constexpr ElasticaOptions kClose{.tolerance = 1e-12};

double Radians(double degrees) {
  return degrees * std::numbers::pi / 180;
}

double GetOr0(const Value& in, const char* name) {
  return in.HasMember(name) && in[name].IsNumber() ? in[name].GetDouble() : 0;
}

// Length, stiffness and mass per length are one: loads are then those of the cases, which are divided by them.
Beam UniformBeam() {
  return {{{0, 1, {1}, {1}}}, {}};
}

struct Peak {
  double s = 0, value = 0;
};

// The greatest value of f over the shape: among its points, then between the neighbours of that one by thirds.
Peak PeakOf(const Elastica& shape, const std::function<double(double)>& f) {
  std::size_t best = 0;
  for (std::size_t k = 1; k < shape.points.size(); ++k) {
    if (f(shape.points[k].s) > f(shape.points[best].s)) best = k;
  }
  double a = shape.points[best > 0 ? best - 1 : best].s;
  double b = shape.points[best + 1 < shape.points.size() ? best + 1 : best].s;
  while (b - a > 1e-7) {
    const double u = a + (b - a) / 3, v = b - (b - a) / 3;
    (f(u) < f(v) ? a : b) = f(u) < f(v) ? u : v;
  }
  return {(a + b) / 2, f((a + b) / 2)};
}

Value SmallDeflection(const Value& in, Allocator& allocator) {
  const double outer0 = Get(in, "od_butt_m"), outer1 = Get(in, "od_tip_m"), wall = GetOr0(in, "wall_m");
  const Frustum tube{.s0 = 0,
                     .s1 = Get(in, "L_m"),
                     .outer0 = outer0,
                     .outer1 = outer1,
                     .inner0 = wall > 0 ? outer0 - 2 * wall : 0,
                     .inner1 = wall > 0 ? outer1 - 2 * wall : 0};
  const auto compliance = TipComplianceOf({tube}, Shape::kTube, Get(in, "E_Pa"));
  if (!compliance) return Value();
  return Fields(allocator)
      .Put("tip_deflection_m", compliance->deflection_m_per_n * Get(in, "P_N"))
      .Put("tip_slope_rad", compliance->slope_rad_per_n * Get(in, "P_N"))
      .Take();
}

Value LargeDeflection(const Value& in, Allocator& allocator) {
  const double length = Get(in, "L_m"), outer0 = Get(in, "od_butt_m"), outer1 = Get(in, "od_tip_m");
  const bool solid = in["solid"].GetBool();
  const TubeEnd butt{0, outer0, solid ? 0 : outer0 - 2 * Get(in, "wall_butt_m")};
  const TubeEnd tip{length, outer1, solid ? 0 : outer1 - 2 * Get(in, "wall_tip_m")};
  const Beam beam = TubeBeam(butt, tip, Get(in, "E_Pa"), 0);
  const double direction = Radians(Get(in, "force_direction_deg")), force = Get(in, "P_N");
  const Elastica bent = SolveElastica(beam,
                                      {.clamp_angle = Radians(Get(in, "butt_angle_deg")),
                                       .force_x = force * std::cos(direction),
                                       .force_y = force * std::sin(direction)},
                                      kClose);
  if (bent.state != ElasticaState::kSolved) return Value();
  const auto curvature = [&](double s) { return std::abs(bent.At(s).moment) / beam.pieces[0].StiffnessAt(s); };
  const auto strain = [&](double s) { return curvature(s) * (outer0 + (outer1 - outer0) * s / length) / 2; };
  const Peak bend = PeakOf(bent, curvature), stretch = PeakOf(bent, strain);
  return Fields(allocator)
      .Put("tip_x_m", bent.tip().x)
      .Put("tip_y_m", bent.tip().y)
      .Put("tip_angle_rad", bent.tip().angle)
      .Put("root_moment_Nm", bent.points[0].moment)
      .Put("max_abs_curvature_per_m", bend.value)
      .Put("s_of_max_curvature_m", bend.s)
      .Put("max_abs_outer_fibre_strain", stretch.value)
      .Put("s_of_max_strain_m", stretch.s)
      .Put("strain_energy_J", bent.strain_energy)
      .Take();
}

}  // namespace

Value AnswerTipLoad(const Value& entry, Allocator& allocator) {
  const double force = Get(entry["input"], "PL2_over_EI");
  const Elastica bent = SolveElastica(UniformBeam(), {.force_y = -force}, kClose);
  if (bent.state != ElasticaState::kSolved) return Value();
  return Fields(allocator)
      .Put("tip_deflection_over_L", -bent.tip().y)
      .Put("horizontal_shortening_over_L", 1 - bent.tip().x)
      .Put("tip_angle_rad", -bent.tip().angle)
      .Put("root_moment_over_PL", -bent.points[0].moment / force)
      .Take();
}

Value AnswerUniform(const Value& entry, Allocator& allocator) {
  const Value& in = entry["input"];
  const double force = GetOr0(in, "PL2_over_EI");
  ElasticaLoad load{.clamp_angle = Radians(GetOr0(in, "butt_angle_deg")), .moment = GetOr0(in, "ML_over_EI")};
  if (in.HasMember("force_angle_relative_to_tip_tangent_deg")) {
    load.follower = force;
    load.follower_angle = Radians(Get(in, "force_angle_relative_to_tip_tangent_deg"));
  } else if (in.HasMember("force_direction_deg")) {
    load.force_x = force * std::cos(Radians(Get(in, "force_direction_deg")));
    load.force_y = force * std::sin(Radians(Get(in, "force_direction_deg")));
  }
  if (in.HasMember("wL3_over_EI")) {
    load.gravity_x = Get(in, "wL3_over_EI") * std::cos(Radians(Get(in, "gravity_direction_deg")));
    load.gravity_y = Get(in, "wL3_over_EI") * std::sin(Radians(Get(in, "gravity_direction_deg")));
  }
  const Elastica bent = SolveElastica(UniformBeam(), load, kClose);
  if (bent.state != ElasticaState::kSolved) return Value();
  return Fields(allocator)
      .Put("tip_x_over_L", bent.tip().x)
      .Put("tip_y_over_L", bent.tip().y)
      .Put("tip_angle_rad", bent.tip().angle)
      .Put("root_moment_L_over_EI", bent.points[0].moment)
      .Put("strain_energy_L_over_EI", bent.strain_energy)
      .Take();
}

Value AnswerTapered(const Value& entry, Allocator& allocator) {
  const bool small = entry.HasMember("type") && std::string_view(entry["type"].GetString()).starts_with("small");
  return small ? SmallDeflection(entry["input"], allocator) : LargeDeflection(entry["input"], allocator);
}

}  // namespace withy::reference
