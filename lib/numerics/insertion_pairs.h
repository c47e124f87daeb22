// Walks the pairs of pieces that can matter, the nearest to the mouth first, and leaves off where none can any more.
#ifndef WITHY_NUMERICS_INSERTION_PAIRS_H_
#define WITHY_NUMERICS_INSERTION_PAIRS_H_

#include <algorithm>
#include <cmath>

#include "contact_pair.h"
#include "withy/numerics/insertion.h"

namespace withy {

// visit(pair) of every bore piece that counts against this piece of the shaft and can reach `floor`; it may raise
// `floor`.
template <typename Visit>
void Insertion::ForEachBorePiece(const Piece& shaft, double by, Count count, const double& floor, Visit visit) const {
  const auto counts = [&](double diameter) {
    const double interference = std::max(shaft.at_lo, shaft.at_hi) + clearance_ + by - diameter;
    return count == Count::kTouching ? interference >= -kDiameterTie : interference > kDiameterTie;
  };
  for (size_t i = bore_pieces_.size(); i-- > 0;) {
    const Piece& bore = bore_pieces_[i];
    if (bore.hi - shaft.lo < floor || !counts(narrowest_behind_[i])) return;
    if (counts(std::min(bore.at_lo, bore.at_hi))) visit(ContactPair(shaft, bore, clearance_ + by));
  }
}

// The same for the whole shaft after the cut. What is left of a piece that ends within a tie of the cut is passed over.
template <typename Visit>
void Insertion::ForEachPair(double cut, double by, Count count, const double& floor, Visit visit) const {
  const auto ends_before = [](double x, const Piece& piece) { return x < piece.hi; };
  auto piece = std::upper_bound(shaft_pieces_.begin(), shaft_pieces_.end(), cut + kPositionTie, ends_before);
  for (; piece != shaft_pieces_.end(); ++piece) {
    if (bore_.end() - std::max(cut, piece->lo) < floor) return;
    Piece left = *piece;
    if (left.lo < cut) {
      left.at_lo = std::lerp(left.at_lo, left.at_hi, (cut - left.lo) / (left.hi - left.lo));
      left.lo = cut;
    }
    ForEachBorePiece(left, by, count, floor, visit);
  }
}

// visit(edge) of the end of the piece just below the cut against every bore piece that interferes with it.
template <typename Visit>
void Insertion::ForEachEdgeBelow(double cut, Visit visit) const {
  const auto begins_before = [](const Piece& piece, double x) { return piece.lo < x; };
  auto piece = std::lower_bound(shaft_pieces_.begin(), shaft_pieces_.end(), cut - kPositionTie, begins_before);
  if (piece == shaft_pieces_.begin()) return;
  Piece below = *--piece;
  if (below.hi > cut) {
    below.at_hi = std::lerp(below.at_lo, below.at_hi, (cut - below.lo) / (below.hi - below.lo));
    below.hi = cut;
  }
  ForEachBorePiece(below, 0, Count::kInterfering, kNoReach, [&](const ContactPair& pair) {
    if (const auto edge = pair.AtEnd()) visit(*edge);
  });
}

}  // namespace withy

#endif  // WITHY_NUMERICS_INSERTION_PAIRS_H_
