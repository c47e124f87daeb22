#include "withy/numerics/profile.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <utility>

namespace withy {
namespace {

using Knots = std::vector<Profile::Knot>;

// First knot whose coordinate is at least x (kLeft) or beyond x (kRight).
Knots::const_iterator Above(const Knots& knots, double x, Profile::Limit limit) {
  const auto at_or_beyond = [](const Profile::Knot& knot, double value) { return knot.x < value; };
  const auto beyond = [](double value, const Profile::Knot& knot) { return value < knot.x; };
  return limit == Profile::Limit::kLeft ? std::lower_bound(knots.begin(), knots.end(), x, at_or_beyond)
                                        : std::upper_bound(knots.begin(), knots.end(), x, beyond);
}

// The best value over [a, b]; a piecewise linear function takes it at an end or at a knot.
template <typename Better>
double Extreme(const Profile& profile, double a, double b, Better better) {
  if (!(a < b)) {
    const double left = profile.At(a, Profile::Limit::kLeft);
    const double right = profile.At(a, Profile::Limit::kRight);
    return better(left, right) ? left : right;
  }
  double best = profile.At(a, Profile::Limit::kRight);
  const double last = profile.At(b, Profile::Limit::kLeft);
  if (better(last, best)) best = last;
  const auto end = Above(profile.knots(), b, Profile::Limit::kLeft);
  for (auto knot = Above(profile.knots(), a, Profile::Limit::kRight); knot < end; ++knot) {
    if (better(knot->y, best)) best = knot->y;
  }
  return best;
}

}  // namespace

Profile::Profile(std::vector<Knot> knots) : knots_(std::move(knots)) {
  assert(!knots_.empty());
  assert(std::all_of(knots_.begin(), knots_.end(), [](const Knot& knot) { return std::isfinite(knot.x); }));
  assert(std::is_sorted(knots_.begin(), knots_.end(), [](const Knot& a, const Knot& b) { return a.x < b.x; }));
}

double Profile::At(double x, Limit limit) const {
  const auto next = Above(knots_, x, limit);
  if (next == knots_.begin()) return knots_.front().y;
  if (next == knots_.end()) return knots_.back().y;
  const Knot& a = *(next - 1);
  const Knot& b = *next;
  // Exact at both knots, and never outside [a.y, b.y].
  if (x == a.x) return a.y;
  if (x == b.x) return b.y;
  return std::lerp(a.y, b.y, (x - a.x) / (b.x - a.x));
}

double Profile::Min(double a, double b) const {
  return Extreme(*this, a, b, [](double candidate, double best) { return candidate < best; });
}

double Profile::Max(double a, double b) const {
  return Extreme(*this, a, b, [](double candidate, double best) { return candidate > best; });
}

Profile Profile::Slice(double a, double b) const {
  if (!(a < b)) return Profile({{a, At(a, Limit::kLeft)}, {b, At(b, Limit::kRight)}});
  std::vector<Knot> knots{{a, At(a, Limit::kRight)}};
  const auto end = Above(knots_, b, Limit::kLeft);
  for (auto knot = Above(knots_, a, Limit::kRight); knot < end; ++knot) knots.push_back(*knot);
  knots.push_back({b, At(b, Limit::kLeft)});
  return Profile(std::move(knots));
}

Profile Profile::Shifted(double distance) const {
  std::vector<Knot> knots = knots_;
  for (Knot& knot : knots) knot.x += distance;
  return Profile(std::move(knots));
}

double Profile::OntoJump(double x, double within) const {
  double nearest = x, off = within;
  for (auto knot = Above(knots_, x - within, Limit::kLeft); knot != knots_.end() && knot->x <= x + within; ++knot) {
    const bool jump = knot + 1 != knots_.end() && (knot + 1)->x == knot->x && (knot + 1)->y != knot->y;
    if (!jump || std::abs(knot->x - x) > off) continue;
    nearest = knot->x;
    off = std::abs(knot->x - x);
  }
  return nearest;
}

}  // namespace withy
