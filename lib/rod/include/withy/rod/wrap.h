// Wrapping threads, finishes, and wraps one by one.
#ifndef WITHY_ROD_WRAP_H_
#define WITHY_ROD_WRAP_H_

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "withy/rod/handle.h"
#include "withy/rod/known.h"

namespace withy {

// A kind of wrapping thread.
struct Thread {
  std::string id;
  FieldPath at;
  std::string size, material;
  bool preserved = false;
  // Across one turn laid beside the next: from turns_per_10_mm, else diameter, else tex and material, else the letter
  // (assumed and listed). Unset = cannot be told.
  Maybe<Length> diameter;
  // Linear density: from tex, else from diameter and the material's density. Unset = cannot be told.
  Maybe<double> linear_density_kg_m;
  Maybe<Length> spool_length;
};

struct Finish {
  std::string id;
  FieldPath at;
  std::string kind;
  int coats = 1;
  Maybe<Length> film;           // of one coat, on the radius
  Maybe<Length> beyond_thread;  // at each end; unset = 0
  Maybe<double> density_kg_m3;  // cured
  double solids = 1;            // share left when dry, 0..1
};

// One wrap on the rod: of an entry that names several guides, one per foot.
struct Wrap {
  std::string id;                // the entry's; several may share it
  FieldPath at;                  // the entry's
  std::string kind;
  std::string on;                // the one thing it is on; empty = the blank
  std::optional<int> foot;       // of a guide: 0 = the butt-side foot, 1 = the tip-side one
  std::string thread;            // id
  int thread_index = -1;         // in Rod::threads; -1 = not there
  std::uint32_t layers = 1;      // as written; 0 and thousands are kept for the checks
  std::optional<std::uint32_t> turns;  // as written
  std::vector<int> coats;        // in Rod::finishes
  bool coats_known = true;       // false: one that is named is not described
  Along start;                   // butt-side edge
  std::optional<Length> length;  // along the rod; unset = cannot be told
  std::optional<Length> high;    // of a ramp: diameter at the high end
  End high_end = End::kUnknown;
  bool over_foot = false;        // lies on a foot of a guide or keeper
};

struct Inscription {
  std::string id;
  FieldPath at;
  Along start;
  Maybe<Length> length;
};

}  // namespace withy

#endif  // WITHY_ROD_WRAP_H_
