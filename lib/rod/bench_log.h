// The log, read once: what counts after corrections, in order, told apart by kind.
#ifndef WITHY_ROD_BENCH_LOG_H_
#define WITHY_ROD_BENCH_LOG_H_

#include <string>
#include <vector>

#include "withy/document/document.h"
#include "withy/rod/rod.h"

namespace withy {

// One entry that counts. `order` is its place in the log, or that of the entry it stands instead of, so that one can tell
// what came before a dry fit.
template <typename Message>
struct Logged {
  int order = 0;
  const Message* entry = nullptr;
  FieldPath at;  // of the entry's content: log[3].cut
};

struct BenchLog {
  std::vector<Logged<v1::Entry>> entries;  // all, like the lists below in their order; `at` is that of the entry
  std::vector<Logged<v1::Cut>> cuts;
  std::vector<Logged<v1::Fit>> fits;
  std::vector<Logged<v1::Weighed>> weighings;
  std::vector<Logged<v1::Calipered>> calipered;
  std::vector<Logged<v1::Placed>> placed;
  std::vector<Logged<v1::Breakage>> breakages;
  std::vector<Logged<v1::Done>> repairs, reamings;
  std::vector<Logged<v1::Glued>> glued;
  std::vector<FieldPath> not_understood;  // entries that may be a cut for all that is known
  std::vector<FieldPath> misdirected_corrections;  // what they name is not an earlier entry: without effect
};

BenchLog ReadLog(const Document& document);

}  // namespace withy

#endif  // WITHY_ROD_BENCH_LOG_H_
