#include "places.h"

#include <algorithm>
#include <cmath>
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

std::optional<double> Places::RegularPlaceOf(int i) const {
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
  return std::clamp(*mm_[i], least, most);
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

double Places::Roughness() const {
  double sum = 0;
  for (int i = 1; i + 1 < static_cast<int>(mm_.size()); ++i) {
    const std::optional<double> behind = Ahead(i - 1), ahead = Ahead(i);
    if (behind && ahead && *behind > 0 && *ahead > 0) sum += std::abs(std::log(*ahead / *behind));
  }
  return sum;
}

std::optional<int> Places::Culprit() const {
  // less is no difference (common practice, no source)
  constexpr double kAboutEqual = 0.1;
  std::optional<int> culprit;
  double least_move = 0, least_roughness = 0;
  for (const int i : Suspects()) {
    if (i + 1 >= static_cast<int>(mm_.size())) continue;  // the tip-top stands where it stands
    if (InterchangedWithNext(i - 1)) return i;
    const std::optional<double> place = RegularPlaceOf(i);
    if (!place) continue;
    Places moved = *this;
    moved.mm_[i] = place;
    const double move = std::abs(*place - *mm_[i]), roughness = moved.Roughness();
    const bool smoother = roughness < least_roughness - kAboutEqual;
    const bool nearer = roughness < least_roughness + kAboutEqual && move < least_move;
    if (culprit && !smoother && !nearer) continue;
    culprit = i;
    least_move = move;
    least_roughness = roughness;
  }
  return culprit;
}

}  // namespace withy::guides
