#include "withy/bending/identify.h"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "absl/strings/str_join.h"
#include "fit_blank.h"
#include "next_readings.h"
#include "open_combinations.h"
#include "readings_of.h"
#include "withy/sections/slip.h"
#include "wrong_reading.h"

namespace withy {
namespace {

using namespace bending;

// Beyond these no builder's blank goes, and the time it takes would.
constexpr std::size_t kMostSections = 8, kMostReadings = 60;

// What every reading rests on; empty where it is all there.
std::string WhatIsMissing(const Rod& rod) {
  if (rod.blank.assembled.empty()) return "the design has no blank";
  if (rod.blank.assembled.size() > kMostSections) {
    return absl::StrCat("a blank of more than ", kMostSections, " sections is not identified");
  }
  for (const int i : rod.blank.assembled) {
    const Section& section = rod.blank.sections[i];
    if (section.outer.empty()) return absl::StrCat("calliper the diameters of ", section.id, " first");
    if (!section.length || !(section.length->value.meters() > 0))
      return absl::StrCat("measure the length of ", section.id);
    if (section.shape == Shape::kOther) return absl::StrCat("the shape of ", section.id, " is none that is computed");
  }
  return "";
}

class Identifier {
 public:
  Identifier(const Rod& rod, const SectionsAnswers& sections, WallModel wall)
      : rod_(rod), problem_(rod, SoughtIn(rod, sections, wall, result_.assumptions)) {}

  Identification Run() {
    Collect();
    Search();
    const auto faulty = std::count_if(unusable_.begin(), unusable_.end(), [](const auto& r) { return r.faulty; });
    if (faulty > 0) {
      result_.verdict = absl::StrCat(faulty, faulty == 1 ? " reading cannot be used as it is written. "
                                                         : " readings cannot be used as they are written. ",
                                     result_.verdict);
    }
    for (IdentifiedReading& reading : unusable_) {
      reading.remark = absl::StrCat("left out: ", reading.remark);
      result_.readings.push_back(std::move(reading));
    }
    return std::move(result_);
  }

 private:
  void Search() {
    if (problem_.sought().empty()) {
      Say(IdentificationState::kFound, "Modulus, density and walls were all measured: there is nothing to look for.");
      PutFigures({});
      return;
    }
    const WrongReading wrong = FindWrongReading(problem_, readings_);
    if (wrong.fit.fit.singular_values.empty() || !wrong.fit.fit.converged) {
      Say(IdentificationState::kCannotTell,
          "No blank of these diameters could be bent as was read: look at loads and places, and for a wall that leaves "
          "no "
          "bore.");
      PutFigures({});
      for (const ReadingModel& model : readings_) result_.readings.push_back(AsRead(model));
      return;
    }
    PutReadings(wrong);
    if (wrong.outcome == WrongReading::Outcome::kNobodyCanSay) {
      PutFigures({});
    } else {
      PutFit(wrong.fit);
    }
    Judge(wrong);
  }

  void Say(IdentificationState state, std::string verdict) {
    result_.state = state;
    result_.verdict = std::move(verdict);
  }

  void Collect() {
    ReadingsFound found = ReadingsOf(rod_, problem_.blank());
    if (found.usable.size() > kMostReadings) found.usable.resize(kMostReadings);
    readings_ = std::move(found.usable);
    unusable_ = std::move(found.unusable);
    if (found.unstated) {
      result_.assumptions.push_back(
          {rod_.blank.at, "readings without plus_minus, or one of 0: mass 0.5 %, balance point 1 mm, drop 2 mm, time 0.3 s",
           "common practice, no source"});
    }
  }

  // Where a fit is given, of what it found; the others as held.
  void PutFigures(const std::optional<BlankFit>& fit) {
    const auto put = [&](const Sought& sought) -> IdentifiedFigure& {
      IdentifiedFigure& figure = result_.figures.emplace_back();
      figure.kind = sought.kind;
      figure.section = SectionShownFor(sought, rod_);
      for (const int position : sought.sections) figure.sections.push_back(rod_.blank.assembled[position]);
      figure.at = sought.at;
      figure.said = sought.said;
      figure.held = sought.held;
      return figure;
    };
    for (const Sought& sought : problem_.held()) {
      IdentifiedFigure& figure = put(sought);
      figure.value = sought.value;
      if (sought.held_deviation > 0) figure.plus_minus = 2 * sought.held_deviation * sought.value;
    }
    for (std::size_t i = 0; i < problem_.sought().size(); ++i) {
      IdentifiedFigure& figure = put(problem_.sought()[i]);
      if (!fit) continue;
      const double doubt = 2 * std::sqrt(fit->covariance[i][i]);  // relative
      if (doubt >= 1) continue;                                   // nothing is known of it
      figure.value = problem_.sought()[i].value * std::exp(fit->fit.x[i]);
      figure.plus_minus = doubt * *figure.value;
    }
    std::stable_sort(result_.figures.begin(), result_.figures.end(), [](const auto& a, const auto& b) {
      return std::tuple(std::max(a.section, 0), a.kind) < std::tuple(std::max(b.section, 0), b.kind);
    });
  }

  void PutFit(const BlankFit& fit) {
    PutFigures(fit);
    PutWalls(fit.fit.x);
    result_.open = OpenCombinationsOf(rod_, problem_, fit, Used());
    result_.next = NextReadingsOf(rod_, problem_, fit, readings_);
    const std::vector<PrincipalAxis> axes = PrincipalAxesOf(fit.covariance);
    if (axes.front().deviation < kNoIdea / 2 && axes.back().deviation > 0) {
      result_.condition = axes.front().deviation / axes.back().deviation;
    }
    if (fit.spare > 0) {
      double squares = 0;
      for (const double residual : fit.fit.residuals) squares += residual * residual;
      result_.misfit = std::sqrt(squares / fit.spare);
    }
  }

  // Those that were not left out.
  std::vector<ReadingModel> Used() const {
    std::vector<ReadingModel> used;
    for (std::size_t i = 0; i < readings_.size(); ++i) {
      if (!result_.readings[i].rejected) used.push_back(readings_[i]);
    }
    return used;
  }

  void PutWalls(const std::vector<double>& x) {
    result_.walls.resize(rod_.blank.sections.size());
    for (std::size_t k = 0; k < rod_.blank.assembled.size(); ++k) {
      result_.walls[rod_.blank.assembled[k]] = problem_.WallOf(static_cast<int>(k), x);
    }
  }

  static IdentifiedReading AsRead(const ReadingModel& model) {
    IdentifiedReading reading;
    reading.kind = model.kind;
    reading.at = model.at;
    reading.measured = model.measured;
    reading.plus_minus = 2 * model.deviation;
    return reading;
  }

  void PutReadings(const WrongReading& wrong) {
    for (std::size_t i = 0; i < readings_.size(); ++i) {
      const ReadingModel& model = readings_[i];
      IdentifiedReading reading = AsRead(model);
      if (const auto log = problem_.Log(model, wrong.fit.fit.x)) reading.fitted = std::exp(*log);
      reading.deviation = -wrong.fit.studentised[i];  // measured less fitted
      if (static_cast<int>(i) == wrong.reading) Reject(model, wrong.fit, reading);
      result_.readings.push_back(std::move(reading));
    }
    for (const int i : wrong.suspects) result_.readings[i].remark = "without it the others agree";
  }

  // Against what the others foretell, with their doubt.
  void Reject(const ReadingModel& model, const BlankFit& fit, IdentifiedReading& reading) {
    reading.rejected = true;
    reading.remark = absl::StrCat("does not fit the others: left out; read it again",
                                  model.pieces.empty() ? ", and look at its load and its places" : "");
    if (!reading.fitted) return;
    double variance = std::pow(model.deviation / model.measured, 2);
    if (const auto slopes = problem_.Slopes(model, fit.fit.x)) {
      for (std::size_t i = 0; i < fit.covariance.size(); ++i) {
        for (std::size_t j = 0; j < fit.covariance.size(); ++j) {
          variance += (*slopes)[i] * fit.covariance[i][j] * (*slopes)[j];
        }
      }
    }
    reading.deviation = std::log(model.measured / *reading.fitted) / std::sqrt(variance);
    if (const auto slip = SlipOf(model.measured, *reading.fitted)) {
      absl::StrAppend(&reading.remark, "; a slip by a factor of ",
                      absl::StrFormat("%.4g", std::max(*slip / model.measured, model.measured / *slip)),
                      " (inches for millimetres, a point put wrong) would explain it");
    }
  }

  void Judge(const WrongReading& wrong) {
    if (wrong.outcome == WrongReading::Outcome::kNobodyCanSay) {
      std::vector<std::string> paths;
      for (const int i : wrong.suspects) paths.push_back(readings_[i].at.ToString());
      Say(IdentificationState::kContradictory,
          paths.empty()
              ? "No blank of these diameters with walls that run straight between what was measured reads like this, "
                "and no single reading explains it: read them again, and the wall in more places."
              : absl::StrCat("The readings contradict each other, and which of them is wrong cannot be told: ",
                             absl::StrJoin(paths, " or "), ". Read these again."));
      return;
    }
    const std::string less =
        wrong.outcome == WrongReading::Outcome::kOne
            ? absl::StrCat("One reading is wrong and is left out: ", readings_[wrong.reading].at.ToString(), ". ")
            : "";
    if (!result_.open.empty()) {
      Say(IdentificationState::kNotEnough,
          absl::StrCat(less, wrong.fit.spare < 0 ? "There are fewer readings than unknowns."
                                                 : "The readings do not tell everything apart: one more settles it."));
      return;
    }
    double worst = 0;
    for (std::size_t i = 0; i < wrong.fit.covariance.size(); ++i) {
      worst = std::max(worst, 2 * std::sqrt(wrong.fit.covariance[i][i]));
    }
    Say(IdentificationState::kFound,
        absl::StrCat(
            less, "Found, the least certain figure to ", absl::StrFormat("%.1f", 100 * worst), " %",
            wrong.fit.spare > 0 ? "; the readings agree." : "; no reading is to spare that could show a slip."));
  }

  const Rod& rod_;
  Identification result_;
  BlankProblem problem_;
  std::vector<ReadingModel> readings_;
  std::vector<IdentifiedReading> unusable_;
};

}  // namespace

Identification Identify(const Rod& rod, const SectionsAnswers& sections, WallModel wall) {
  if (std::string missing = WhatIsMissing(rod); !missing.empty()) {
    Identification result;
    result.verdict = absl::StrCat("Cannot tell: ", missing, ".");
    return result;
  }
  return Identifier(rod, sections, wall).Run();
}

}  // namespace withy
