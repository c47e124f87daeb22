// Wrapping threads and finishes. A thread's diameter is what its turns take up along the rod.
#include <cmath>
#include <numbers>
#include <utility>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "read_quantity.h"
#include "resolver.h"

namespace withy {
namespace {

// Solid density of the fibre. Nylon 6 and polyester (PET): public tables of plastics. Silk: from memory, 1.25 to 1.37.
// A metallic wrapping thread is a film around a core of nylon or polyester; like any other it is taken as nylon, which
// matters little: all the thread on a rod weighs a gram or two.
struct FiberDensity {
  double kg_m3;
  const char* why;
};
FiberDensity FiberDensityOf(const std::string& material) {
  if (material == "nylon") return {1140, "nylon 6"};
  if (material == "polyester") return {1380, "polyester (PET)"};
  if (material == "silk") return {1300, "silk, from memory"};
  return {1140, "material not known or not listed: as nylon"};
}

// Tex by the letter that sellers print: from memory; letters are not the same everywhere, so that a count of turns over
// 10 mm on a rule is better.
std::optional<double> TexOfLetter(const std::string& letter) {
  struct Row {
    const char* letter;
    double tex;
  };
  for (const Row& row : {Row{"A", 21}, Row{"AA", 30}, Row{"B", 45}, Row{"E", 70}, Row{"F", 90}, Row{"FF", 135}}) {
    if (letter == row.letter) return row.tex;
  }
  return std::nullopt;
}

// A round thread of one tex: 1e-6 kg/m = rho pi/4 d^2.
double DiameterOf(double linear_kg_m, double density_kg_m3) {
  return std::sqrt(4 * linear_kg_m / (std::numbers::pi * density_kg_m3));
}

Maybe<double> LinearDensityFromTex(const v1::Thread& from, const FieldPath& at) {
  if (!from.has_tex() || !(from.tex() > 0) || from.tex() > kLargestMetersOrKilograms) return std::nullopt;
  return Known<double>{from.tex() * 1e-6, std::nullopt, Source::kPlan, at.Field("tex")};
}

Maybe<Length> StatedDiameter(const v1::Thread& from, const FieldPath& at) {
  const double turns = from.turns_per_10_mm();
  if (from.has_turns_per_10_mm() && turns > 1e-3 && turns < kLargestMetersOrKilograms) {
    return Known<Length>{Length::Mm(10 / turns), std::nullopt, Source::kMeasured, at.Field("turns_per_10_mm")};
  }
  Maybe<Length> diameter = ReadLength(from.diameter(), at, "diameter");
  return Positive(diameter) ? diameter : std::nullopt;
}

void FillFromLetter(Resolver& r, const v1::Thread& from, Thread& thread) {
  const auto tex = TexOfLetter(thread.size);
  if (!tex) return;
  const FiberDensity fiber = FiberDensityOf(thread.material);
  thread.linear_density_kg_m = Known<double>{*tex * 1e-6, std::nullopt, Source::kAssumed, thread.at.Field("size")};
  const double diameter = DiameterOf(*tex * 1e-6, fiber.kg_m3);
  thread.diameter = Known<Length>{Length::Meters(diameter), std::nullopt, Source::kAssumed, thread.at.Field("size")};
  r.Assume(thread.at.Field("turns_per_10_mm"), absl::StrFormat("%.0f turns, size %s as %.0f tex", 0.01 / diameter,
                                                               from.size(), *tex),
           "letters of thread sizes, from memory; count the turns over 10 mm on a rule");
}

Thread ReadThread(Resolver& r, const v1::Thread& from, int i) {
  Thread thread;
  thread.id = from.id();
  thread.at = FieldPath().Field("threads").Item(from.id(), i);
  thread.size = from.size();
  thread.material = from.material();
  thread.preserved = from.preserved();
  thread.spool_length = ReadLength(from.spool_length(), thread.at, "spool_length");
  thread.diameter = StatedDiameter(from, thread.at);
  thread.linear_density_kg_m = LinearDensityFromTex(from, thread.at);
  if (!thread.diameter && !thread.linear_density_kg_m) {
    FillFromLetter(r, from, thread);
    return thread;
  }
  if (thread.diameter && thread.linear_density_kg_m) return thread;
  const FiberDensity fiber = FiberDensityOf(thread.material);
  if (!thread.diameter) {
    const double diameter = DiameterOf(thread.linear_density_kg_m->value, fiber.kg_m3);
    thread.diameter = Known<Length>{Length::Meters(diameter), std::nullopt, Source::kComputed, thread.at.Field("tex")};
  } else {
    const double d = thread.diameter->value.meters();
    thread.linear_density_kg_m = Known<double>{fiber.kg_m3 * std::numbers::pi / 4 * d * d, std::nullopt,
                                               Source::kComputed, thread.at.Field("tex")};
  }
  r.Assume(thread.at.Field("material"), absl::StrFormat("%.0f kg/m3 as the density of the thread", fiber.kg_m3), fiber.why);
  return thread;
}

Finish ReadFinish(const v1::Finish& from, int i) {
  Finish finish;
  finish.id = from.id();
  finish.at = FieldPath().Field("finishes").Item(from.id(), i);
  finish.kind = from.kind();
  finish.coats = from.has_coats() && from.coats() <= 1000 ? static_cast<int>(from.coats()) : 1;
  finish.film = ReadLength(from.film(), finish.at, "film");
  finish.beyond_thread = ReadLength(from.beyond_thread(), finish.at, "beyond_thread");
  finish.density_kg_m3 = ReadDensity(from.mix().density(), finish.at.Field("mix"), "density");
  if (from.mix().has_solids() && from.mix().solids() > 0 && from.mix().solids() <= 1) finish.solids = from.mix().solids();
  return finish;
}

}  // namespace

void ResolveThreads(Resolver& r) {
  for (int i = 0; i < r.design.threads_size(); ++i) r.rod.threads.push_back(ReadThread(r, r.design.threads(i), i));
  for (int i = 0; i < r.design.finishes_size(); ++i) r.rod.finishes.push_back(ReadFinish(r.design.finishes(i), i));
}

}  // namespace withy
