#include "candidates.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "open_combinations.h"
#include "readings_of.h"
#include "withy/units/quantity.h"

namespace withy::bending {
namespace {

// Expanded uncertainties, k = 2. Common practice, no source: a wall read with a calliper at the face in several places;
// kitchen scales; an off-cut weighed in air and in water.
constexpr double kWallPlusMinusM = 0.03e-3;
constexpr double kMassPlusMinusKg = 0.1e-3;
constexpr double kDensityPlusMinus = 0.015;  // relative
constexpr double kCycles = 20;
// Where a blank of which nothing was bent yet would be clamped, as a share of its length.
constexpr double kClampShare = 0.15;
// Drops to aim at, as shares of the free length: one that bends the tip, one that bends the middle, one half way up.
constexpr double kLightDrop = 0.1, kHeavyDrop = 0.35, kHalfwayDrop = 0.04;
constexpr double kHeaviestKg = 3;      // that one would hang on a bare blank
constexpr double kMountedShare = 0.5;  // of the blank's mass, on the tip while counting
constexpr double kFastestHz = 4;       // that the eye can count

// To one or two digits: weights come like that.
double RoundLoad(double kg) {
  const double step = kg < 0.02 ? 0.001 : kg < 0.1 ? 0.005 : kg < 0.5 ? 0.010 : 0.050;
  return std::max(step, std::round(kg / step) * step);
}

std::string Grams(double kg) {
  return absl::StrFormat("%.0f g", kg * 1000);
}
std::string Millimeters(double m) {
  return absl::StrFormat("%.0f mm", m * 1000);
}

class Proposer {
 public:
  Proposer(const Rod& rod, BlankProblem& problem, const std::vector<double>& x,
           const std::vector<ReadingModel>& readings)
      : rod_(rod), problem_(problem), x_(x), readings_(readings) {}

  std::vector<Candidate> Propose() {
    ProposeFigures();
    ProposeScales();
    if (problem_.blank().length_m()) ProposeBench();
    return std::move(candidates_);
  }

 private:
  void ProposeFigures() {
    const std::vector<Sought>& figures = problem_.sought();
    for (std::size_t i = 0; i < figures.size(); ++i) {
      Candidate candidate;
      candidate.figure = static_cast<int>(i);
      const double value = figures[i].value * std::exp(x_[i]);
      const std::string& id = SectionAt(figures[i].sections.front()).id;
      if (figures[i].kind == UnknownKind::kDensity) {
        candidate.relative_deviation = kDensityPlusMinus / 2;
        candidate.text = absl::StrCat("Weigh an off-cut of ", id, " in air and in water: its ",
                                      NameOf(figures[i], rod_), " to 1.5 %.");
      } else if (figures[i].kind != UnknownKind::kModulus) {
        const bool tip = figures[i].kind == UnknownKind::kWallAtTip;
        candidate.relative_deviation = kWallPlusMinusM / 2 / value;
        candidate.text = absl::StrCat("Calliper the wall at the ", tip ? "tip" : "butt", " face of ", id,
                                      " in several places, to 0.03 mm.");
      } else {
        continue;
      }
      candidates_.push_back(std::move(candidate));
    }
  }

  void ProposeScales() {
    for (int k = 0; k < static_cast<int>(rod_.blank.assembled.size()); ++k) {
      const double length = SectionAt(k).length->value.meters();
      for (const ReadingKind kind : {ReadingKind::kMass, ReadingKind::kBalance}) {
        if (WasRead(kind, k)) continue;
        ReadingModel reading;
        reading.kind = kind;
        reading.pieces = {{k, 0, length, 0}};
        reading.deviation = (kind == ReadingKind::kMass ? kMassPlusMinusKg : kUnstatedBalanceM) / 2;
        const std::string what = kind == ReadingKind::kMass
                                     ? absl::StrCat("Weigh ", SectionAt(k).id, " to 0.1 g.")
                                     : absl::StrCat("Find the balance point of ", SectionAt(k).id, " to 1 mm.");
        Propose(what, reading);
      }
    }
  }

  bool WasRead(ReadingKind kind, int position) const {
    return std::any_of(readings_.begin(), readings_.end(), [&](const ReadingModel& reading) {
      return reading.kind == kind && reading.pieces.size() == 1 && reading.pieces[0].position == position;
    });
  }

  void ProposeBench() {
    ReadingModel reading;
    const double tip = *problem_.blank().length_m();
    reading.clamp_m = std::round(kClampShare * tip * 100) / 100;
    for (const ReadingModel& earlier : readings_) {
      if (earlier.pieces.empty()) reading.clamp_m = earlier.clamp_m;
    }
    const double free = tip - reading.clamp_m;
    reading.kind = ReadingKind::kDrop;
    reading.deviation = kUnstatedDropM / 2;
    ProposeDrop(reading, tip, kLightDrop * free, "at the tip");
    ProposeDrop(reading, tip, kHeavyDrop * free, "at the tip");
    ProposeDrop(reading, reading.clamp_m + std::round(free / 2 * 100) / 100, kHalfwayDrop * free, "half way");
    ProposeBeats(reading, tip);
  }

  // The load that drops the point so far, found by halving; none that is too heavy to hang.
  void ProposeDrop(ReadingModel reading, double at_m, double drop_m, const std::string& where) {
    reading.load_at_m = reading.read_at_m = at_m;
    double low = 0.001, high = Heaviest();
    for (int i = 0; i < 12; ++i) {
      reading.load_kg = std::sqrt(low * high);
      const auto log = problem_.Log(reading, x_);
      (log && *log < std::log(drop_m) ? low : high) = reading.load_kg;
    }
    if (reading.load_kg > 0.95 * Heaviest()) return;
    reading.load_kg = RoundLoad(reading.load_kg);
    const auto log = problem_.Log(reading, x_);
    if (!log) return;
    Propose(
        absl::StrCat("Clamp at ", Millimeters(reading.clamp_m), ", hang ", Grams(reading.load_kg), " ", where, " (",
                     Millimeters(at_m), ") and read the drop there to 2 mm: about ", Millimeters(std::exp(*log)), "."),
        reading);
  }

  double Heaviest() const {
    return rod_.blank.rated_lift_n && rod_.blank.rated_lift_n->value > 0
               ? std::min(kHeaviestKg, rod_.blank.rated_lift_n->value / kStandardGravity)
               : kHeaviestKg;
  }

  void ProposeBeats(ReadingModel reading, double tip) {
    double mass = 0;
    for (int k = 0; k < static_cast<int>(rod_.blank.assembled.size()); ++k) {
      ReadingModel whole;
      whole.pieces = {{k, 0, SectionAt(k).length->value.meters(), 0}};
      mass += std::exp(problem_.Log(whole, x_).value_or(std::log(0.05)));
    }
    reading.kind = ReadingKind::kFrequency;
    reading.load_at_m = tip;
    for (const double mounted : {0.0, RoundLoad(kMountedShare * mass)}) {
      reading.load_kg = mounted;
      const auto log = problem_.Log(reading, x_);
      if (!log || std::exp(*log) > kFastestHz) continue;
      const double seconds = kCycles / std::exp(*log);
      reading.deviation = std::exp(*log) * kUnstatedTimeS / seconds / 2;
      Propose(absl::StrCat(
                  "Clamp at ", Millimeters(reading.clamp_m), ", ",
                  mounted > 0 ? absl::StrCat("fix ", Grams(mounted), " to the tip and") : "leave the blank bare and",
                  " time 20 oscillations: about ", absl::StrFormat("%.1f", seconds), " s."),
              reading);
    }
  }

  void Propose(const std::string& text, ReadingModel reading) {
    const auto log = problem_.Log(reading, x_);
    if (!log) return;
    reading.measured = std::exp(*log);
    candidates_.push_back({text, reading, -1, reading.deviation / reading.measured});
  }

  const Section& SectionAt(int position) const { return rod_.blank.sections[rod_.blank.assembled[position]]; }

  const Rod& rod_;
  BlankProblem& problem_;
  const std::vector<double>& x_;
  const std::vector<ReadingModel>& readings_;
  std::vector<Candidate> candidates_;
};

}  // namespace

std::vector<Candidate> CandidatesOf(const Rod& rod, BlankProblem& problem, const std::vector<double>& x,
                                    const std::vector<ReadingModel>& readings) {
  return Proposer(rod, problem, x, readings).Propose();
}

}  // namespace withy::bending
