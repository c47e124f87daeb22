// Stretches along the rod, and whether they meet.
//
// Before a dry fit the handle is known from the butt end and the guides on the blank, and the two cannot be compared: a
// comparison is made on an origin that both have, or not at all.
#ifndef WITHY_FIT_SPAN_H_
#define WITHY_FIT_SPAN_H_

#include <optional>
#include <utility>
#include <vector>

#include "withy/rod/rod.h"

namespace withy {

// Metres on one origin, start <= end.
struct Span {
  double start = 0, end = 0;
};

enum class Origin { kFromButt, kOnBlank };

// The origins that things must be compared on: the butt end alone where the blank's place in the handle is known (all
// things then have it), else both.
std::vector<Origin> OriginsOf(const Rod& rod);

// A thing of `length_m` >= 0 that begins at `start`; unset where its place on that origin is not known.
std::optional<Span> SpanOn(Origin origin, const Along& start, double length_m);

// The blank itself; unset where its place or length is not known.
std::optional<Span> BlankOn(Origin origin, const Rod& rod);

// Where two sections come apart: from the end of the one that is seen last to the beginning of the other. Nothing may
// bridge it. Both sides are one point on a joint without a gap. Unset where the joint's place cannot be told.
std::optional<Span> SeamOn(Origin origin, const Rod& rod, const Joint& joint);

// Things that lie in places: an index of the caller's, and where.
struct Placed {
  int index = 0;
  Span span;
};

// How far two things may seem to overlap before anybody is told: a tenth of a millimetre, less than a saw or a pencil
// line takes (common practice, no source).
inline constexpr double kTouch_m = 1e-4;

// For each thing that overlaps one beginning before it: (that one, it). Of several the one that reaches furthest.
// Sorted by place; n log n.
std::vector<std::pair<int, int>> Overlaps(std::vector<Placed> things);

// Answers which of many things lies under a stretch, in log n each.
class SpanIndex {
 public:
  explicit SpanIndex(std::vector<Placed> things);
  // Index of a thing that overlaps `span` by more than kTouch_m; unset where none does.
  std::optional<int> Under(const Span& span) const;

 private:
  std::vector<Placed> things_;  // by start
  std::vector<int> furthest_;   // of those up to here, the position of the one that reaches furthest
};

}  // namespace withy

#endif  // WITHY_FIT_SPAN_H_
