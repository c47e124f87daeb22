// A rod under a line through ten rings. Cold is the whole way from a slack line; Warm a solution nearby with all slopes
// and clearances, as the placing of guides asks for again and again. Counters of Cold: processor time over that of the
// elastica of the same rod with one force on its end, to the same tolerance in the same run, and Newton's steps.
// ByPiece and ByRing: BigO says how the cost grows.
#include <benchmark/benchmark.h>

#include <cmath>
#include <ctime>
#include <numbers>
#include <vector>

#include "support/tube_beam.h"
#include "withy/numerics/elastica.h"
#include "withy/numerics/strung_beam.h"

namespace withy {
namespace {

constexpr double kLength = 2.1, kTension = 20;
constexpr TubeEnd kButt{0, 0.0125, 0.0105}, kTip{kLength, 0.002, 0.0011};

// Invented: a tube tapering six to one, rings closer and lower towards its tip.
struct Strung {
  Beam beam;
  std::vector<double> outer_m;
  std::vector<BeamRing> rings;
  StrungLoad load{.reel_s = -0.12, .reel_offset = 0.034, .tension = kTension, .far_angle = std::numbers::pi / 2};
};

Strung Rod(int pieces, int rings) {
  Strung rod;
  rod.beam = TubeBeam(kButt, kTip, 110e9, 1500, pieces);
  for (int i = 0; i < pieces; ++i) {
    for (int end : {i, i + 1})
      rod.outer_m.push_back(std::lerp(kButt.outer, kTip.outer, static_cast<double>(end) / pieces));
  }
  for (int k = 1; k <= rings; ++k) {
    const double left = 1 - static_cast<double>(k) / rings;
    rod.rings.push_back({kLength * (1 - 0.8 * std::pow(left, 1.4)), 0.005 + 0.012 * left * left, 0});
  }
  rod.rings.back().s = kLength;
  return rod;
}

template <typename Work>
double SecondsOf(const Work& work) {
  constexpr int kRounds = 2000;
  const std::clock_t start = std::clock();
  for (int k = 0; k < kRounds; ++k) work();
  return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC / kRounds;
}

void Cold(benchmark::State& state) {
  const Strung rod = Rod(static_cast<int>(state.range(0)), 10);
  const auto solve = [&] { return SolveStrungBeam(rod.beam, rod.rings, rod.load); };
  for (auto _ : state) benchmark::DoNotOptimize(solve());
  const double strung = SecondsOf([&] { benchmark::DoNotOptimize(solve()); });
  const double dead = SecondsOf([&] { benchmark::DoNotOptimize(SolveElastica(rod.beam, {.force_y = -kTension})); });
  state.counters["times_elastica"] = strung / dead;
  state.counters["newton_steps"] = solve().newton_steps;
}
BENCHMARK(Cold)->Arg(1)->Arg(15)->Arg(57)->Arg(200)->Unit(benchmark::kMicrosecond);

void Warm(benchmark::State& state) {
  const Strung rod = Rod(57, 10);
  const StrungBeam near = SolveStrungBeam(rod.beam, rod.rings, rod.load);
  Strung moved = rod;
  for (std::size_t k = 0; k < 9; ++k) moved.rings[k].s += k % 2 == 0 ? 0.005 : -0.005;
  for (auto _ : state) {
    const StrungBeam bent = SolveStrungBeam(moved.beam, moved.rings, moved.load, {.near = &near, .points = false});
    benchmark::DoNotOptimize(SlopesOf(moved.beam, moved.rings, moved.load, bent));
    benchmark::DoNotOptimize(ClearancesOf(moved.beam, moved.outer_m, moved.rings, moved.load, bent, true));
  }
}
BENCHMARK(Warm)->Unit(benchmark::kMicrosecond);

void ByPiece(benchmark::State& state) {
  const Strung rod = Rod(static_cast<int>(state.range(0)), 10);
  for (auto _ : state) benchmark::DoNotOptimize(SolveStrungBeam(rod.beam, rod.rings, rod.load));
  state.SetComplexityN(state.range(0));
}
BENCHMARK(ByPiece)->RangeMultiplier(2)->Range(32, 1024)->Unit(benchmark::kMicrosecond)->Complexity();

void ByRing(benchmark::State& state) {
  const Strung rod = Rod(1, static_cast<int>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(SolveStrungBeam(rod.beam, rod.rings, rod.load));
  state.SetComplexityN(state.range(0));
}
BENCHMARK(ByRing)->RangeMultiplier(2)->Range(4, 128)->Unit(benchmark::kMicrosecond)->Complexity();

}  // namespace
}  // namespace withy

BENCHMARK_MAIN();
