// What the steps of resolve share: the design they read, the log that counts, and the rod they fill in.
//
// The steps run in the order below; each is one file and uses only what the steps before it have filled in.
#ifndef WITHY_ROD_RESOLVER_H_
#define WITHY_ROD_RESOLVER_H_

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "bench_log.h"
#include "withy/rod/rod.h"

namespace withy {

// How many counterweights are potted in a part since an entry of the log: the latest that counts says it, 0 = open again.
struct PottedSince {
  int order = 0;
  std::string part;
  std::uint32_t count = 0;
};

struct Resolver {
  const v1::Design& design;
  BenchLog log;
  Rod& rod;
  // Place in the log of the glue-up that holds the blank in its handle; unset = it is open.
  std::optional<int> host_glued = std::nullopt;
  std::vector<PottedSince> potted = {};  // oldest first

  void Assume(FieldPath at, std::string used, std::string why) {
    rod.assumptions.push_back({std::move(at), std::move(used), std::move(why)});
  }
  void CannotTellFigure(std::string figure, std::string measure) {
    rod.unknowns.push_back({std::move(figure), std::move(measure)});
  }
  // An independent input of a first-order figure, in metres; a length that says no uncertainty counts as exact.
  Uncertain Input(const Known<Length>& length) {
    return rod.inputs.Add(length.value.meters(), length.plus_minus.value_or(0), length.at.ToString());
  }
};

// Real rods have a dozen sections and parts, and some dozens of guides and wraps. Beyond these nothing is worked out of
// that list (rod/too-many): uncertainty is carried along the chain of all of them.
inline constexpr int kMostSections = 64;
inline constexpr int kMostParts = 1000;
inline constexpr int kMostGuides = 2000;
inline constexpr int kMostWraps = 20000;
inline constexpr int kMostCoats = 32;
inline constexpr int kMostLoadCases = 32;

// False, with a finding, where `count` is beyond `most`.
bool WithinLimit(Resolver& r, const FieldPath& at, std::size_t count, int most, const char* what);

void ResolveOrder(Resolver& r);      // intent
void ResolveLoadCases(Resolver& r);  // load_cases
void ResolveStaticTests(Resolver& r);  // log
void ResolveBonds(Resolver& r);      // adhesives, shop
void ResolveHandle(Resolver& r);     // each part, without its place
void ReadClosed(Resolver& r);        // what the log has closed
void ResolveSections(Resolver& r);   // each section and its cuts
void ResolveBench(Resolver& r);      // readings of its stiffness
void AssembleBlank(Resolver& r);     // joints, length, outer profile
void ResolveGuides(Resolver& r);     // each guide and the tip-top, without place
void ResolveThreads(Resolver& r);    // wrapping threads and finishes
void ResolveWraps(Resolver& r);      // one by one, without place
void ResolveWeighings(Resolver& r);  // masses from the log
void ResolvePlaces(Resolver& r);     // where the blank comes to rest, then everything along the rod

}  // namespace withy

#endif  // WITHY_ROD_RESOLVER_H_
