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
constexpr double kPercentOfLargest = 10;

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

// "Modulus up by 10 % with density up by 13 % and wall at the butt down by 14 %".
std::string Moves(const Rod& rod, const std::vector<Sought>& figures, const std::vector<double>& direction) {
  std::size_t largest = 0;
  for (std::size_t i = 1; i < direction.size(); ++i) {
    if (std::abs(direction[i]) > std::abs(direction[largest])) largest = i;
  }
  const double scale = kPercentOfLargest / direction[largest];  // the largest goes up
  std::vector<std::string> moves;
  for (std::size_t i = 0; i < direction.size(); ++i) {
    const double percent = direction[i] * scale;
    if (std::abs(percent) < kShown * kPercentOfLargest) continue;
    moves.push_back(absl::StrCat(NameOf(figures[i], rod), percent > 0 ? " up" : " down", " by ",
                                 absl::StrFormat("%.0f", std::abs(percent)), " %"));
  }
  std::string text = moves.front();
  if (moves.size() > 1) {
    const std::vector<std::string> others(moves.begin() + 1, moves.end() - 1);
    absl::StrAppend(&text, " with ", absl::StrJoin(others, ", "), others.empty() ? "" : " and ", moves.back());
  }
  text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
  return text;
}

}  // namespace

std::string NameOf(const Sought& figure, const Rod& rod) {
  std::string name = KindName(figure.kind);
  if (figure.sections.size() == rod.blank.assembled.size()) return name;
  std::vector<std::string> ids;
  for (const int position : figure.sections) ids.push_back(rod.blank.sections[rod.blank.assembled[position]].id);
  return absl::StrCat(name, " of ", absl::StrJoin(ids, " and "));
}

std::vector<OpenCombination> OpenCombinationsOf(const Rod& rod, const BlankProblem& problem, const BlankFit& fit) {
  std::vector<OpenCombination> open;
  for (const PrincipalAxis& axis : PrincipalAxesOf(fit.covariance)) {
    double largest = 0;
    for (const double part : axis.direction) largest = std::max(largest, std::abs(part));
    const double doubt = 2 * axis.deviation * largest;
    if (doubt <= kOpen) continue;
    OpenCombination combination;
    combination.text = absl::StrCat(Moves(rod, problem.sought(), axis.direction),
                                    " leaves every reading within what it may be off by.");
    if (axis.deviation < kNoIdea / 2) combination.doubt = doubt;
    open.push_back(std::move(combination));
  }
  return open;
}

}  // namespace withy::bending
