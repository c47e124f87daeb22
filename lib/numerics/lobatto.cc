#include "lobatto.h"

#include <cmath>
#include <cstddef>
#include <numbers>

namespace withy {
namespace {

using Values = std::array<double, 2 * LobattoTable::kNodes + 2>;

double LegendreAt(int degree, double t) {
  Values p{};
  Legendre(t, degree, p);
  return p[static_cast<std::size_t>(degree)];
}

// d/dt of P_degree for 0 < t < 1: x = 2 t - 1, (1 - x^2) P' = n (P_{n-1} - x P_n).
double LegendreSlopeAt(int degree, double t) {
  const double x = 2 * t - 1;
  return 2 * degree * (LegendreAt(degree - 1, t) - x * LegendreAt(degree, t)) / (1 - x * x);
}

// The roots of P_n, ascending, by Newton from the estimate of Tricomi.
void GaussRule(int n, double* t, double* weight) {
  for (int k = 0; k < n; ++k) {
    double root = (1 - std::cos(std::numbers::pi * (k + 0.75) / (n + 0.5))) / 2;
    for (int round = 0; round < 8; ++round) root -= LegendreAt(n, root) / LegendreSlopeAt(n, root);
    const double slope = LegendreSlopeAt(n, root);
    t[k] = root;
    weight[k] = 1 / (root * (1 - root) * slope * slope);
  }
}

ShapeTable MakeShapes(int degree) {
  ShapeTable table;
  GaussRule(degree + 1, table.t, table.weight);
  GaussRule(degree + 2, table.stiff_t, table.stiff_weight);
  for (int k = 0; k < degree + 1; ++k) {
    Values p{};
    Legendre(table.t[k], degree, p);
    for (int j = 1; j < degree; ++j) {
      const auto at = static_cast<std::size_t>(j);
      table.value[k][j - 1] = (p[at + 1] - p[at - 1]) / (2 * (2 * j + 1));
    }
    table.value[k][degree - 1] = 1 - table.t[k];
    table.value[k][degree] = table.t[k];
  }
  for (int k = 0; k < degree + 2; ++k) {
    Values p{};
    Legendre(table.stiff_t[k], degree, p);
    for (int j = 1; j < degree; ++j) table.slope[k][j - 1] = p[static_cast<std::size_t>(j)];
    table.slope[k][degree - 1] = -1;
    table.slope[k][degree] = 1;
  }
  return table;
}

// Inner nodes of Gauss and Lobatto: the roots of the slope of P_n, with P'' from Legendre's equation.
double LobattoNode(int n, int k) {
  double t = (1 - std::cos(std::numbers::pi * k / n)) / 2;
  for (int round = 0; round < 12; ++round) {
    const double x = 2 * t - 1, slope = LegendreSlopeAt(n, t) / 2;
    const double bend = (2 * x * slope - n * (n + 1) * LegendreAt(n, t)) / (1 - x * x);
    t -= slope / bend / 2;
  }
  return t;
}

// The j-th Lagrange polynomial through the nodes.
double LagrangeAt(const LobattoTable& table, int j, double t) {
  double value = 1;
  for (int k = 0; k < LobattoTable::kNodes; ++k) {
    if (k != j) value *= (t - table.t[k]) / (table.t[j] - table.t[k]);
  }
  return value;
}

LobattoTable MakeLobatto() {
  constexpr int n = LobattoTable::kIntervals;
  LobattoTable table;
  table.t[n] = 1;
  for (int k = 1; k < n; ++k) table.t[k] = LobattoNode(n, k);
  double gauss[n] = {}, weight[n] = {};
  GaussRule(n, gauss, weight);
  for (int j = 0; j < LobattoTable::kNodes; ++j) {
    for (int k = 1; k < LobattoTable::kNodes; ++k) {
      for (int g = 0; g < n; ++g) {
        table.integral[k][j] += table.t[k] * weight[g] * LagrangeAt(table, j, table.t[k] * gauss[g]);
      }
    }
    table.barycentric[j] = 1;
    for (int k = 0; k < LobattoTable::kNodes; ++k) {
      if (k != j) table.barycentric[j] /= table.t[j] - table.t[k];
    }
    Values p{};
    Legendre(table.t[j], kMostDegree, p);
    for (int i = 0; i <= kMostDegree; ++i) table.legendre[j][i] = p[static_cast<std::size_t>(i)];
    for (int i = 1; i < kMostDegree; ++i) {
      table.bubble[j][i] = (table.legendre[j][i + 1] - table.legendre[j][i - 1]) / (2 * (2 * i + 1));
    }
  }
  return table;
}

}  // namespace

const ShapeTable& ShapesOf(int degree) {
  static const auto* const tables = [] {
    auto* all = new std::array<ShapeTable, kMostDegree + 1>;
    for (int p = 1; p <= kMostDegree; ++p) (*all)[static_cast<std::size_t>(p)] = MakeShapes(p);
    return all;
  }();
  return (*tables)[static_cast<std::size_t>(degree)];
}

const LobattoTable& Lobatto() {
  static const LobattoTable table = MakeLobatto();
  return table;
}

}  // namespace withy
