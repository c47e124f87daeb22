// One large deflection of a three-section rod with 20 stations to a section, its free end good to 1e-8 m:
// Solve is the library's time, and the counters say how many times that solve_bvp of SciPy takes for the same case to
// the same accuracy in the same run (see solve_bvp.py: "straight" as the library starts, "helped" with derivatives and
// an answer to start from). Both are processor time. Without SciPy the counters are missing, and the reason is printed.
// BySection has 5 to 80 stations to a section: BigO says how the cost grows.
#include <benchmark/benchmark.h>

#include <cmath>
#include <cstdlib>
#include <ctime>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "rapidjson/document.h"
#include "rapidjson/stringbuffer.h"
#include "rapidjson/writer.h"
#include "support/tube_beam.h"
#include "withy/numerics/elastica.h"

namespace withy {
namespace {

constexpr double kModulus = 38e9, kDensity = 1500, kAccuracy = 1e-8;
constexpr ElasticaLoad kLoad{.clamp_angle = 0.7, .force_y = -8, .gravity_y = -9.80665};

// Solid sections of 0.7 m whose diameter steps at the joints and waves by a hundredth; invented.
std::vector<std::vector<TubeEnd>> Sections(int stations) {
  constexpr double kEnds[3][2] = {{0.012, 0.009}, {0.0082, 0.0052}, {0.0047, 0.0018}};
  std::vector<std::vector<TubeEnd>> sections(3);
  for (std::size_t j = 0; j < 3; ++j) {
    for (int k = 0; k < stations; ++k) {
      const double t = static_cast<double>(k) / (stations - 1), s = 0.7 * (static_cast<double>(j) + t);
      sections[j].push_back({s, std::lerp(kEnds[j][0], kEnds[j][1], t) * (1 + 0.01 * std::sin(9 * s)), 0});
    }
  }
  return sections;
}

Beam Rod(int stations) {
  Beam beam;
  for (const auto& section : Sections(stations)) {
    for (std::size_t k = 0; k + 1 < section.size(); ++k) {
      beam.pieces.push_back(TubePiece(section[k], section[k + 1], kModulus, kDensity));
    }
  }
  return beam;
}

std::string CaseFile(int stations) {
  const Elastica exact = SolveElastica(Rod(stations), kLoad, {.tolerance = 1e-12});
  rapidjson::StringBuffer buffer;
  rapidjson::Writer<rapidjson::StringBuffer> writer(buffer);
  const auto put = [&](const char* name, double value) {
    writer.Key(name);
    writer.Double(value);
  };
  writer.StartObject();
  writer.Key("sections");
  writer.StartArray();
  for (const auto& section : Sections(stations)) {
    writer.StartArray();
    for (const TubeEnd& station : section) {
      writer.StartArray();
      writer.Double(station.s);
      writer.Double(station.outer);
      writer.EndArray();
    }
    writer.EndArray();
  }
  writer.EndArray();
  put("modulus", kModulus);
  put("density", kDensity);
  put("force_y", kLoad.force_y);
  put("gravity_y", kLoad.gravity_y);
  put("clamp_angle", kLoad.clamp_angle);
  put("tip_x", exact.tip().x);
  put("tip_y", exact.tip().y);
  put("tip_angle", exact.tip().angle);
  put("accuracy", kAccuracy);
  writer.EndObject();
  return buffer.GetString();
}

// What solve_bvp.py prints about the case. Null where it cannot run.
rapidjson::Document SolveBvp(int stations) {
  const std::string stem = WITHY_BINARY_DIR "/elastica_bench";
  std::ofstream(stem + ".case.json") << CaseFile(stations);
  const std::string command = WITHY_SCIPY_PYTHON " '" WITHY_SOURCE_DIR "/tests/bench/solve_bvp.py' '" + stem +
                              ".case.json' > '" + stem + ".answer.json'";
  rapidjson::Document answer;
  if (std::system(command.c_str()) != 0) return answer;
  std::ifstream stream(stem + ".answer.json");
  const std::string text{std::istreambuf_iterator<char>(stream), {}};
  if (answer.Parse(text.c_str()).HasParseError()) answer.SetNull();
  return answer;
}

double SecondsOfOne(const Beam& beam, const ElasticaOptions& options) {
  constexpr int kRounds = 2000;
  const std::clock_t start = std::clock();
  for (int k = 0; k < kRounds; ++k) benchmark::DoNotOptimize(SolveElastica(beam, kLoad, options));
  return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC / kRounds;
}

void Solve(benchmark::State& state) {
  constexpr int kStations = 20;
  const Beam beam = Rod(kStations);
  const ElasticaOptions options{.tolerance = kAccuracy / beam.length()};
  for (auto _ : state) benchmark::DoNotOptimize(SolveElastica(beam, kLoad, options));
  static const rapidjson::Document bvp = SolveBvp(kStations);
  static const double seconds = SecondsOfOne(beam, options);
  for (const char* way : {"straight", "helped"}) {
    if (!bvp.IsObject() || !bvp[way].IsObject()) continue;
    state.counters[std::string("solve_bvp_") + way + "_ms"] = 1e3 * bvp[way]["seconds"].GetDouble();
    state.counters[std::string("times_") + way] = bvp[way]["seconds"].GetDouble() / seconds;
  }
}
BENCHMARK(Solve)->Unit(benchmark::kMicrosecond);

void BySection(benchmark::State& state) {
  const Beam beam = Rod(static_cast<int>(state.range(0)));
  const ElasticaOptions options{.tolerance = kAccuracy / beam.length()};
  for (auto _ : state) benchmark::DoNotOptimize(SolveElastica(beam, kLoad, options));
  state.SetComplexityN(3 * state.range(0));
}
BENCHMARK(BySection)->RangeMultiplier(2)->Range(5, 80)->Unit(benchmark::kMicrosecond)->Complexity();

}  // namespace
}  // namespace withy

BENCHMARK_MAIN();
