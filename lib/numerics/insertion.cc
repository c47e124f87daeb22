#include "withy/numerics/insertion.h"

#include <algorithm>
#include <limits>
#include <utility>

#include "insertion_pairs.h"

namespace withy {
namespace {

std::vector<Insertion::Piece> PiecesOf(const Profile& profile) {
  std::vector<Insertion::Piece> pieces;
  const auto& knots = profile.knots();
  for (size_t i = 1; i < knots.size(); ++i) {
    if (knots[i].x - knots[i - 1].x <= Insertion::kPositionTie) continue;  // a jump
    pieces.push_back({knots[i - 1].x, knots[i].x, knots[i - 1].y, knots[i].y});
  }
  return pieces;
}

}  // namespace

Insertion::Insertion(Setup setup)
    : bore_(std::move(setup.bore)),
      shaft_(std::move(setup.shaft)),
      clearance_(setup.clearance),
      stop_(setup.stop),
      bore_pieces_(PiecesOf(bore_)),
      shaft_pieces_(PiecesOf(shaft_)) {
  double narrowest = std::numeric_limits<double>::infinity();
  for (const Piece& piece : bore_pieces_) {
    narrowest = std::min({narrowest, piece.at_lo, piece.at_hi});
    narrowest_behind_.push_back(narrowest);
  }
}

// The largest z - s. What lies below `floor` may come out lower than it is.
double Insertion::ReachAt(double cut, double by, Count count, double floor) const {
  double reach = kNoReach;
  ForEachPair(cut, by, count, floor, [&](const ContactPair& pair) {
    reach = std::max(reach, pair.Reach());
    floor = std::max(floor, reach);
  });
  return reach;
}

double Insertion::ReachAt(double cut) const {
  return ReachAt(cut, 0, Count::kInterfering, stop_ - cut - 2 * kPositionTie);
}

double Insertion::RestAt(double cut) const {
  return std::max(stop_, cut + ReachAt(cut));
}

double Insertion::LengthAt(double cut) const {
  return std::max(stop_ - cut, ReachAt(cut)) + shaft_.end();
}

double Insertion::LengthBefore(double cut) const {
  double reach = std::max(stop_ - cut, ReachAt(cut));
  ForEachEdgeBelow(cut, [&](const ContactPair::Edge& edge) { reach = std::max(reach, edge.reach); });
  return reach + shaft_.end();
}

Insertion Insertion::Thicker(double by) const {
  Insertion thicker = *this;
  thicker.clearance_ += by;
  return thicker;
}

// The stop gives one bound, the last point of the shaft that would be held too far ahead gives the other.
std::optional<double> Insertion::CutFor(double length) const {
  const double reach = length - shaft_.end();
  double cut = std::max(0.0, stop_ - reach);
  for (auto piece = shaft_pieces_.rbegin(); piece != shaft_pieces_.rend() && piece->hi > cut; ++piece) {
    bool held = false;
    ForEachBorePiece(*piece, 0, Count::kInterfering, reach, [&](const ContactPair& pair) {
      const auto farthest = pair.FarthestAbove(reach);
      if (!farthest) return;
      cut = std::max(cut, *farthest);
      held = true;
    });
    if (held) break;
  }
  if (!(cut < shaft_.end())) return std::nullopt;
  return cut;
}

std::optional<double> Insertion::LeastCut(double length) const {
  const auto tie = CutFor(length + kPositionTie);
  if (!tie || *tie == 0) return tie;
  // The tie may come far too early where the length hardly falls, so the least cut up to rounding goes first. Where
  // that one lies beyond a jump there is the tie alone.
  constexpr double kRounding = 1e-13;
  const auto exact = CutFor(length + kRounding);
  return exact && LengthAt(*exact) >= length - kPositionTie ? exact : tie;
}

}  // namespace withy
