#include "elastica_elements.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace withy {

namespace {

// Place of row i, column j of a packed lower triangle.
constexpr std::size_t Packed(int i, int j) {
  return static_cast<std::size_t>(i * (i + 1) / 2 + j);
}

}  // namespace

void ChainFunction::Add(const ChainFunction& other, double factor) {
  for (std::size_t k = 0; k < values_.size(); ++k) values_[k] += factor * other.values_[k];
  start += factor * other.start;
  end += factor * other.end;
}

ElasticaElements::ElasticaElements(const Beam& beam, const ElasticaLoad& load, std::vector<BeamElement> mesh,
                                   int degree)
    : beam_(beam), load_(load), mesh_(std::move(mesh)), angle_(mesh_.size()), eliminated_(mesh_.size()) {
  angle_.start = angle_.end = load.clamp_angle;
  SetDegree(degree);
}

void ElasticaElements::SetDegree(int degree) {
  degree_ = degree;
  const ShapeTable& shapes = ShapesOf(degree);
  const std::size_t packed = Packed(degree, 0);
  stiffness_.assign(mesh_.size() * packed, 0);
  force_.resize(mesh_.size() * static_cast<std::size_t>(degree + 1) * 2);
  double* force = force_.data();
  for (std::size_t e = 0; e < mesh_.size(); ++e) {
    for (int g = 0; g <= degree; ++g) {
      const BeamSection section = SectionAt(beam_, load_, mesh_[e], shapes.t[g]);
      *force++ = section.force_x;
      *force++ = section.force_y;
    }
    double* k = &stiffness_[e * packed];
    const BeamPiece& piece = beam_.pieces[static_cast<std::size_t>(mesh_[e].piece)];
    const double h = mesh_[e].length();
    for (int g = 0; g < degree + 2; ++g) {
      const double factor = shapes.stiff_weight[g] * piece.StiffnessAt(mesh_[e].s0 + shapes.stiff_t[g] * h) / h;
      double slope[ShapeTable::kMostShapes];
      std::copy(shapes.slope[g], shapes.slope[g] + degree - 1, slope);
      slope[degree - 1] = 1;
      for (int i = 0; i < degree; ++i) {
        for (int j = 0; j <= i; ++j) k[Packed(i, j)] += factor * slope[i] * slope[j];
      }
    }
    std::fill(angle_.of(e) + degree, angle_.of(e) + ChainFunction::kStride, 0.0);
  }
}

// The element at work: its rows, and what those before it have left on its left node.
struct ElasticaElements::Front {
  double matrix[ShapeTable::kMostShapes][ShapeTable::kMostShapes];
  double side[kColumns][ShapeTable::kMostShapes];
  double left_pivot = 0;
  double left_side[kColumns] = {};
};

void ElasticaElements::Factor(double share, int columns) {
  switch (degree_) {
    case 1:
      return FactorOfDegree<1>(share, columns);
    case 2:
      return FactorOfDegree<2>(share, columns);
    case 3:
      return FactorOfDegree<3>(share, columns);
    case 4:
      return FactorOfDegree<4>(share, columns);
    case 5:
      return FactorOfDegree<5>(share, columns);
    case 6:
      return FactorOfDegree<6>(share, columns);
    case 7:
      return FactorOfDegree<7>(share, columns);
    case 8:
      return FactorOfDegree<8>(share, columns);
    default:
      return FactorOfDegree<9>(share, columns);
  }
}

// The degree is known to the compiler, so that it unrolls the small loops: three times as fast.
template <int kDegree>
void ElasticaElements::FactorOfDegree(double share, int columns) {
  constexpr int kPoints = kDegree + 1, kShapes = kDegree + 1, kBubbles = kDegree - 1;
  const ShapeTable& shapes = ShapesOf(kDegree);
  const double turned = angle_.end + load_.follower_angle;
  const double follower_x = load_.follower * std::cos(turned), follower_y = load_.follower * std::sin(turned);
  Front front;
  negative_ = 0;
  double left = angle_.start;
  const double* force = force_.data();
  for (std::size_t e = 0; e < mesh_.size(); ++e) {
    const double* value = angle_.of(e);
    const double* k = &stiffness_[e * Packed(kDegree, 0)];
    const double h = mesh_[e].length();
    for (auto& side : front.side) std::fill(side, side + kShapes, 0.0);
    for (int i = 0; i < kShapes; ++i) std::fill(front.matrix[i], front.matrix[i] + kShapes, 0.0);
    for (int g = 0; g < kPoints; ++g, force += 2) {
      const double* phi = shapes.value[g];
      double theta = left + value[0] * phi[kDegree];
      for (int i = 0; i < kBubbles; ++i) theta += value[i + 1] * phi[i];
      const double c = std::cos(theta), s = std::sin(theta), weight = h * shapes.weight[g];
      const double fx = force[0] + follower_x, fy = force[1] + follower_y;
      const double along = weight * share * (fx * c + fy * s), across = weight * (fy * c - fx * s);
      const double turning = weight * share * (follower_x * c + follower_y * s);
      for (int i = 0; i < kShapes; ++i) {
        front.side[kByShare][i] += across * phi[i];
        front.side[kByTipAngle][i] -= turning * phi[i];
        for (int j = 0; j <= i; ++j) front.matrix[i][j] += along * phi[i] * phi[j];
      }
      if (columns == kTipX) continue;
      for (int i = 0; i < kShapes; ++i) {
        front.side[kTipX][i] -= weight * s * phi[i];
        front.side[kTipY][i] += weight * c * phi[i];
      }
    }
    // The stiffness knows bubbles and rise; the rise is the right node less the left.
    double resisted[kDegree];
    for (int i = 0; i < kDegree; ++i) {
      resisted[i] = 0;
      for (int j = 0; j < kDegree; ++j) {
        resisted[i] += k[i >= j ? Packed(i, j) : Packed(j, i)] * (j == kBubbles ? value[0] : value[j + 1]);
      }
    }
    for (int i = 0; i < kBubbles; ++i) {
      for (int j = 0; j <= i; ++j) front.matrix[i][j] += k[Packed(i, j)];
      front.matrix[kBubbles][i] -= k[Packed(kBubbles, i)];
      front.matrix[kDegree][i] += k[Packed(kBubbles, i)];
      front.side[kResidual][i] = share * front.side[kByShare][i] - resisted[i];
    }
    front.matrix[kBubbles][kBubbles] += k[Packed(kBubbles, kBubbles)];
    front.matrix[kDegree][kBubbles] -= k[Packed(kBubbles, kBubbles)];
    front.matrix[kDegree][kDegree] += k[Packed(kBubbles, kBubbles)];
    front.side[kResidual][kBubbles] = share * front.side[kByShare][kBubbles] + resisted[kBubbles];
    front.side[kResidual][kDegree] = share * front.side[kByShare][kDegree] - resisted[kBubbles];
    Eliminate<kDegree>(e, columns, front);
    left += value[0];
  }
  front.left_side[kResidual] += share * load_.moment;
  front.left_side[kByShare] += load_.moment;
  tip_pivot_ = front.left_pivot + front.left_side[kByTipAngle];
  if (tip_pivot_ == 0) tip_pivot_ = std::numeric_limits<double>::min();
  std::copy(front.left_side, front.left_side + kColumns, tip_side_);
}

// Bubbles and left node go; what they leave on the right node is the left node's of the next element.
template <int kDegree>
void ElasticaElements::Eliminate(std::size_t e, int columns, Front& front) {
  Eliminated& out = eliminated_[e];
  constexpr int kLeft = kDegree - 1;
  auto& matrix = front.matrix;
  if (e == 0) {  // clamped
    for (int i = 0; i < kLeft; ++i) matrix[kLeft][i] = 0;
    matrix[kDegree][kLeft] = 0;
    matrix[kLeft][kLeft] = 1;
    for (auto& side : front.side) side[kLeft] = 0;
  } else {
    matrix[kLeft][kLeft] += front.left_pivot;
    for (int c = 0; c < columns; ++c) front.side[c][kLeft] += front.left_side[c];
  }
  for (int j = 0; j < kDegree; ++j) {
    double pivot = matrix[j][j];
    if (pivot == 0) pivot = std::numeric_limits<double>::min();
    negative_ += pivot < 0;
    out.inverse[j] = 1 / pivot;
    for (int i = j + 1; i <= kDegree; ++i) {
      const double below = matrix[i][j] * out.inverse[j];
      out.below[i][j] = below;
      for (int k = j + 1; k <= i; ++k) matrix[i][k] -= below * matrix[k][j];
      for (int c = 0; c < columns; ++c) front.side[c][i] -= below * front.side[c][j];
    }
    for (int c = 0; c < columns; ++c) out.side[c][j] = front.side[c][j];
  }
  front.left_pivot = matrix[kDegree][kDegree];
  for (int c = 0; c < columns; ++c) front.left_side[c] = front.side[c][kDegree];
}

bool ElasticaElements::Unstable() const {
  const int negative = negative_ + (tip_pivot_ < 0);
  return load_.follower == 0 ? negative > 0 : negative % 2 == 1;
}

void ElasticaElements::Solve(Column column, ChainFunction& answer) const {
  const double at_tip = tip_side_[column] / tip_pivot_;
  Back(column, at_tip, at_tip, answer);
}

// With L D L^T + c e^T, e = 1 at the free end, the transposed matrix is L (D + e d^T) L^T, d = L^-1 c: as before, but
// for the last row.
void ElasticaElements::SolveTransposed(int column, ChainFunction& answer) const {
  double last = column == kColumns ? 1 : tip_side_[column];
  if (column != kColumns && load_.follower != 0) {
    for (const Eliminated& one : eliminated_) {
      for (int j = 0; j < degree_; ++j) last -= one.side[kByTipAngle][j] * one.inverse[j] * one.side[column][j];
    }
  }
  Back(column, last / tip_pivot_, 0, answer);
}

void ElasticaElements::Back(int column, double at_tip, double of_tip_angle, ChainFunction& answer) const {
  const int left = degree_ - 1;
  double x[ShapeTable::kMostShapes];
  x[degree_] = at_tip;
  answer.largest = std::abs(at_tip);
  answer.end = at_tip;
  for (std::size_t e = mesh_.size(); e-- > 0;) {
    const Eliminated& one = eliminated_[e];
    double* values = answer.of(e);
    for (int j = left; j >= 0; --j) {
      const double side = column == kColumns ? 0 : one.side[column][j];
      x[j] = (side - of_tip_angle * one.side[kByTipAngle][j]) * one.inverse[j];
      for (int i = j + 1; i <= degree_; ++i) x[j] -= one.below[i][j] * x[i];
      answer.largest = std::max(answer.largest, std::abs(x[j]));
    }
    values[0] = x[degree_] - x[left];
    std::copy(x, x + left, values + 1);
    x[degree_] = x[left];
  }
}

double ElasticaElements::StiffnessProduct(std::size_t e, const ChainFunction& a) const {
  const double* k = &stiffness_[e * Packed(degree_, 0)];
  const double *u = angle_.of(e), *v = a.of(e);
  const auto at = [&](const double* of, int i) { return i + 1 == degree_ ? of[0] : of[i + 1]; };
  double sum = 0;
  for (int i = 0; i < degree_; ++i) {
    for (int j = 0; j < degree_; ++j) sum += k[i >= j ? Packed(i, j) : Packed(j, i)] * at(u, i) * at(v, j);
  }
  return sum;
}

ElasticaElements::Place ElasticaElements::Tip() const {
  const ShapeTable& shapes = ShapesOf(degree_);
  Place tip;
  double left = angle_.start;
  for (std::size_t e = 0; e < mesh_.size(); ++e) {
    const double* value = angle_.of(e);
    for (int g = 0; g <= degree_; ++g) {
      double theta = left + value[0] * shapes.value[g][degree_];
      for (int i = 0; i + 1 < degree_; ++i) theta += value[i + 1] * shapes.value[g][i];
      tip.x += mesh_[e].length() * shapes.weight[g] * std::cos(theta);
      tip.y += mesh_[e].length() * shapes.weight[g] * std::sin(theta);
    }
    left += value[0];
  }
  return tip;
}

}  // namespace withy
