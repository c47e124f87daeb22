// The blank that explains its readings best.
//
// Unknowns are the logarithms of what is sought over where the search starts. What is held counts as a reading of
// itself, as are the outer diameters and the measured walls, each with the uncertainty that it says (walls at the ends
// each by itself, those between together): so their doubts are carried into the result, and none of them is altered. A
// residual is ln(model / measured) over the relative standard uncertainty.
#ifndef WITHY_BENDING_FIT_BLANK_H_
#define WITHY_BENDING_FIT_BLANK_H_

#include <vector>

#include "bench_reading_model.h"
#include "withy/numerics/least_squares.h"

namespace withy::bending {

struct BlankFit {
  LeastSquaresFit fit;              // over sought figures, then doubts; residuals by reading, then by doubt
  std::vector<double> studentised;  // likewise
  Rows covariance;                  // of the sought figures, relative; what no reading sees stays at kNoIdea
  int spare = 0;                    // readings more than unknowns
};

// What nobody has an idea of is known to a factor of exp(3) = 20: far beyond every doubt that is worth printing.
inline constexpr double kNoIdea = 3;

class BlankProblem {
 public:
  BlankProblem(const Rod& rod, SoughtFigures sought);

  const std::vector<Sought>& sought() const { return figures_; }  // those that are not held
  const std::vector<Sought>& held() const { return held_; }
  const TrialBlank& blank() const { return blank_; }

  // By all readings whose index is not `without`. Starts where the figures say.
  BlankFit Fit(const std::vector<ReadingModel>& readings, int without = -1);

  // ln of what a reading would be at x, and how it answers to each unknown; unset where it cannot be taken.
  std::optional<double> Log(const ReadingModel& reading, const std::vector<double>& x);
  std::optional<std::vector<double>> Slopes(const ReadingModel& reading, const std::vector<double>& x);
  // Of the section at that position; empty of a solid one.
  Profile WallOf(int position, const std::vector<double>& x);
  // All unknowns, those for doubts included.
  int unknowns() const { return static_cast<int>(figures_.size() + doubts_.size()); }

 private:
  // Something that is known, but not exactly: in standard uncertainties about 0.
  struct Doubt {
    enum class Kind { kHeld, kDiameters, kWallAtButt, kWallAtTip, kWallsBetween } kind = Kind::kHeld;
    int index = 0;  // in held_, or position of the section
    double deviation = 1;
  };
  void CollectDoubts(const SoughtFigures& sought);
  void CollectWallDoubts(const MeasuredWalls& walls, int position);
  bool SetBlank(const std::vector<double>& x);
  bool Residuals(const std::vector<ReadingModel>& readings, int without, const std::vector<double>& x,
                 std::vector<double>& r);

  std::vector<Sought> figures_, held_;
  std::vector<Doubt> doubts_;
  std::size_t sections_ = 0;
  TrialBlank blank_;
};

}  // namespace withy::bending

#endif  // WITHY_BENDING_FIT_BLANK_H_
