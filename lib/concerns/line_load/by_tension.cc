#include "by_tension.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace withy::line_load {
namespace {

// Integral of M^2 / 2EI over each piece: the moment straight from point to point of the shape, the stiffness at the
// middle of what is left of a stretch within a piece.
std::vector<double> EnergyOfPieces(const StrungRod& strung) {
  const std::vector<BeamPiece>& pieces = strung.blank.beam.pieces;
  const std::vector<BeamPoint>& points = strung.bent.points;
  std::vector<double> energy(pieces.size(), 0);
  std::size_t piece = 0;
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    const BeamPoint &a = points[i], &b = points[i + 1];
    for (double from = a.s; from < b.s;) {
      while (piece + 1 < pieces.size() && pieces[piece].s1 <= from) ++piece;
      const double to = piece + 1 < pieces.size() ? std::min(b.s, pieces[piece].s1) : b.s;
      const double middle = (from + to) / 2;
      const double moment = a.moment + (b.moment - a.moment) * (middle - a.s) / (b.s - a.s);
      energy[piece] += moment * moment * (to - from) / (2 * pieces[piece].StiffnessAt(middle));
      from = to;
    }
  }
  return energy;
}

// Of a solution, or by the logarithm of the pull.
struct Figures {
  double tip_angle = 0, tip_drop = 0, clamp_moment = 0, most_turn = 0;
};

Figures FiguresOf(const StrungRod& strung, const StrungBeam& bent) {
  Figures figures;
  figures.tip_angle = bent.rings.back().angle;
  figures.tip_drop = -bent.rings.back().axis_y;
  figures.clamp_moment = strung.sense * bent.nodes.front().moment;
  if (strung.most_turned >= 0) figures.most_turn = strung.sense * bent.rings[strung.most_turned].turn;
  return figures;
}

// Central differences: of a step h they are off by a share of h^2 and by what the solver leaves over h, some 1e-6 both.
std::optional<Figures> ByTension(const StrungRod& strung) {
  constexpr double kStep = 1e-3;
  StrungOptions options;
  options.near = &strung.bent;
  options.points = false;
  const auto at = [&](double step) {
    StrungLoad load = strung.load;
    load.tension *= std::exp(step);
    return SolveStrungBeam(strung.blank.beam, strung.rings, load, options);
  };
  const StrungBeam more = at(kStep), less = at(-kStep);
  if (more.state != ElasticaState::kSolved || less.state != ElasticaState::kSolved) return std::nullopt;
  const Figures a = FiguresOf(strung, less), b = FiguresOf(strung, more);
  const auto slope = [](double from, double to) { return (to - from) / (2 * kStep); };
  return Figures{slope(a.tip_angle, b.tip_angle), slope(a.tip_drop, b.tip_drop), slope(a.clamp_moment, b.clamp_moment),
                 slope(a.most_turn, b.most_turn)};
}

}  // namespace

Uncertain StiffnessChangeOf(const StrungRod& strung) {
  const std::vector<double> energy = EnergyOfPieces(strung);
  double sum = 0;
  for (const double of_piece : energy) sum += of_piece;
  Uncertain change;
  if (!(sum > 0)) return change;
  for (std::size_t i = 0; i < energy.size(); ++i) {
    change = change + Uncertain(energy[i] / sum) * strung.blank.stiffness_change[i];
  }
  return change;
}

void SayWithUncertainty(StrungRod& strung) {
  const Figures now = FiguresOf(strung, strung.bent);
  Figures by;
  Uncertain pull, stiffness;
  if (const auto slopes = ByTension(strung)) {
    by = *slopes;
    pull = *strung.tension_n / Uncertain(strung.load.tension) - Uncertain(1);
    stiffness = StiffnessChangeOf(strung);
  }
  const auto with = [&](double value, double slope) {
    return Uncertain(value) + Uncertain(slope) * (pull - stiffness);
  };
  strung.tip_angle = with(now.tip_angle, by.tip_angle);
  strung.tip_drop_m = with(now.tip_drop, by.tip_drop);
  if (strung.most_turned >= 0) strung.most_turn = with(now.most_turn, by.most_turn);
  // A stiffer blank under the same pull holds what the blank as it is holds under less, times how much stiffer it is.
  strung.clamp_moment_n_m = with(now.clamp_moment, by.clamp_moment) + Uncertain(now.clamp_moment) * stiffness;
}

}  // namespace withy::line_load
