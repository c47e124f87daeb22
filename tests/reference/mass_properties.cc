#include "reference/mass_properties.h"

#include <string>
#include <vector>

#include "withy/sections/tube.h"

namespace withy::reference {
namespace {

using rapidjson::Value;
using Allocator = rapidjson::Document::AllocatorType;

double Get(const Value& from, const char* name) { return from.HasMember(name) ? from[name].GetDouble() : 0; }

void Put(Value& to, const char* name, double value, Allocator& allocator) {
  to.AddMember(Value(name, allocator), Value(value), allocator);
}

Value Describe(const MassProperties& p, double pivot, Allocator& allocator) {
  Value answer(rapidjson::kObjectType);
  Put(answer, "mass_kg", p.mass_kg, allocator);
  Put(answer, "cg_from_butt_m", p.Balance(), allocator);
  Put(answer, "cg_offset_m", p.Offset(), allocator);
  Put(answer, "I_butt_kg_m2", p.InertiaAbout(0), allocator);
  Put(answer, "I_cg_kg_m2", p.InertiaAtBalance(), allocator);
  Put(answer, "I_pivot_kg_m2", p.InertiaAbout(pivot), allocator);
  Put(answer, "I_butt_slender_kg_m2", p.ss_kg_m2, allocator);
  Put(answer, "I_axial_kg_m2", p.AxialInertia(), allocator);
  Put(answer, "static_moment_about_pivot_Nm", p.StaticMomentAbout(pivot), allocator);
  return answer;
}

double Inner(double outer, double wall) { return outer - 2 * wall; }

Value SingleTube(const Value& in, Allocator& allocator) {
  const double outer0 = Get(in, "od_butt_m"), outer1 = Get(in, "od_tip_m");
  const Frustum tube{0, Get(in, "L_m"), outer0, outer1, Inner(outer0, Get(in, "wall_butt_m")),
                     Inner(outer1, Get(in, "wall_tip_m"))};
  return Describe(PropertiesOf(tube, Shape::kTube, Get(in, "rho_kg_m3")), Get(in, "pivot_s_m"), allocator);
}

Value StationTable(const Value& in, Allocator& allocator) {
  std::vector<Frustum> frusta;
  const Value& stations = in["stations"];
  const double modulus = Get(in, "E_Pa");
  Value stiffness(rapidjson::kArrayType);
  for (rapidjson::SizeType i = 0; i < stations.Size(); ++i) {
    const double outer = Get(stations[i], "od_m"), inner = Inner(outer, Get(stations[i], "wall_m"));
    stiffness.PushBack(modulus * SecondMomentOf(Shape::kTube, outer, inner), allocator);
    if (i == 0) continue;
    const double before = Get(stations[i - 1], "od_m");
    frusta.push_back({Get(stations[i - 1], "s_m"), Get(stations[i], "s_m"), before, outer,
                      Inner(before, Get(stations[i - 1], "wall_m")), inner});
  }
  Value answer = Describe(PropertiesOf(frusta, Shape::kTube, Get(in, "rho_kg_m3")), Get(in, "pivot_s_m"), allocator);
  answer.AddMember("EI_at_stations_Nm2", stiffness, allocator);
  if (const auto compliance = TipComplianceOf(frusta, Shape::kTube, modulus)) {
    Put(answer, "tip_deflection_small_1N_m", compliance->deflection_m_per_n, allocator);
    Put(answer, "tip_slope_small_1N_rad", compliance->slope_rad_per_n, allocator);
  }
  return answer;
}

Value Assembly(const Value& in, Allocator& allocator) {
  MassProperties sum;
  for (const Value& part : in["components"].GetArray()) {
    const std::string kind = part["kind"].GetString();
    if (kind == "tube") {
      const Frustum tube{Get(part, "s0_m"),  Get(part, "s1_m"),  Get(part, "od0_m"),
                         Get(part, "od1_m"), Get(part, "id0_m"), Get(part, "id1_m")};
      sum += PropertiesOf(tube, Shape::kTube, Get(part, "rho_kg_m3"));
    } else if (kind == "uniform") {
      sum += UniformMass(Get(part, "mass_kg"), Get(part, "s0_m"), Get(part, "s1_m"));
    } else if (kind == "point") {
      sum += PointMass(Get(part, "mass_kg"), Get(part, "s_m"), Get(part, "offset_m"));
    } else {
      return Value();
    }
  }
  return Describe(sum, Get(in, "pivot_s_m"), allocator);
}

}  // namespace

Value AnswerMassProperties(const Value& entry, Allocator& allocator) {
  const std::string type = entry["type"].GetString();
  if (type == "single_tube_linear_od_linear_wall") return SingleTube(entry["input"], allocator);
  if (type == "station_table_piecewise_linear") return StationTable(entry["input"], allocator);
  if (type == "composite_assembly") return Assembly(entry["input"], allocator);
  return Value();
}

}  // namespace withy::reference
