#include "arbors.h"

#include <algorithm>
#include <cmath>

#include "first_past.h"
#include "withy/fit/span.h"
#include "withy/fit/tape_arbor.h"

namespace withy {
namespace {

// Common practice, no source: 0.1 mm all round between arbor and bore.
constexpr double kArborGap_m = 0.0001;
// On the diameter: 0.5 mm all round is the most that epoxy is said to bridge well (a supplier's advice).
constexpr double kWidestGlue_m = 0.001;
// Common practice, no source: of proposed arbors the width, the pitch, what is kept free at the part's ends for a
// fillet of adhesive, and how even a bore is that counts as straight.
constexpr double kWidth_m = 0.012, kPitch_m = 0.025, kFree_m = 0.005, kStraight_m = 0.0001;
constexpr int kMostOnStraight = 3;
constexpr double kHalfFoot_m = 0.035;  // of a reel's foot (common practice, no source)
constexpr double kSame_m = 1e-8;  // rounding of inches and millimetres

double GapOf(const Part& part) {
  return part.glue_clearance ? std::max(0.0, part.glue_clearance->value.meters()) / 2 : kArborGap_m;
}

bool Positive(const Maybe<Length>& known) {
  return known && known->value.meters() > 0;
}

// What of the bore was read, from the part's own butt end.
std::optional<Span> KnownBore(const Part& part) {
  if (part.bore.empty() || !Positive(part.length)) return std::nullopt;
  if (part.bore_known == BoreKnown::kProfile) return Span{0, part.length->value.meters()};
  if (part.bore_known == BoreKnown::kPlugs) return Span{part.bore.begin(), part.bore.end()};
  return std::nullopt;
}

// Diameters and the place of an arbor from `own_m` of its part.
ArborFit AtPlace(const Rod& rod, const Part& part, double own_m, double length_m, const Profile& blank) {
  ArborFit fit;
  const double from = part.start.from_butt_m->value() + own_m;
  fit.start_m = from;
  fit.length_m = length_m;
  if (rod.BlankDiameterAt(from) && rod.BlankDiameterAt(from + length_m)) fit.blank_m = blank.Max(from, from + length_m);
  const std::optional<Span> known = KnownBore(part);
  if (known && own_m >= known->start && own_m + length_m <= known->end)
    fit.bore_m = part.bore.Min(own_m, own_m + length_m);
  return fit;
}

void Build(const Arbor& arbor, double gap_m, ArborFit& fit) {
  if (arbor.outer) fit.outer_m = arbor.outer->value.meters();
  if (fit.blank_m && *fit.blank_m > 0 && Positive(arbor.tape_thickness) && (fit.outer_m || fit.bore_m)) {
    const double tape_m = arbor.tape_thickness->value.meters();
    const TapeArbor tape = fit.outer_m ? TapeArborOf({*fit.blank_m, *fit.outer_m, tape_m, 0})
                                       : TapeArborOf({*fit.blank_m, *fit.bore_m, tape_m, gap_m});
    fit.turns = tape.turns;
    fit.tape_length_m = tape.tape_length_m;
    if (!fit.outer_m) fit.outer_m = tape.built_m;
  } else if (!fit.outer_m && fit.bore_m && fit.blank_m && *fit.bore_m - 2 * gap_m > *fit.blank_m) {
    fit.outer_m = *fit.bore_m - 2 * gap_m;
  }
  if (fit.outer_m && fit.bore_m) fit.gap_m = (*fit.bore_m - *fit.outer_m) / 2;
}

// The blank enters at the mouth or, of a part that slides on from the tip, at the part's butt-side face; the arbor is
// on it. What is too thick for its own place is told as such.
void LookAtTheWay(const Part& part, double own_m, double length_m, ArborFit& fit) {
  if (!fit.outer_m || !fit.bore_m || *fit.outer_m > *fit.bore_m || part.bore_known != BoreKnown::kProfile) return;
  if (part.reamed || part.fitting != FitKind::kRigid) return;
  const bool from_mouth = part.kind == "one_piece_handle" || part.slides_on_from == End::kButt;
  if (!from_mouth && part.slides_on_from != End::kTip) return;
  const double from = from_mouth ? part.length->value.meters() : 0, edge = from_mouth ? own_m : own_m + length_m;
  fit.binds_at_m = fit::FirstPast(part.bore, from, edge, *fit.outer_m - kSame_m, fit::Past::kBelow);
  if (fit.binds_at_m) fit.held_out_m = std::abs(*fit.binds_at_m - edge);
}

// The longest stretch of the bore, with blank in it, over which it does not change.
std::optional<Span> StraightStretch(const Part& part, const Span& within) {
  if (!(within.start < within.end)) return std::nullopt;
  const Profile bore = part.bore.Slice(within.start, within.end);
  std::optional<Span> longest;
  double least = 0, most = 0, start = 0;
  for (std::size_t i = 0; i < bore.knots().size(); ++i) {
    const Profile::Knot& knot = bore.knots()[i];
    if (i == 0 || std::max(most, knot.y) - std::min(least, knot.y) > kStraight_m) {
      least = most = knot.y;
      start = knot.x;
    }
    least = std::min(least, knot.y);
    most = std::max(most, knot.y);
    if (!longest || knot.x - start > longest->end - longest->start) longest = Span{start, knot.x};
  }
  return longest;
}

class Proposal {
 public:
  Proposal(const Rod& rod, const Part& part, const Profile& blank) : rod_(rod), part_(part), blank_(blank) {}

  void AlongStraight(const Span& run) {
    const double room = run.end - run.start - kWidth_m;
    if (room < 0) return;
    const int count = std::min(kMostOnStraight, static_cast<int>(room / kPitch_m + 1e-9) + 1);
    for (int i = 0; i < count; ++i) {
      const double own_m = run.start + (count == 1 ? room / 2 : room * i / (count - 1));
      Add(own_m, UnderTheScrewThread(own_m) ? ArborFit::Place::kScrewThread : ArborFit::Place::kStraight);
    }
  }
  // Where the blank is loose, and no other arbor is.
  void Add(double own_m, ArborFit::Place place) {
    ArborFit fit = AtPlace(rod_, part_, own_m, kWidth_m, blank_);
    if (!fit.blank_m || !fit.bore_m || *fit.bore_m - *fit.blank_m <= kWidestGlue_m) return;
    for (const ArborFit& other : arbors_) {
      if (std::abs(*other.start_m - *fit.start_m) < kPitch_m - kWidth_m) return;
    }
    fit.place = place;
    Build({}, GapOf(part_), fit);
    arbors_.push_back(fit);
  }
  std::vector<ArborFit> Sorted() {
    std::stable_sort(arbors_.begin(), arbors_.end(),
                     [](const ArborFit& a, const ArborFit& b) { return *a.start_m < *b.start_m; });
    return std::move(arbors_);
  }

 private:
  // The screw thread begins beside the reel's foot, on the side of the moving hood.
  bool UnderTheScrewThread(double own_m) const {
    if (!part_.screw_thread_length || !part_.foot_center) return false;
    const double thread_m = part_.screw_thread_length->value.meters(), foot_m = part_.foot_center->value.meters();
    const double from_m = foot_m - kHalfFoot_m - (part_.fixed_hood == End::kButt ? 0 : thread_m);
    const double to_m = foot_m + kHalfFoot_m + (part_.fixed_hood == End::kTip ? 0 : thread_m);
    return own_m + kWidth_m >= from_m && own_m <= to_m;
  }

  const Rod& rod_;
  const Part& part_;
  const Profile& blank_;
  std::vector<ArborFit> arbors_;
};

}  // namespace

ArborFit FitOfArbor(const Rod& rod, const Part& part, const Arbor& arbor, const Profile& blank) {
  if (!arbor.own_at || !Positive(arbor.length)) return {};
  ArborFit fit = AtPlace(rod, part, arbor.own_at->value.meters(), arbor.length->value.meters(), blank);
  Build(arbor, GapOf(part), fit);
  LookAtTheWay(part, arbor.own_at->value.meters(), arbor.length->value.meters(), fit);
  return fit;
}

std::vector<ArborFit> ProposedArbors(const Rod& rod, const Part& part, const Profile& blank) {
  const bool one_piece = part.kind == "one_piece_handle";
  const bool takes_arbors = one_piece || part.kind == "reel_seat" || part.kind == "grip";
  const std::optional<Span> bore = KnownBore(part);
  if (!takes_arbors || part.fitting != FitKind::kRigid || part.reamed || !part.arbors.empty() || !bore) return {};
  const double start = part.start.from_butt_m->value();
  Span within{std::max({bore->start, kFree_m, blank.begin() - start}),
              std::min({bore->end, part.length->value.meters() - kFree_m, blank.end() - start})};
  Proposal proposal(rod, part, blank);
  if (const auto run = StraightStretch(part, within)) proposal.AlongStraight(*run);
  if (one_piece) {
    if (part.neck) proposal.Add(std::min(part.neck->value.meters(), within.end) - kWidth_m, ArborFit::Place::kNeck);
    proposal.Add(within.start, ArborFit::Place::kRear);
  }
  return proposal.Sorted();
}

}  // namespace withy
