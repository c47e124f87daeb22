// A rod for logs, and random entries about it: what a bench writes, in any order, with slips and nonsense among them.
//
//   RandomLog entries(/*seed=*/7);
//   v1::Design design = ...;  // kRodForLogs, read
//   entries.AppendTo(design);
//
// The same seed gives the same entries on any machine. Values may be negative, huge, infinite or not a number, and name
// what is not there; no entry of an unknown kind is made.
#ifndef WITHY_TESTS_SUPPORT_RANDOM_LOG_H_
#define WITHY_TESTS_SUPPORT_RANDOM_LOG_H_

#include <cstdint>
#include <initializer_list>
#include <random>
#include <string>

#include "withy/v1/design.pb.h"

namespace withy {

// Two sections of 1.2 and 1.0 m in a one-piece handle with cap and counterweights, two guides, a tip-top, two wraps.
// Invented.
extern const char kRodForLogs[];

class RandomLog {
 public:
  explicit RandomLog(std::uint64_t seed) : random_(seed) {}

  v1::Entry& AppendTo(v1::Design& design);
  std::uint64_t Below(std::uint64_t n) { return random_() % n; }

 private:
  bool Chance(double probability) { return static_cast<double>(random_() >> 11) * 0x1p-53 < probability; }
  double Between(double low, double high) { return low + (high - low) * (static_cast<double>(random_() >> 11) * 0x1p-53); }
  std::string OneOf(std::initializer_list<const char*> words) { return *(words.begin() + Below(words.size())); }
  std::string AnyId();
  double Nonsense();
  void SetMm(v1::Length* length, double low, double high);

  void Cut(v1::Cut* cut);
  void Fit(v1::Fit* fit);
  void Done(v1::Done* done);
  void Other(v1::Entry* entry);

  std::mt19937_64 random_;
};

}  // namespace withy

#endif  // WITHY_TESTS_SUPPORT_RANDOM_LOG_H_
