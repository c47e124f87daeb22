// What was read of the bare blank's stiffness at the bench: a weight hung and the drop read, or oscillations counted.
//
//   rod.blank.bench[0].kind                     // kDrop
//   rod.blank.bench[0].load->value.grams()      // 300
//
// Places are metres from the butt end of the blank as supplied: every section whole, nothing cut off.
#ifndef WITHY_ROD_BENCH_READING_H_
#define WITHY_ROD_BENCH_READING_H_

#include <optional>
#include <string>

#include "withy/rod/known.h"

namespace withy {

struct BenchReading {
  enum class Kind { kDrop, kBeat };

  std::string id;
  FieldPath at;
  Kind kind = Kind::kDrop;
  Maybe<Length> clamp;  // tip-side edge
  Maybe<Mass> load;     // hung, or mounted while counting; unset of a beat = nothing mounted
  Maybe<Length> load_at;
  Maybe<Length> read_at;         // of a drop
  Maybe<Length> drop;            // downwards, from the unloaded place of the same point
  std::optional<double> cycles;  // of a beat, whole oscillations
  Maybe<double> time_s;
};

}  // namespace withy

#endif  // WITHY_ROD_BENCH_READING_H_
