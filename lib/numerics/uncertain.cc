#include "withy/numerics/uncertain.h"

#include <algorithm>
#include <cmath>

namespace withy {

namespace {

double LargestOf(const std::vector<std::pair<int, double>>& parts) {
  double largest = 0;
  for (const auto& [input, part] : parts) largest = std::max(largest, std::abs(part));
  return largest;
}

}  // namespace

double Uncertain::plus_minus() const {
  const double largest = LargestOf(parts_);
  if (largest == 0 || !std::isfinite(largest)) return largest;
  // Scaled, so that squares neither overflow nor vanish.
  double sum = 0;
  for (const auto& [input, part] : parts_) sum += (part / largest) * (part / largest);
  return largest * std::sqrt(sum);
}

std::vector<VarianceShare> Uncertain::Shares() const {
  const double largest = LargestOf(parts_);
  if (largest == 0 || !std::isfinite(largest)) return {};
  std::vector<VarianceShare> shares;
  shares.reserve(parts_.size());
  double sum = 0;
  for (const auto& [input, part] : parts_) {
    shares.push_back({input, (part / largest) * (part / largest)});
    sum += shares.back().of_variance;
  }
  for (VarianceShare& share : shares) share.of_variance /= sum;
  return shares;
}

// The first-order change of f(a, b) with `da` = df/da and `db` = df/db: both lists are merged by input.
Uncertain Uncertain::Combine(double value, const Uncertain& a, double da, const Uncertain& b, double db) {
  Uncertain result(value);
  result.parts_.reserve(a.parts_.size() + b.parts_.size());
  auto x = a.parts_.begin();
  auto y = b.parts_.begin();
  while (x != a.parts_.end() || y != b.parts_.end()) {
    if (y == b.parts_.end() || (x != a.parts_.end() && x->first < y->first)) {
      result.parts_.emplace_back(x->first, da * x->second);
      ++x;
    } else if (x == a.parts_.end() || y->first < x->first) {
      result.parts_.emplace_back(y->first, db * y->second);
      ++y;
    } else {
      result.parts_.emplace_back(x->first, da * x->second + db * y->second);
      ++x;
      ++y;
    }
  }
  return result;
}

Uncertain Uncertain::operator-() const {
  return Combine(-value_, *this, -1, Uncertain(), 0);
}

Uncertain operator+(const Uncertain& a, const Uncertain& b) {
  return Uncertain::Combine(a.value_ + b.value_, a, 1, b, 1);
}

Uncertain operator-(const Uncertain& a, const Uncertain& b) {
  return Uncertain::Combine(a.value_ - b.value_, a, 1, b, -1);
}

Uncertain operator*(const Uncertain& a, const Uncertain& b) {
  return Uncertain::Combine(a.value_ * b.value_, a, b.value_, b, a.value_);
}

Uncertain operator/(const Uncertain& a, const Uncertain& b) {
  const double ratio = a.value_ / b.value_;
  return Uncertain::Combine(ratio, a, 1 / b.value_, b, -ratio / b.value_);
}

double Covariance(const Uncertain& a, const Uncertain& b) {
  double sum = 0;
  auto y = b.parts_.begin();
  for (const auto& [input, part] : a.parts_) {
    while (y != b.parts_.end() && y->first < input) ++y;
    if (y != b.parts_.end() && y->first == input) sum += part * y->second;
  }
  return sum;
}

Uncertain Inputs::Add(double value, double plus_minus, std::string name) {
  Uncertain input(value);
  if (plus_minus == 0) return input;
  input.parts_.emplace_back(static_cast<int>(inputs_.size()), plus_minus);
  inputs_.push_back({std::move(name), value, plus_minus});
  return input;
}

}  // namespace withy
