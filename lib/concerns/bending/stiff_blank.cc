#include <cstddef>

#include "strain.h"
#include "withy/bending/bending.h"

namespace withy {

StiffBlank StiffAheadOf(const StiffBlank& blank, double from_m) {
  const double from = from_m - blank.butt_m;
  if (from <= 0) return blank;
  StiffBlank ahead;
  ahead.butt_m = from_m;
  // What would be left of a piece by rounding alone is none.
  const double rounding = 1e-9 * blank.beam.length();
  for (std::size_t i = 0; i < blank.beam.pieces.size(); ++i) {
    BeamPiece piece = blank.beam.pieces[i];
    if (piece.s1 <= from + rounding) continue;
    double outer = blank.outer_m[2 * i];
    if (piece.s0 < from) {
      outer += (blank.outer_m[2 * i + 1] - outer) * (from - piece.s0) / (piece.s1 - piece.s0);
      piece = piece.From(from);
    }
    piece.s0 = ahead.beam.pieces.empty() ? 0 : piece.s0 - from;
    piece.s1 -= from;
    ahead.beam.pieces.push_back(piece);
    ahead.outer_m.insert(ahead.outer_m.end(), {outer, blank.outer_m[2 * i + 1]});
    ahead.stiffness_change.push_back(blank.stiffness_change[i]);
  }
  return ahead;
}

double StrainAt(const StiffBlank& blank, double s, double moment) {
  return bending::StrainAt(blank.beam, blank.outer_m, s, moment);
}

}  // namespace withy
