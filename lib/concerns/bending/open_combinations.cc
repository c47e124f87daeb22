#include "open_combinations.h"

#include <algorithm>
#include <cctype>
#include <cmath>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "absl/strings/str_join.h"

namespace withy::bending {
namespace {

constexpr double kShown = 0.2;  // of the largest part: smaller ones are not worth a word
// Of the largest part: the first of these that no reading sees is said.
constexpr double kPercents[] = {10, 5, 2, 1};
constexpr double kStepsPerPercent = 10;

std::string KindName(UnknownKind kind) {
  switch (kind) {
    case UnknownKind::kModulus:
      return "modulus";
    case UnknownKind::kDensity:
      return "density";
    case UnknownKind::kWallAtButt:
      return "wall at the butt";
    case UnknownKind::kWallAtTip:
      return "wall at the tip";
    case UnknownKind::kWall:
      return "wall";
  }
  return "";
}

// "A, B and C".
std::string Listed(const std::vector<std::string>& parts) {
  if (parts.size() == 1) return parts.front();
  return absl::StrCat(absl::StrJoin(parts.begin(), parts.end() - 1, ", "), " and ", parts.back());
}

std::string Capitalised(std::string text) {
  text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
  return text;
}

// "Modulus up by 10 % with density up by 13.2 % and wall at the butt down by 14.1 %", and the point where that is.
class Move {
 public:
  // Along a direction of logarithms, so far that its largest part goes up by that.
  Move(const std::vector<double>& direction, double percent) {
    const double largest = *std::max_element(direction.begin(), direction.end(),
                                             [](double a, double b) { return std::abs(a) < std::abs(b); });
    for (const double part : direction) {
      const double moved = 100 * std::expm1(std::log1p(percent / 100) * part / largest);
      percents_.push_back(std::round(moved * kStepsPerPercent) / kStepsPerPercent);
    }
  }

  // As it is printed, so that what is said of it is so.
  std::vector<double> From(std::vector<double> x) const {
    for (std::size_t i = 0; i < percents_.size(); ++i) x[i] += std::log1p(percents_[i] / 100);
    return x;
  }

  std::string Text(const std::vector<std::string>& names) const {
    std::vector<std::string> moves;
    for (std::size_t i = 0; i < percents_.size(); ++i) {
      if (percents_[i] == 0) continue;
      moves.push_back(absl::StrFormat("%s %s by %.4g %%", names[i], percents_[i] > 0 ? "up" : "down",
                                      std::abs(percents_[i])));
    }
    const std::string others = moves.size() > 1 ? " with " + Listed({moves.begin() + 1, moves.end()}) : "";
    return Capitalised(moves.front() + others);
  }

 private:
  std::vector<double> percents_;
};

// No reading is moved by more than its ±.
bool IsUnseen(BlankProblem& problem, const std::vector<ReadingModel>& readings, const std::vector<double>& x,
              const std::vector<double>& moved) {
  return std::all_of(readings.begin(), readings.end(), [&](const ReadingModel& reading) {
    const auto here = problem.Log(reading, x), there = problem.Log(reading, moved);
    return here && there && std::abs(*there - *here) <= 2 * reading.deviation / reading.measured;
  });
}

std::string TextOf(const Rod& rod, BlankProblem& problem, const BlankFit& fit,
                   const std::vector<ReadingModel>& readings, const std::vector<double>& direction) {
  std::vector<std::string> names, large;
  double largest = 0;
  for (const double part : direction) largest = std::max(largest, std::abs(part));
  for (std::size_t i = 0; i < direction.size(); ++i) {
    names.push_back(NameOf(problem.sought()[i], rod));
    if (std::abs(direction[i]) >= kShown * largest) large.push_back(names.back());
  }
  for (const double percent : kPercents) {
    const Move move(direction, percent);
    if (!IsUnseen(problem, readings, fit.fit.x, move.From(fit.fit.x))) continue;
    return absl::StrCat(move.Text(names), " moves no reading by more than its ±.");
  }
  return absl::StrCat(Capitalised(Listed(large)), large.size() > 1 ? " are" : " is",
                      " hardly held by the readings: they can move far",
                      large.size() > 1 ? " together." : ".");
}

}  // namespace

std::string NameOf(const Sought& figure, const Rod& rod) {
  std::string name = KindName(figure.kind);
  if (figure.sections.size() == rod.blank.assembled.size()) return name;
  std::vector<std::string> ids;
  for (const int position : figure.sections) ids.push_back(rod.blank.sections[rod.blank.assembled[position]].id);
  return absl::StrCat(name, " of ", absl::StrJoin(ids, " and "));
}

std::vector<OpenCombination> OpenCombinationsOf(const Rod& rod, BlankProblem& problem, const BlankFit& fit,
                                                const std::vector<ReadingModel>& readings) {
  std::vector<OpenCombination> open;
  for (const PrincipalAxis& axis : PrincipalAxesOf(fit.covariance)) {
    double largest = 0;
    for (const double part : axis.direction) largest = std::max(largest, std::abs(part));
    const double doubt = 2 * axis.deviation * largest;
    if (doubt <= kOpen) continue;
    OpenCombination combination;
    combination.text = TextOf(rod, problem, fit, readings, axis.direction);
    if (axis.deviation < kNoIdea / 2) combination.doubt = doubt;
    open.push_back(std::move(combination));
  }
  return open;
}

}  // namespace withy::bending
