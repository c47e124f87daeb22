// Three natural frequencies of a rod of 60 stations and more with twelve masses on it: well below a millisecond, and
// linear in the number of stations.
#include "benchmark/benchmark.h"
#include "support/tube_beam.h"
#include "withy/numerics/modes.h"

namespace {

void BM_ThreeModes(benchmark::State& state) {
  withy::Beam rod =
      withy::TubeBeam({0, 0.0125, 0.0105}, {2.1, 0.002, 0.0011}, 1.1e11, 1550, static_cast<int>(state.range(0)));
  for (int i = 1; i <= 12; ++i) rod.masses.push_back({2.1 * i / 12, 0.001});
  for (auto _ : state) benchmark::DoNotOptimize(withy::ModesOf(rod, 3));
  state.SetComplexityN(state.range(0));
}
BENCHMARK(BM_ThreeModes)->RangeMultiplier(2)->Range(60, 960)->Unit(benchmark::kMicrosecond)->Complexity(benchmark::oN);

}  // namespace

BENCHMARK_MAIN();
