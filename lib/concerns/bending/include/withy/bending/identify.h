// Wall, modulus and density of a blank from a few measurements that anyone can make at a bench.
//
// Unknown are, of each section, the modulus, the wall (linear from butt to tip, or one value) and the density; known are the
// calliper taper and whatever of the three was measured. Readings are masses, balance points, drops under hung weights and
// counted oscillations of the bare blank (blank.bench, weighings). Weighted least squares on the logarithms of the unknowns,
// by the models of elastica.h and modes.h; intervals from the covariance, k = 2.
//
// Mass, balance point, drops and frequencies of a thin tube know only density x wall and modulus x wall: with all three
// unknown one combination stays open, which is said, with the reading that would settle it, and not invented.
#ifndef WITHY_BENDING_IDENTIFY_H_
#define WITHY_BENDING_IDENTIFY_H_

#include <optional>
#include <string>
#include <vector>

#include "withy/findings/field_path.h"
#include "withy/rod/rod.h"
#include "withy/sections/sections.h"

namespace withy {

enum class WallModel { kLinear, kPerSection };

enum class UnknownKind { kModulus, kDensity, kWallAtButt, kWallAtTip, kWall };

struct IdentifiedFigure {
  UnknownKind kind = UnknownKind::kModulus;
  int section = -1;                    // in Rod::blank.sections; -1 = the same for all
  FieldPath at;
  std::optional<double> value;         // SI
  std::optional<double> plus_minus;    // k = 2
  std::optional<double> said;          // by the design
  bool held = false;                   // measured, and left alone
};

enum class ReadingKind { kMass, kBalance, kDrop, kFrequency };

struct IdentifiedReading {
  ReadingKind kind = ReadingKind::kMass;
  FieldPath at;
  double measured = 0, plus_minus = 0; // SI; k = 2, written or assumed
  std::optional<double> fitted;
  std::optional<double> deviation;     // over its own standard deviation
  bool rejected = false;
  std::string remark;
};

struct OpenCombination {
  std::string text;
  std::optional<double> doubt;         // relative, k = 2; unset = without bound
};

struct NextReading {
  std::string text;
  UnknownKind kind = UnknownKind::kModulus;
  int section = -1;
  double narrows = 1;                  // its doubt is divided by this
};

enum class IdentificationState { kFound, kNotEnough, kContradictory, kCannotTell };

struct Identification {
  IdentificationState state = IdentificationState::kCannotTell;
  std::string verdict;
  std::vector<IdentifiedFigure> figures;
  std::vector<IdentifiedReading> readings;
  std::vector<OpenCombination> open;
  std::vector<NextReading> next;       // the most helpful first, three at most
  std::optional<double> misfit, condition;
  std::vector<Assumption> assumptions;
};

// Never fails: state and verdict say what could not be told.
Identification Identify(const Rod& rod, const SectionsAnswers& sections, WallModel wall = WallModel::kLinear);

}  // namespace withy

#endif  // WITHY_BENDING_IDENTIFY_H_
