#include "clearance.h"

#include <algorithm>
#include <vector>

#include "arbors.h"

namespace withy {
namespace {

// A stretch of the finished rod in which both bore and blank are known.
struct Overlap {
  double from = 0, to = 0;
};

// Of the bore only what was read: between the plugs, or over the whole part.
std::optional<Overlap> KnownOverlap(const Rod& rod, const Part& part, double start, double length) {
  double from = start, to = start + length;
  if (part.bore_known == BoreKnown::kPlugs) {
    from = std::max(from, start + part.bore.begin());
    to = std::min(to, start + part.bore.end());
  }
  from = std::max(from, rod.blank_butt_m->value());
  to = std::min(to, rod.blank_butt_m->value() + rod.blank.length_m->value());
  if (from > to) return std::nullopt;
  return Overlap{from, to};
}

// Bore and blank at every place where one of them bends or jumps, seen from the inside of the overlap.
template <typename Visit>
void VisitPairs(const Profile& bore, const Profile& blank, const Overlap& over, Visit visit) {
  if (over.from == over.to) {
    visit(over.from, bore.At(over.from), blank.At(over.from));
    return;
  }
  std::vector<double> at = {over.from, over.to};
  const auto add = [&](const Profile& profile) {
    const Profile part = profile.Slice(over.from, over.to);
    for (const Profile::Knot& knot : part.knots()) at.push_back(knot.x);
  };
  add(bore);
  add(blank);
  std::sort(at.begin(), at.end());
  at.erase(std::unique(at.begin(), at.end()), at.end());
  for (const double x : at) {
    if (x > over.from) visit(x, bore.At(x, Profile::Limit::kLeft), blank.At(x, Profile::Limit::kLeft));
    if (x < over.to) visit(x, bore.At(x, Profile::Limit::kRight), blank.At(x, Profile::Limit::kRight));
  }
}

void FillClearance(const Rod& rod, const Part& part, double start, double length, const Profile& blank, PartFit& fit) {
  if (part.bore.empty() || !part.on.empty()) return;
  std::optional<Overlap> over = KnownOverlap(rod, part, start, length);
  if (!over) return;
  if (part.bore_known == BoreKnown::kUnknown) return;
  if (part.bore_known == BoreKnown::kMouth) {
    const double mouth = start + length;
    if (mouth > over->to) return;
    over = Overlap{mouth, mouth};
  }
  VisitPairs(part.bore.Shifted(start), blank, *over, [&fit](double x, double bore, double diameter) {
    if (!fit.clearance_m || bore - diameter < *fit.clearance_m) {
      fit.clearance_m = bore - diameter;
      fit.clearance_at_m = x;
    }
    const double stretch = diameter / bore;
    if (!fit.most_stretch || stretch > *fit.most_stretch) fit.most_stretch = stretch;
    if (!fit.least_stretch || stretch < *fit.least_stretch) fit.least_stretch = stretch;
  });
}

}  // namespace

PartFit FitOf(const Rod& rod, const Part& part) {
  PartFit fit;
  fit.arbors.resize(part.arbors.size());
  if (!part.start.from_butt_m || !rod.blank_butt_m || rod.blank.outer.empty()) return fit;
  const double start = part.start.from_butt_m->value();
  const Profile blank = rod.blank.outer.Shifted(rod.blank_butt_m->value());
  for (std::size_t i = 0; i < part.arbors.size(); ++i) fit.arbors[i] = FitOfArbor(rod, part, part.arbors[i], blank);
  fit.blank_at_start_m = rod.BlankDiameterAt(start);
  if (!part.length || !(part.length->value.meters() > 0)) return fit;
  const double length = part.length->value.meters();
  fit.blank_at_tip_side_m = rod.BlankDiameterAt(start + length);
  FillClearance(rod, part, start, length, blank, fit);
  fit.proposed = ProposedArbors(rod, part, blank);
  return fit;
}

}  // namespace withy
