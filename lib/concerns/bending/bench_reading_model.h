// One reading of the bare blank, and what a trial blank would read in its place.
#ifndef WITHY_BENDING_BENCH_READING_MODEL_H_
#define WITHY_BENDING_BENCH_READING_MODEL_H_

#include <map>
#include <optional>
#include <vector>

#include "trial_blank.h"
#include "withy/numerics/elastica.h"

namespace withy::bending {

// A stretch of a section that was on the scales.
struct WeighedPiece {
  int position = 0;             // in Rod::blank.assembled
  double from_m = 0, to_m = 0;  // as supplied
  double start_m = 0;           // of from_m, from the butt end of what was weighed
};

struct ReadingModel {
  ReadingKind kind = ReadingKind::kMass;
  FieldPath at;
  double measured = 0;               // SI, above zero
  double deviation = 0;              // standard, above zero
  std::vector<WeighedPiece> pieces;  // of a mass or a balance point
  // Of a drop or a frequency; metres on the blank as supplied.
  double clamp_m = 0, load_kg = 0, load_at_m = 0, read_at_m = 0;
};

// What a trial blank reads. Bent once for each clamp by its own weight, and kept.
class Bench {
 public:
  explicit Bench(const TrialBlank& blank) : blank_(blank) {}
  // Unset where the blank cannot be loaded like that, or there is no such thing (a place beyond its tip).
  std::optional<double> Read(const ReadingModel& reading);

 private:
  struct Clamped {
    Beam beam;
    Elastica unloaded;
  };
  Clamped* ClampAt(double clamp_m);
  std::optional<double> Drop(const ReadingModel& reading);
  std::optional<double> Frequency(const ReadingModel& reading);

  const TrialBlank& blank_;
  std::map<double, Clamped> clamped_;
};

}  // namespace withy::bending

#endif  // WITHY_BENDING_BENCH_READING_MODEL_H_
