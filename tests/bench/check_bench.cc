// The cost of checking one design grows linearly with its taper table, up to 10,000 stations: Google Benchmark fits the
// order itself and prints it as BigO. A log-log slope near 1, as `ns_per_station` staying level, is the same thing said
// without a fit.
#include <benchmark/benchmark.h>

#include <string>

#include "withy/document/document.h"
#include "withy/review/review.h"

namespace withy {
namespace {

// A one-piece blank of 2 m from 13 mm to 2 mm, read at `stations` places; invented.
std::string DesignWithStations(int stations) {
  v1::Design design;
  design.set_format("withy/1");
  v1::Section* section = design.mutable_blank()->add_sections();
  section->set_id("blank");
  section->set_shape("tube");
  section->set_material("carbon");
  section->mutable_length()->set_mm(2000);
  section->mutable_taper()->mutable_reading()->set_source(v1::Source::MEASURED);
  section->mutable_taper()->mutable_reading()->mutable_diameter_plus_minus()->set_mm(0.02);
  for (int i = 0; i < stations; ++i) {
    const double share = static_cast<double>(i) / (stations - 1);
    v1::Station* station = section->mutable_taper()->add_stations();
    station->mutable_at()->set_mm(2000 * share);
    station->mutable_outer()->set_mm(13 - 11 * share);
    station->mutable_wall()->set_mm(1.1 - 0.6 * share);
  }
  return WriteDesign(design, Form::kText);
}

void BM_Check(benchmark::State& state) {
  const std::string bytes = DesignWithStations(static_cast<int>(state.range(0)));
  for (auto _ : state) {
    ReadResult read = ReadDesign("bench.txtpb", bytes);
    Review review = ReviewDesign(read);
    benchmark::DoNotOptimize(review);
  }
  state.SetComplexityN(state.range(0));
  state.counters["ns_per_station"] = benchmark::Counter(
      static_cast<double>(state.range(0)), benchmark::Counter::kIsIterationInvariantRate | benchmark::Counter::kInvert);
}
BENCHMARK(BM_Check)->RangeMultiplier(10)->Range(10, 10'000)->Complexity(benchmark::oN)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace withy

BENCHMARK_MAIN();
