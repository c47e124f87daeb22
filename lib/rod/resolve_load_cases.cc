// The loads that the design asks about, and those that were hung from the line at the bench.
#include <algorithm>
#include <string>
#include <unordered_set>
#include <utility>

#include "read_quantity.h"
#include "resolver.h"

namespace withy {
namespace {

// A weight pulls with standard gravity, so that its uncertainty does too.
Maybe<double> WeightOf(const Maybe<Mass>& mass) {
  if (!mass) return std::nullopt;
  Known<double> weight{mass->value.kilograms() * kStandardGravity, std::nullopt, mass->source, mass->at};
  if (mass->plus_minus) weight.plus_minus = *mass->plus_minus * kStandardGravity;
  return weight;
}

// How the rod is held and which way the line runs: both messages say it in the same fields.
template <typename Message>
LoadCase ReadHeld(const Message& from, FieldPath at, const Maybe<Length>& holding_point) {
  LoadCase load;
  load.at = std::move(at);
  load.butt_angle_deg = ReadAngle(from.butt_angle(), load.at, "butt_angle")
                            .value_or(Known<double>{0, std::nullopt, Source::kPlan, load.at.Field("butt_angle")});
  load.line_angle_deg = ReadAngle(from.line_angle(), load.at, "line_angle");
  load.clamp = ReadLength(from.clamp_from_butt(), load.at, "clamp_from_butt");
  if (!load.clamp) load.clamp = holding_point;
  return load;
}

LoadCase ReadLoadCase(const v1::LoadCase& from, int i, const Maybe<Length>& holding_point) {
  LoadCase load = ReadHeld(from, FieldPath().Field("load_cases").Item(from.id(), i), holding_point);
  load.id = from.id();
  load.load_n = from.has_lifted() ? WeightOf(ReadMass(from.lifted(), load.at, "lifted"))
                                  : ReadForce(from.tension(), load.at, "tension");
  load.at_tip = from.at_tip();
  return load;
}

StaticTest ReadStaticTest(const v1::Entry& entry, const FieldPath& at, const Maybe<Length>& holding_point) {
  const v1::StaticTest& from = entry.static_test();
  StaticTest test;
  test.load = ReadHeld(from, at.Field("static_test"), holding_point);
  test.load.id = entry.id();
  test.load.load_n = WeightOf(ReadMass(from.lifted(), test.load.at, "lifted"));
  test.tip_drop = ReadLength(from.tip_drop(), test.load.at, "tip_drop", Source::kMeasured);
  test.line_touched = from.line_touched();
  test.touched_after.assign(from.touched_after().begin(), from.touched_after().end());
  return test;
}

// The place in the log after which no guide was moved and nothing cut any more; -1 where nothing ever was.
int LastChange(const Resolver& r) {
  std::unordered_set<std::string> guides;
  for (const v1::Guide& guide : r.design.guides()) guides.insert(guide.id());
  int last = -1;
  for (const auto& placed : r.log.placed) {
    if (guides.contains(placed.entry->what())) last = std::max(last, placed.order);
  }
  for (const auto& cut : r.log.cuts) last = std::max(last, cut.order);
  return last;
}

}  // namespace

void ResolveLoadCases(Resolver& r) {
  const FieldPath at = FieldPath().Field("load_cases");
  if (!WithinLimit(r, at, r.design.load_cases_size(), kMostLoadCases, "load cases")) return;
  for (int i = 0; i < r.design.load_cases_size(); ++i) {
    r.rod.load_cases.push_back(ReadLoadCase(r.design.load_cases(i), i, r.rod.order.holding_point));
  }
}

void ResolveStaticTests(Resolver& r) {
  const int last_change = LastChange(r);
  for (const auto& logged : r.log.entries) {
    if (!logged.entry->has_static_test()) continue;
    r.rod.static_tests.push_back(ReadStaticTest(*logged.entry, logged.at, r.rod.order.holding_point));
    r.rod.static_tests.back().outdated = logged.order < last_change;
  }
}

}  // namespace withy
