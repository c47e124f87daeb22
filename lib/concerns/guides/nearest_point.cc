#include "nearest_point.h"

#include <cmath>
#include <limits>
#include <utility>

namespace withy {
namespace {

constexpr double kNever = std::numeric_limits<double>::infinity();
// Of a normal's square: what is left of one that the active ones make up between them.
constexpr double kDependent = 1e-16;
constexpr double kNoShare = 1e-9;  // rounding

double Dot(const std::vector<double>& a, const std::vector<double>& b) {
  double sum = 0;
  for (std::size_t j = 0; j < a.size(); ++j) sum += a[j] * b[j];
  return sum;
}

// A x = b, A symmetric and positive: elimination needs no pivots.
std::vector<double> Solve(std::vector<std::vector<double>> a, std::vector<double> b) {
  const std::size_t n = b.size();
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t k = i + 1; k < n; ++k) {
      const double factor = a[k][i] / a[i][i];
      if (factor == 0) continue;
      for (std::size_t j = i; j < n; ++j) a[k][j] -= factor * a[i][j];
      b[k] -= factor * b[i];
    }
  }
  for (std::size_t i = n; i-- > 0;) {
    for (std::size_t j = i + 1; j < n; ++j) b[i] -= a[i][j] * b[j];
    b[i] /= a[i][i];
  }
  return b;
}

class DualActiveSet {
 public:
  DualActiveSet(const std::vector<HalfSpace>& spaces, std::vector<double> wanted)
      : spaces_(spaces), x_(std::move(wanted)) {}

  const std::vector<double>& x() const { return x_; }

  // The half space missed by most, or their number.
  std::size_t Worst(double tolerance) const {
    std::size_t worst = spaces_.size();
    for (std::size_t i = 0; i < spaces_.size(); ++i) {
      if (Missing(i) <= tolerance) continue;
      tolerance = Missing(i);
      worst = i;
    }
    return worst;
  }

  // Moves onto the edge of a missed half space, letting go of those that hold it back. False where they contradict it.
  bool Take(std::size_t taken) {
    const std::vector<double>& normal = spaces_[taken].normal;
    double price = 0;
    while (true) {
      const std::vector<double> shares = SharesOf(normal);
      std::vector<double> way = normal;
      for (std::size_t i = 0; i < active_.size(); ++i) {
        for (std::size_t j = 0; j < way.size(); ++j) way[j] -= shares[i] * spaces_[active_[i]].normal[j];
      }
      double step = Dot(way, way) > kDependent * Dot(normal, normal) ? Missing(taken) / Dot(way, way) : kNever;
      const bool can_move = step < kNever;
      std::size_t let_go = active_.size();
      for (std::size_t i = 0; i < active_.size(); ++i) {
        if (!(shares[i] > kNoShare) || prices_[i] / shares[i] >= step) continue;
        step = prices_[i] / shares[i];
        let_go = i;
      }
      if (!(step < kNever)) return false;
      for (std::size_t j = 0; can_move && j < way.size(); ++j) x_[j] -= step * way[j];
      for (std::size_t i = 0; i < active_.size(); ++i) prices_[i] -= step * shares[i];
      price += step;
      if (let_go == active_.size()) break;
      active_.erase(active_.begin() + static_cast<std::ptrdiff_t>(let_go));
      prices_.erase(prices_.begin() + static_cast<std::ptrdiff_t>(let_go));
    }
    active_.push_back(taken);
    prices_.push_back(price);
    return true;
  }

 private:
  double Missing(std::size_t i) const { return Dot(spaces_[i].normal, x_) - spaces_[i].most; }

  // Of each active normal in another one, by least squares.
  std::vector<double> SharesOf(const std::vector<double>& normal) const {
    std::vector<std::vector<double>> products(active_.size(), std::vector<double>(active_.size()));
    std::vector<double> right(active_.size());
    for (std::size_t i = 0; i < active_.size(); ++i) {
      right[i] = Dot(spaces_[active_[i]].normal, normal);
      for (std::size_t k = 0; k < active_.size(); ++k)
        products[i][k] = Dot(spaces_[active_[i]].normal, spaces_[active_[k]].normal);
    }
    return Solve(std::move(products), std::move(right));
  }

  const std::vector<HalfSpace>& spaces_;
  std::vector<double> x_;
  std::vector<std::size_t> active_;
  std::vector<double> prices_;  // multipliers of the active ones
};

}  // namespace

std::optional<std::vector<double>> NearestPoint(const std::vector<HalfSpace>& spaces, std::vector<double> wanted,
                                                double tolerance) {
  DualActiveSet search(spaces, std::move(wanted));
  for (std::size_t i = 0; i < 20 * spaces.size() + 1; ++i) {
    const std::size_t worst = search.Worst(tolerance);
    if (worst == spaces.size()) return search.x();
    if (!search.Take(worst)) return std::nullopt;
  }
  return std::nullopt;
}

}  // namespace withy
