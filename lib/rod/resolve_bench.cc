// Readings of the bare blank's stiffness, as written.
#include <utility>

#include "read_quantity.h"
#include "resolver.h"

namespace withy {
namespace {

constexpr int kMostReadings = 200;

BenchReading ReadDrop(const v1::Drop& from, BenchReading reading) {
  const FieldPath at = reading.at.Field("drop");
  reading.kind = BenchReading::Kind::kDrop;
  reading.load = ReadMass(from.load(), at, "load");
  reading.load_at = ReadLength(from.load_at(), at, "load_at");
  reading.read_at = ReadLength(from.read_at(), at, "read_at");
  reading.drop = ReadLength(from.drop(), at, "drop", Source::kMeasured);
  return reading;
}

BenchReading ReadBeat(const v1::Beat& from, BenchReading reading) {
  const FieldPath at = reading.at.Field("beat");
  reading.kind = BenchReading::Kind::kBeat;
  if (from.has_cycles()) reading.cycles = from.cycles();
  reading.time_s = ReadTime(from.time(), at, "time");
  reading.load = ReadMass(from.mounted(), at, "mounted");
  reading.load_at = ReadLength(from.mounted_at(), at, "mounted_at");
  return reading;
}

}  // namespace

void ResolveBench(Resolver& r) {
  Blank& blank = r.rod.blank;
  const auto& bench = r.design.blank().bench();
  if (!WithinLimit(r, blank.at.Field("bench"), bench.size(), kMostReadings, "readings")) return;
  for (int i = 0; i < bench.size(); ++i) {
    BenchReading reading;
    reading.id = bench[i].id();
    reading.at = blank.at.Field("bench").Item(bench[i].id(), i);
    reading.clamp = ReadLength(bench[i].clamp(), reading.at, "clamp");
    if (bench[i].has_drop())
      blank.bench.push_back(ReadDrop(bench[i].drop(), std::move(reading)));
    else if (bench[i].has_beat())
      blank.bench.push_back(ReadBeat(bench[i].beat(), std::move(reading)));
  }
}

}  // namespace withy
