#include "fit_blank.h"

#include <cmath>

namespace withy::bending {
namespace {

constexpr double kStep = 1e-4;  // of the logarithms

void Apply(const Sought& figure, double value, std::vector<Guess>& guesses) {
  for (const int position : figure.sections) {
    Guess& guess = guesses[position];
    switch (figure.kind) {
      case UnknownKind::kModulus:
        guess.modulus_pa = value;
        break;
      case UnknownKind::kDensity:
        guess.density_kg_m3 = value;
        break;
      case UnknownKind::kWallAtButt:
        guess.wall_butt_m = value;
        break;
      case UnknownKind::kWallAtTip:
        guess.wall_tip_m = value;
        break;
      case UnknownKind::kWall:
        guess.wall_butt_m = guess.wall_tip_m = value;
        break;
    }
  }
}

bool IsWall(const Sought& figure) {
  return figure.kind != UnknownKind::kModulus && figure.kind != UnknownKind::kDensity;
}

}  // namespace

BlankProblem::BlankProblem(const Rod& rod, SoughtFigures sought)
    : sections_(sought.walls.size()), blank_(rod, sought.walls) {
  for (Sought& figure : sought.figures) (figure.held ? held_ : figures_).push_back(figure);
  CollectDoubts(sought);
}

// A held wall is one of the measured walls.
void BlankProblem::CollectDoubts(const SoughtFigures& sought) {
  for (std::size_t i = 0; i < held_.size(); ++i) {
    if (held_[i].held_deviation > 0 && !IsWall(held_[i])) {
      doubts_.push_back({Doubt::Kind::kHeld, static_cast<int>(i), held_[i].held_deviation});
    }
  }
  for (std::size_t k = 0; k < sections_; ++k) {
    const int position = static_cast<int>(k);
    if (const double u = sought.diameter_deviation_m[k]; u > 0)
      doubts_.push_back({Doubt::Kind::kDiameters, position, u});
    CollectWallDoubts(sought.walls[k], position);
  }
}

void BlankProblem::CollectWallDoubts(const MeasuredWalls& walls, int position) {
  bool between = false;
  for (std::size_t i = 0; i < walls.knots.size(); ++i) {
    if (!(walls.deviations_m[i] > 0)) continue;
    if (walls.IsButt(i)) {
      doubts_.push_back({Doubt::Kind::kWallAtButt, position});
    } else if (walls.IsTip(i)) {
      doubts_.push_back({Doubt::Kind::kWallAtTip, position});
    } else {
      between = true;
    }
  }
  if (between) doubts_.push_back({Doubt::Kind::kWallsBetween, position});
}

bool BlankProblem::SetBlank(const std::vector<double>& x) {
  std::vector<Guess> guesses(sections_);
  for (const Sought& figure : held_) Apply(figure, figure.value, guesses);
  for (std::size_t i = 0; i < figures_.size(); ++i) Apply(figures_[i], figures_[i].value * std::exp(x[i]), guesses);
  for (std::size_t i = 0; i < doubts_.size(); ++i) {
    const Doubt& doubt = doubts_[i];
    const double off = x[figures_.size() + i] * doubt.deviation;
    switch (doubt.kind) {
      case Doubt::Kind::kHeld:
        Apply(held_[doubt.index], held_[doubt.index].value * std::exp(off), guesses);
        break;
      case Doubt::Kind::kDiameters:
        guesses[doubt.index].outer_off_m = off;
        break;
      case Doubt::Kind::kWallAtButt:
        guesses[doubt.index].wall_butt_off = off;
        break;
      case Doubt::Kind::kWallAtTip:
        guesses[doubt.index].wall_tip_off = off;
        break;
      case Doubt::Kind::kWallsBetween:
        guesses[doubt.index].walls_between_off = off;
        break;
    }
  }
  return blank_.Set(guesses);
}

// Of the readings, then of the doubts; then, where there is room for it, what keeps a figure near its start.
bool BlankProblem::Residuals(const std::vector<ReadingModel>& readings, int without, const std::vector<double>& x,
                             std::vector<double>& r) {
  if (!SetBlank(x)) return false;
  Bench bench(blank_);
  const std::size_t count = readings.size(), figures = figures_.size();
  for (std::size_t i = 0; i < count; ++i) {
    if (static_cast<int>(i) == without) continue;
    const auto read = bench.Read(readings[i]);
    if (!read || !(*read > 0)) return false;
    r[i] = std::log(*read / readings[i].measured) / (readings[i].deviation / readings[i].measured);
  }
  for (std::size_t i = 0; i < doubts_.size(); ++i) r[count + i] = x[figures + i];
  for (std::size_t i = count + doubts_.size(); i < r.size(); ++i) r[i] = x[i - count - doubts_.size()] / kNoIdea;
  return true;
}

BlankFit BlankProblem::Fit(const std::vector<ReadingModel>& readings, int without) {
  const auto residuals = [&](const std::vector<double>& x, std::vector<double>& r) {
    return Residuals(readings, without, x, r);
  };
  const int count = static_cast<int>(readings.size()), told = count + static_cast<int>(doubts_.size());
  const std::vector<double> start(static_cast<std::size_t>(unknowns()), 0.0);
  BlankFit result;
  result.fit = FitLeastSquares(residuals, start, told, kStep);
  result.spare = count - static_cast<int>(figures_.size()) - (without >= 0 ? 1 : 0);
  if (result.fit.singular_values.empty()) return result;
  if (!std::isfinite(result.fit.condition)) {  // a direction that no reading sees must not run away
    result.fit = FitLeastSquares(residuals, start, told + static_cast<int>(figures_.size()), kStep);
    result.fit.residuals.resize(static_cast<std::size_t>(told));
    result.fit.jacobian.resize(static_cast<std::size_t>(told));
    result.fit.covariance.clear();
  }
  result.covariance = result.fit.covariance;
  if (result.covariance.empty()) result.covariance = CovarianceOf(result.fit.jacobian, kNoIdea, unknowns());
  result.studentised = StudentisedResiduals(result.fit);
  result.covariance.resize(figures_.size());
  for (std::vector<double>& row : result.covariance) row.resize(figures_.size());
  return result;
}

Profile BlankProblem::WallOf(int position, const std::vector<double>& x) {
  SetBlank(x);
  return blank_.WallOf(position);
}

std::optional<double> BlankProblem::Log(const ReadingModel& reading, const std::vector<double>& x) {
  if (!SetBlank(x)) return std::nullopt;
  const auto read = Bench(blank_).Read(reading);
  if (!read || !(*read > 0)) return std::nullopt;
  return std::log(*read);
}

std::optional<std::vector<double>> BlankProblem::Slopes(const ReadingModel& reading, const std::vector<double>& x) {
  std::vector<double> slopes;
  for (std::size_t i = 0; i < x.size(); ++i) {
    std::vector<double> moved = x;
    moved[i] = x[i] + kStep;
    const auto ahead = Log(reading, moved);
    moved[i] = x[i] - kStep;
    const auto behind = Log(reading, moved);
    if (!ahead || !behind) return std::nullopt;
    slopes.push_back((*ahead - *behind) / (2 * kStep));
  }
  return slopes;
}

}  // namespace withy::bending
