#include "elastica_shape.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace withy {
namespace {

constexpr int kNodes = LobattoTable::kNodes, kIntervals = LobattoTable::kIntervals;
static_assert(kIntervals == Elastica::kArc);

// Moments from angles and angles from moments: each time the error within an element falls by the square of its length.
constexpr int kPasses = 2;

// Integral from 0 to the k-th node of the polynomial through the values at all.
double Integral(const LobattoTable& lobatto, int k, const double (&values)[kNodes]) {
  if (k == 0) return 0;
  double sum = 0;
  for (int j = 0; j < kNodes; ++j) sum += lobatto.integral[k][j] * values[j];
  return sum;
}

struct Direction {
  double cosine = 1, sine = 0;
};

// Of an angle that is more by `turn`; by three terms of the series where that is exact to the last digits.
Direction Turned(const Direction& from, double turn, double angle) {
  if (!(std::abs(turn) < 1e-5)) return {std::cos(angle), std::sin(angle)};
  const double c = 1 - turn * turn / 2;
  return {from.cosine * c - from.sine * turn, from.sine * c + from.cosine * turn};
}

// Angles and moments, from the free end to the clamp; x and y hold the tangent until the places are summed up.
void Bend(const Beam& beam, const ElasticaLoad& load, const std::vector<BeamElement>& mesh, const ChainFunction& angle,
          int degree, double share, Elastica& shape) {
  const LobattoTable& lobatto = Lobatto();
  const double turned = angle.end + load.follower_angle;
  const double follower_x = load.follower * std::cos(turned), follower_y = load.follower * std::sin(turned);
  double right = angle.end, moment = share * load.moment;
  for (std::size_t e = mesh.size(); e-- > 0;) {
    const double* value = angle.of(e);
    const double h = mesh[e].length(), left = right - value[0];
    BeamPoint* point = &shape.points[e * kIntervals];
    double stiffness[kNodes], force_x[kNodes], force_y[kNodes], shear[kNodes], curvature[kNodes];
    Direction tangent[kNodes];
    for (int k = 0; k < kNodes; ++k) {
      const BeamSection section = SectionAt(beam, load, mesh[e], lobatto.t[k]);
      stiffness[k] = section.stiffness;
      force_x[k] = share * (section.force_x + follower_x);
      force_y[k] = share * (section.force_y + follower_y);
      point[k].s = k == kIntervals ? mesh[e].s1 : mesh[e].s0 + lobatto.t[k] * h;
      point[k].angle = left + value[0] * lobatto.t[k];
      for (int i = 1; i < degree; ++i) point[k].angle += value[i] * lobatto.bubble[k][i];
      tangent[k] = {std::cos(point[k].angle), std::sin(point[k].angle)};
    }
    for (int pass = 0; pass < kPasses; ++pass) {
      for (int k = 0; k < kNodes; ++k) shear[k] = force_y[k] * tangent[k].cosine - force_x[k] * tangent[k].sine;
      const double whole = Integral(lobatto, kIntervals, shear);
      for (int k = 0; k < kNodes; ++k) {
        point[k].moment = moment + h * (whole - Integral(lobatto, k, shear));
        curvature[k] = point[k].moment / stiffness[k];
      }
      const double rise = h * Integral(lobatto, kIntervals, curvature);
      for (int k = 0; k < kNodes; ++k) {
        const double now = left + h * Integral(lobatto, k, curvature) + lobatto.t[k] * (value[0] - rise);
        tangent[k] = Turned(tangent[k], now - point[k].angle, now);
        point[k].angle = now;
      }
    }
    for (int k = 0; k < kNodes; ++k) {
      shape.strain_energy += lobatto.Weight(k) * h * point[k].moment * curvature[k] / 2;
      point[k].x = tangent[k].cosine;
      point[k].y = tangent[k].sine;
    }
    moment = point[0].moment;
    right = left;
  }
}

// Tangents become coordinates, from the clamp to the free end.
void Place(const std::vector<BeamElement>& mesh, std::vector<BeamPoint>& points) {
  const LobattoTable& lobatto = Lobatto();
  double x[kNodes], y[kNodes], left_x = 0, left_y = 0;
  x[kIntervals] = points[0].x;
  y[kIntervals] = points[0].y;
  for (std::size_t e = 0; e < mesh.size(); ++e) {
    BeamPoint* point = &points[e * kIntervals];
    x[0] = x[kIntervals];
    y[0] = y[kIntervals];
    for (int k = 1; k < kNodes; ++k) {
      x[k] = point[k].x;
      y[k] = point[k].y;
    }
    for (int k = 0; k < kNodes; ++k) {
      point[k].x = left_x + mesh[e].length() * Integral(lobatto, k, x);
      point[k].y = left_y + mesh[e].length() * Integral(lobatto, k, y);
    }
    left_x = point[kIntervals].x;
    left_y = point[kIntervals].y;
  }
}

}  // namespace

void Trace(const Beam& beam, const ElasticaLoad& load, const std::vector<BeamElement>& mesh, const ChainFunction& angle,
           int degree, double share, Elastica& shape) {
  shape.points.assign(mesh.size() * kIntervals + 1, {});
  shape.strain_energy = 0;
  Bend(beam, load, mesh, angle, degree, share, shape);
  Place(mesh, shape.points);
}

// Through the points of the arc that s lies in (Berrut and Trefethen 2004, the barycentric formula).
BeamPoint Elastica::At(double s) const {
  const LobattoTable& lobatto = Lobatto();
  if (!(s > points.front().s)) return points.front();
  if (!(s < points.back().s)) return points.back();
  const auto next = std::upper_bound(points.begin(), points.end(), s,
                                     [](double value, const BeamPoint& point) { return value < point.s; });
  const auto first = (next - points.begin() - 1) / kIntervals * kIntervals;
  const BeamPoint* arc = &points[static_cast<std::size_t>(first)];
  BeamPoint at{.s = s};
  double total = 0;
  for (int k = 0; k < kNodes; ++k) {
    if (s == arc[k].s) return arc[k];
    const double weight = lobatto.barycentric[k] / (s - arc[k].s);
    total += weight;
    at.x += weight * arc[k].x;
    at.y += weight * arc[k].y;
    at.angle += weight * arc[k].angle;
    at.moment += weight * arc[k].moment;
  }
  at.x /= total;
  at.y /= total;
  at.angle /= total;
  at.moment /= total;
  return at;
}

}  // namespace withy
