#include "reference/balance_answers.h"

#include <string_view>
#include <vector>

#include "reference/fields.h"
#include "withy/balance/counterweights.h"
#include "withy/balance/load.h"

namespace withy::reference {
namespace {

MassProperties ItemOf(const Value& item) {
  const std::string_view kind = item["kind"].GetString();
  if (kind == "point") return PointMass(Get(item, "mass_kg"), Get(item, "x_m"), 0);
  const double x0 = Get(item, "x0_m"), x1 = Get(item, "x1_m");
  if (kind == "uniform") return UniformMass(Get(item, "mass_kg"), x0, x1);
  const double od0 = Get(item, "od0_m"), od1 = Get(item, "od1_m"), density = Get(item, "density_kg_m3");
  if (kind == "film") return Film({x0, x1, od0, od1}, Get(item, "thickness_m"), density);
  return Tube({x0, x1, od0, od1, od0 - 2 * Get(item, "wall0_m"), od1 - 2 * Get(item, "wall1_m")}, density);
}

Value Describe(const MassProperties& load, double hold_m, Allocator& allocator) {
  const LoadState state = StateOf(load, hold_m);
  return Fields(allocator)
      .Put("total_mass_kg", state.mass_kg)
      .Put("balance_point_m", state.balance_m)
      .Put("moment_about_hold_Nm", state.moment_n_m)
      .Put("inertia_about_hold_kg_m2", state.inertia_about_hold_kg_m2)
      .Put("inertia_about_balance_point_kg_m2", state.inertia_at_balance_kg_m2)
      .Take();
}

const char* WordOf(CounterweightStatus status) {
  switch (status) {
    case CounterweightStatus::kBalanced: return "balanced";
    case CounterweightStatus::kRoomLimited: return "room_limited";
    case CounterweightStatus::kNoRoom: return "no_room";
    case CounterweightStatus::kButtHeavy: return "already_butt_heavy";
  }
  return "";
}

Value Counterweights(const MassProperties& bare, double hold_m, const Value& in, Allocator& allocator) {
  const CounterweightStack stack({Get(in, "unit_mass_kg"), Get(in, "unit_diameter_m"), Get(in, "unit_length_m")},
                    {.start_m = Get(in, "z0_m"),
                     .length_m = Get(in, "free_length_m"),
                     .diameter_m = Get(in, "bore_diameter_m"),
                     .cover_m = Get(in, "cover_m"),
                     .potting_kg_m3 = Get(in, "potting_density_kg_m3")});
  const CounterweightCount count = CountFor(stack, bare, hold_m);
  Fields fields(allocator);
  fields.Put("side_by_side", stack.side_by_side())
      .Put("n_max_by_room", stack.fit())
      .Put("moment_without_weights_Nm", count.moment_without_n_m)
      .Put("status", WordOf(count.status))
      .Put("n", count.n);
  if (!count.n) return fields.Take();
  MassProperties after = bare;
  after += stack.Units(*count.n);
  after += stack.Potting(*count.n);
  return fields.Put("layers", stack.Layers(*count.n))
      .Put("n_if_potting_ignored", count.n_if_potting_ignored)
      .Put("stack_end_m", stack.EndOf(*count.n))
      .Put("units_mass_kg", stack.Units(*count.n).mass_kg)
      .Put("potting_volume_m3", stack.PottingVolume(*count.n))
      .Put("potting_mass_kg", stack.Potting(*count.n).mass_kg)
      .Put("moment_before_potting_Nm", count.moment_before_potting_n_m)
      .Put("after", Describe(after, hold_m, allocator))
      .Put("moment_after_with_one_more_Nm", count.moment_with_one_more_n_m)
      .Take();
}

}  // namespace

Value AnswerBalance(const Value& entry, Allocator& allocator) {
  const Value& in = entry["input"];
  const double hold_m = Get(in, "hold_x_m");
  MassProperties load;
  std::vector<double> masses;
  for (const Value& item : in["items"].GetArray()) {
    const MassProperties one = ItemOf(item);
    masses.push_back(one.mass_kg);
    load += one;
  }
  Fields fields(allocator);
  fields.Put("bare", Describe(load, hold_m, allocator)).Put("item_mass_kg", masses);
  if (in.HasMember("counterweights")) {
    fields.Put("counterweights", Counterweights(load, hold_m, in["counterweights"], allocator));
  }
  return fields.Take();
}

}  // namespace withy::reference
