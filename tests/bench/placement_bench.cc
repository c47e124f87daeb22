// A whole placement: nine guides under three loads, on a rod of so many stations, with gaps that never grow and without
// that rule. Counters: `solves` of one load each (the goal is at most 600), and how many plane elasticas with a tip
// load alone the whole takes, of the same rod, to the same accuracy, in the same run. The goal for the whole is half a
// second.
#include <benchmark/benchmark.h>

#include <ctime>
#include <numbers>

#include "support/tube_beam.h"
#include "withy/guides/placement.h"
#include "withy/numerics/elastica.h"

namespace withy {
namespace {

// A tube of 2.7 m, guides underneath; invented.
PlacementProblem NineGuides(int pieces) {
  constexpr TubeEnd kButt{0, 0.0098, 0.0083}, kTip{2.7, 0.0017, 0.0010};
  constexpr double kAcross = std::numbers::pi / 2;
  PlacementProblem problem;
  problem.beam = TubeBeam(kButt, kTip, 1.3e11, 0, pieces);
  for (const BeamPiece& piece : problem.beam.pieces) {
    for (const double s : {piece.s0, piece.s1}) {
      problem.outer_m.push_back(kButt.outer + (kTip.outer - kButt.outer) * s / kTip.s);
    }
  }
  problem.side = -1;
  problem.reel_s_m = -0.2;
  problem.reel_offset_m = 0.05;
  problem.offsets_m = {0.014, 0.011, 0.009, 0.0075, 0.0065, 0.006, 0.0055, 0.005, 0.0045};
  problem.tip_offset_m = 0.004;
  problem.first_low_m = 0.6;
  problem.first_high_m = 0.85;
  problem.last_high_m = 2.66;
  problem.least_gaps_m.assign(9, 0.04);
  problem.cases = {
      {"light", 1.5, kAcross, 0, 1, 0.0}, {"middle", 3.5, kAcross, 0, 1, 0.0}, {"heavy", 5, 2.1, 0, 1, 0.0}};
  return problem;
}

double ProcessorSeconds() {
  return static_cast<double>(std::clock()) / CLOCKS_PER_SEC;
}

double SecondsOfOneElastica(const Beam& beam) {
  constexpr int kTimes = 200;
  const double start = ProcessorSeconds();
  for (int i = 0; i < kTimes; ++i) benchmark::DoNotOptimize(SolveElastica(beam, {.force_y = -3.5}));
  return (ProcessorSeconds() - start) / kTimes;
}

void BM_PlaceGuides(benchmark::State& state) {
  PlacementProblem problem = NineGuides(static_cast<int>(state.range(0)));
  problem.gaps_never_grow = state.range(1) != 0;
  Placement found;
  const double start = ProcessorSeconds();
  for (auto _ : state) found = PlaceGuides(problem);
  const double seconds = (ProcessorSeconds() - start) / static_cast<double>(state.iterations());
  if (!found.feasible) state.SkipWithError(found.why.c_str());
  state.counters["solves"] = found.solves;
  state.counters["elasticas"] = seconds / SecondsOfOneElastica(problem.beam);
}
BENCHMARK(BM_PlaceGuides)
    ->ArgsProduct({{12, 48, 192}, {0, 1}})
    ->ArgNames({"stations", "never_grow"})
    ->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace withy

BENCHMARK_MAIN();
