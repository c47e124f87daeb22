#include "strung_section.h"

#include <algorithm>
#include <cmath>

namespace withy {
namespace {

constexpr std::size_t kTerms = BendArc::kTerms;
using Series = std::array<double, kTerms>;

// A stretch this small a part of the beam's length is the rounding of a joint.
constexpr double kNothing = 1e-13;
// Steps cut short in one section; beyond that the pull is out of all proportion to the beam.
constexpr int kMostArcs = 400;
// A series needs so many terms before small ones say that it has come to its end: EI reaches back over four.
constexpr std::size_t kLeastTerms = 4;
// Beside the terms of the state those of its first variations count with this weight, for themselves: where a section
// is all but straight it has no others. They are those of 1 / EI, and of exp(g) with g = length x sqrt(|N| / EI), by
// which variations grow; a step has no more than kMostGrowth of that.
constexpr double kOfVariations = 1e-3, kMostGrowth = 4;

double Value(const Series& series, std::size_t terms, double t) {
  double value = 0;
  for (std::size_t j = terms; j-- > 0;) value = value * t + series[j];
  return value;
}

double ValueAtOne(const Series& series, std::size_t terms) {
  double value = 0;
  for (std::size_t j = terms; j-- > 0;) value += series[j];
  return value;
}

// The n-th term of the product.
double Product(const Series& a, const Series& b, std::size_t n) {
  double sum = 0;
  for (std::size_t i = 0; i <= n; ++i) sum += a[i] * b[n - i];
  return sum;
}

}  // namespace

BeamPoint BendArc::At(double t) const {
  return {s0 + t * length, Value(x, terms, t), Value(y, terms, t), Value(angle, terms, t), Value(moment, terms, t)};
}

double BendArc::MomentAt(double t) const {
  return Value(moment, terms, t);
}

// What is left of a piece or of the section, whichever ends first.
struct SectionWalk::Stretch {
  double length = 0;
  std::array<double, 5> stiffness{};       // over that at its start, in powers of the part of the stretch
  double flexibility = 0;                  // of its start: length / EI
  mutable Series curvature, cosine, sine;  // of the expansion

  // The n-th term of stiffness times series, but for the last one of series.
  double Earlier(const Series& series, std::size_t n) const {
    double sum = 0;
    for (std::size_t i = 1; i <= std::min<std::size_t>(n, 4); ++i) sum += stiffness[i] * series[n - i];
    return sum;
  }
};

// One column of the first variations: what moment and pull change besides the state.
struct SectionWalk::Varied {
  StateChange now;
  PlaneVector pull;
};

SectionWalk::SectionWalk(const Beam& beam, const BeamPoint& start, double s1, PlaneVector pull, double tolerance)
    : beam_(beam), here_(start), end_(s1), pull_(pull), tolerance_(tolerance), arcs_left_(kMostArcs) {
  const auto holds = std::upper_bound(beam.pieces.begin(), beam.pieces.end(), start.s,
                                      [](double s, const BeamPiece& piece) { return s < piece.s1; });
  piece_ = static_cast<std::size_t>(holds - beam.pieces.begin());
}

bool SectionWalk::NextStretch(Stretch& stretch) {
  const double nothing = kNothing * beam_.length();
  while (piece_ < beam_.pieces.size() && beam_.pieces[piece_].s1 - here_.s <= nothing) ++piece_;
  if (piece_ == beam_.pieces.size() || end_ - here_.s <= nothing) return false;
  const BeamPiece& piece = beam_.pieces[piece_];
  const double whole = piece.s1 - piece.s0, t = std::max(here_.s - piece.s0, 0.0) / whole;
  stretch.length = std::min(piece.s1, end_) - here_.s;
  std::array<double, 5> powers = piece.stiffness;
  if (t > 0) {  // about t
    for (std::size_t round = 1; round < powers.size(); ++round) {
      for (std::size_t k = powers.size() - 1; k-- >= round;) powers[k] += t * powers[k + 1];
    }
  }
  const double most = kMostGrowth * std::sqrt(powers[0] / std::hypot(pull_.x, pull_.y));
  if (stretch.length > most) {
    stretch.length = most;
    if (--arcs_left_ < 0) failed_ = true;
  }
  double scale = 1;
  for (std::size_t k = 0; k < powers.size(); ++k, scale *= stretch.length / whole) {
    stretch.stiffness[k] = powers[k] * scale / powers[0];
  }
  stretch.flexibility = stretch.length / powers[0];
  return !failed_;
}

double SectionWalk::Expand(const Stretch& stretch, BendArc& arc) const {
  Series &k = stretch.curvature, &c = stretch.cosine, &s = stretch.sine;
  Series softness;  // 1 / EI, over that at the start
  const double h = stretch.length;
  arc.piece = piece_;
  arc.s0 = here_.s;
  arc.length = h;
  arc.angle[0] = here_.angle;
  arc.x[0] = here_.x;
  arc.y[0] = here_.y;
  arc.moment[0] = here_.moment;
  c[0] = std::cos(here_.angle);
  s[0] = std::sin(here_.angle);
  const double growth = std::sqrt(std::hypot(pull_.x, pull_.y) * h * stretch.flexibility);
  double size = 0, before = 0, grown = 1;
  for (std::size_t n = 0; n + 1 < kTerms; ++n) {
    const double share = 1 / static_cast<double>(n + 1);
    k[n] = stretch.flexibility * arc.moment[n] - stretch.Earlier(k, n);
    softness[n] = (n == 0 ? 1 : 0) - stretch.Earlier(softness, n);
    arc.angle[n + 1] = k[n] * share;
    c[n + 1] = -share * Product(k, s, n);
    s[n + 1] = share * Product(k, c, n);
    arc.x[n + 1] = share * h * c[n];
    arc.y[n + 1] = share * h * s[n];
    arc.moment[n + 1] = pull_.x * arc.y[n + 1] - pull_.y * arc.x[n + 1];
    before = size;
    size = std::abs(arc.angle[n + 1]) + std::abs(c[n + 1]) + std::abs(s[n + 1]) +
           kOfVariations * (share * std::abs(softness[n]) + (grown *= growth * share));
    arc.terms = n + 2;
    if (n >= kLeastTerms && size <= tolerance_ && before <= tolerance_) return 1;
  }
  const double last = static_cast<double>(kTerms - 1);
  return 0.9 * std::min({1.0, std::pow(tolerance_ / size, 1 / last), std::pow(tolerance_ / before, 1 / (last - 1))});
}

void SectionWalk::Vary(const Stretch& stretch, const BendArc& arc, double reach, Varied& varied) const {
  const double h = stretch.length;
  const Series &c = stretch.cosine, &s = stretch.sine;
  Series angle, x, y, moment, curvature;
  angle[0] = varied.now.angle;
  x[0] = varied.now.x;
  y[0] = varied.now.y;
  moment[0] = varied.now.moment;
  for (std::size_t n = 0; n + 1 < arc.terms; ++n) {
    const double share = 1 / static_cast<double>(n + 1);
    curvature[n] = stretch.flexibility * moment[n] - stretch.Earlier(curvature, n);
    angle[n + 1] = share * curvature[n];
    x[n + 1] = -share * h * Product(s, angle, n);
    y[n + 1] = share * h * Product(c, angle, n);
    moment[n + 1] =
        pull_.x * y[n + 1] - pull_.y * x[n + 1] + varied.pull.x * arc.y[n + 1] - varied.pull.y * arc.x[n + 1];
  }
  const auto at = [&](const Series& series) { return Value(series, arc.terms, reach); };
  varied.now = {at(angle), at(x), at(y), at(moment)};
}

void SectionWalk::Advance(const Stretch& stretch, const BendArc& arc, double reach) {
  if (reach == 1) {
    const std::size_t terms = arc.terms;
    here_ = {here_.s + stretch.length, ValueAtOne(arc.x, terms), ValueAtOne(arc.y, terms), ValueAtOne(arc.angle, terms),
             ValueAtOne(arc.moment, terms)};
  } else {
    here_ = arc.At(reach);
  }
  failed_ = !std::isfinite(here_.angle + here_.x + here_.y + here_.moment) || !(reach > 1e-6) ||
            (reach < 1 && --arcs_left_ < 0);
}

bool SectionWalk::Next(BendArc& arc) {
  Stretch stretch;
  if (failed_ || !NextStretch(stretch)) return false;
  const double reach = Expand(stretch, arc);
  Advance(stretch, arc, reach);
  if (reach < 1) {
    double scale = 1;
    for (std::size_t n = 0; n < arc.terms; ++n, scale *= reach) {
      arc.angle[n] *= scale;
      arc.x[n] *= scale;
      arc.y[n] *= scale;
      arc.moment[n] *= scale;
    }
    arc.length *= reach;
  }
  return !failed_;
}

bool SectionWalk::ToEnd() {
  BendArc arc;
  Stretch stretch;
  while (!failed_ && NextStretch(stretch)) Advance(stretch, arc, Expand(stretch, arc));
  return !failed_;
}

bool SectionWalk::ToEnd(FirstVariations& variations) {
  const BeamPoint start = here_;
  BendArc arc;
  Stretch stretch;
  Varied by_moment{{.moment = 1}, {}}, by_pull_x{{}, {1, 0}}, by_pull_y{{}, {0, 1}};
  while (!failed_ && NextStretch(stretch)) {
    const double reach = Expand(stretch, arc);
    for (Varied* varied : {&by_moment, &by_pull_x, &by_pull_y}) Vary(stretch, arc, reach, *varied);
    Advance(stretch, arc, reach);
  }
  // Turned as a whole with N the section keeps its shape: that is the change by the angle less that of N turned.
  const StateChange &by_x = by_pull_x.now, &by_y = by_pull_y.now;
  variations.by_angle = {
      1 + pull_.y * by_x.angle - pull_.x * by_y.angle, start.y - here_.y + pull_.y * by_x.x - pull_.x * by_y.x,
      here_.x - start.x + pull_.y * by_x.y - pull_.x * by_y.y, pull_.y * by_x.moment - pull_.x * by_y.moment};
  variations.by_moment = by_moment.now;
  variations.by_pull_x = by_x;
  variations.by_pull_y = by_y;
  return !failed_;
}

}  // namespace withy
