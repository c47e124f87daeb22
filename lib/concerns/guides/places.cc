#include "places.h"

#include <algorithm>
#include <limits>
#include <utility>

namespace withy::guides {
namespace {

// A quarter longer (common practice, no source): less is what a guide moved off a joint makes.
constexpr double kGrowth = 1.25;
// Spacings that differ by less are the same (rounding of inches and millimetres).
constexpr double kSame_mm = 1e-6;

}  // namespace

Places::Places(const std::vector<Guide>& guides) {
  for (const Guide& guide : guides) {
    mm_.push_back(guide.from_tip ? std::optional(guide.from_tip->value.mm()) : std::nullopt);
  }
  mm_.push_back(0);
}

std::optional<double> Places::Ahead(int i) const {
  if (i < 0 || i + 1 >= static_cast<int>(mm_.size()) || !mm_[i] || !mm_[i + 1]) return std::nullopt;
  return *mm_[i] - *mm_[i + 1];
}

bool Places::InOrder() const {
  std::optional<double> before;
  for (std::size_t i = 0; i + 1 < mm_.size(); ++i) {
    if (before && mm_[i] && *mm_[i] > *before) return false;
    if (mm_[i]) before = mm_[i];
  }
  return true;
}

bool Places::Grows(int i) const {
  const std::optional<double> behind = Ahead(i - 1), ahead = Ahead(i);
  return behind && ahead && *behind > 0 && *ahead > kGrowth * *behind + kSame_mm;
}

bool Places::Regular() const {
  if (!InOrder()) return false;
  for (int i = 1; i + 1 < static_cast<int>(mm_.size()); ++i) {
    if (Grows(i)) return false;
  }
  return true;
}

std::optional<double> Places::MoveOf(int i) const {
  if (!mm_[i]) return std::nullopt;
  Places rest = *this;
  rest.mm_[i].reset();
  if (!rest.Regular()) return std::nullopt;
  const double far = std::numeric_limits<double>::infinity();
  const std::optional<double> behind = i > 0 ? mm_[i - 1] : std::nullopt, next = mm_[i + 1];
  double least = next.value_or(-far), most = behind.value_or(far);
  // the spacings behind, on both sides of it, and in front: none may be more than kGrowth of the one behind it
  if (const auto before = Ahead(i - 2); before && behind) least = std::max(least, *behind - kGrowth * *before);
  if (behind && next) most = std::min(most, (*next + kGrowth * *behind) / (1 + kGrowth));
  if (const auto after = Ahead(i + 1); after && next) least = std::max(least, *next + *after / kGrowth);
  if (least > most) return std::nullopt;
  return std::max({0.0, least - *mm_[i], *mm_[i] - most});
}

std::vector<int> Places::Suspects() const {
  int before = -1;  // the last guide with a place
  for (int i = 0; i + 1 < static_cast<int>(mm_.size()); ++i) {
    if (!mm_[i]) continue;
    if (before >= 0 && *mm_[i] > *mm_[before]) return {before, i};
    if (Grows(i)) return {i - 1, i, i + 1};
    before = i;
  }
  return {};
}

bool Places::InterchangedWithNext(int i) const {
  if (i < 0 || i + 2 >= static_cast<int>(mm_.size())) return false;
  Places other = *this;
  std::swap(other.mm_[i], other.mm_[i + 1]);
  return other.Regular();
}

std::optional<int> Places::Culprit() const {
  std::optional<int> culprit;
  double least = std::numeric_limits<double>::infinity();
  for (const int i : Suspects()) {
    if (i + 1 >= static_cast<int>(mm_.size())) continue;  // the tip-top stands where it stands
    if (InterchangedWithNext(i - 1)) return i;
    const std::optional<double> move = MoveOf(i);
    if (!move || *move >= least) continue;
    culprit = i;
    least = *move;
  }
  return culprit;
}

}  // namespace withy::guides
