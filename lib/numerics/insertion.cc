#include "withy/numerics/insertion.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "contact_pair.h"

namespace withy {
namespace {

std::vector<Insertion::Piece> PiecesOf(const Profile& profile) {
  std::vector<Insertion::Piece> pieces;
  const auto& knots = profile.knots();
  for (size_t i = 1; i < knots.size(); ++i) {
    if (knots[i - 1].x < knots[i].x) pieces.push_back({knots[i - 1].x, knots[i].x, knots[i - 1].y, knots[i].y});
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

}  // namespace withy
