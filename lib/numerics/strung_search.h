// The least value of a function along arcs of a bent beam.
#ifndef WITHY_LIB_NUMERICS_STRUNG_SEARCH_H_
#define WITHY_LIB_NUMERICS_STRUNG_SEARCH_H_

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

#include "strung_section.h"

namespace withy {

struct LeastOnArc {
  double value = HUGE_VAL;
  std::size_t arc = 0;
  double t = 0;
};

// Of f(arc, t) over [a, b], smooth and with one least value there: the section is cut in golden ratio (Kiefer 1953), as
// far as values can be told apart.
template <typename Function>
LeastOnArc LeastBetween(const Function& f, std::size_t arc, double a, double b) {
  constexpr double kGolden = 0.6180339887498949, kEnough = 1e-8;
  double u = b - kGolden * (b - a), v = a + kGolden * (b - a), at_u = f(arc, u), at_v = f(arc, v);
  while (b - a > kEnough) {
    if (at_u < at_v) {
      b = v, v = u, at_v = at_u;
      at_u = f(arc, u = b - kGolden * (b - a));
    } else {
      a = u, u = v, at_u = at_v;
      at_v = f(arc, v = a + kGolden * (b - a));
    }
  }
  return at_u < at_v ? LeastOnArc{at_u, arc, u} : LeastOnArc{at_v, arc, v};
}

// f is smooth within each arc. Looked at `samples` times or more in a part of the beam as long as all arcs together,
// then searched wherever it could go lower than the lowest of that.
template <typename Function>
LeastOnArc LeastAlong(const std::vector<BendArc>& arcs, int samples, const Function& f) {
  struct Look {
    std::size_t arc;
    double t, value;
  };
  double length = 0;
  for (const BendArc& arc : arcs) length += arc.length;
  std::vector<Look> looks;
  LeastOnArc least;
  for (std::size_t k = 0; k < arcs.size(); ++k) {
    const int parts = std::max(2, static_cast<int>(std::ceil(samples * arcs[k].length / length)));
    for (int part = 0; part <= parts; ++part) {
      const double t = static_cast<double>(part) / parts;
      looks.push_back({k, t, f(k, t)});
      if (looks.back().value < least.value) least = {looks.back().value, k, t};
    }
  }
  const double lowest = least.value;
  for (std::size_t i = 0; i + 2 < looks.size(); ++i) {
    const Look &a = looks[i], &m = looks[i + 1], &b = looks[i + 2];
    if (a.arc != b.arc) continue;
    // Three looks at a curve that bends one way: it goes no lower than the middle by more than the ends rise above it.
    const bool valley = m.value <= a.value && m.value <= b.value;
    const bool starts = a.t == 0 && a.value < m.value, ends = b.t == 1 && b.value < m.value;
    const double spread = std::max({a.value, m.value, b.value}) - std::min({a.value, m.value, b.value});
    if (!(valley || starts || ends) || std::min({a.value, m.value, b.value}) - spread > lowest) continue;
    const LeastOnArc found = LeastBetween(f, a.arc, ends ? m.t : a.t, starts ? m.t : b.t);
    if (found.value < least.value) least = found;
  }
  return least;
}

}  // namespace withy

#endif  // WITHY_LIB_NUMERICS_STRUNG_SEARCH_H_
