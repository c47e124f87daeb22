// Wall, modulus and density of a blank from a few measurements that anyone can make at a bench.
//
//   Identification found = Identify(rod, sections);
//   found.state                              // kFound
//   found.figures[0].value, .plus_minus      // 1.12e11 Pa, 1.3e9: k = 2
//   found.next[0].text                       // "Calliper the wall at the butt face ...": narrows the worst doubt most
//
// Unknown are the modulus and the density of each laminate and the wall of each section (linear from butt to tip, or
// one value); known are the calliper taper and whatever of the three was measured. Readings are measured masses and
// balance points of sections and of the whole blank, drops under hung weights and counted oscillations (Rod::blank,
// Rod::weighings). Weighted least squares on the logarithms of the unknowns, by the models of tube.h, elastica.h
// (clamped level, with its own weight) and modes.h; intervals from the covariance, k = 2, with the doubts of what was
// held and of the diameters carried in.
//
// Mass, balance point, drops and frequencies of a thin tube know only density x wall and modulus x wall: with all three
// unknown one combination stays open, which is said, with the reading that would settle it, and not invented. One
// reading that does not fit is found where the others leave no choice (wrong_reading.h) and left out; else nothing is
// guessed.
//
// Cost: some hundred bends of the blank; seconds where a reading is wrong.
#ifndef WITHY_BENDING_IDENTIFY_H_
#define WITHY_BENDING_IDENTIFY_H_

#include <optional>
#include <string>
#include <vector>

#include "withy/findings/field_path.h"
#include "withy/rod/rod.h"
#include "withy/sections/sections.h"

namespace withy {

// Of a section: linear from butt to tip, or one value where none was measured at its ends. Through measured walls
// either way.
enum class WallModel { kLinear, kPerSection };

enum class UnknownKind { kModulus, kDensity, kWallAtButt, kWallAtTip, kWall };

struct IdentifiedFigure {
  UnknownKind kind = UnknownKind::kModulus;
  int section = -1;           // in Rod::blank.sections; -1 = the same for all
  std::vector<int> sections;  // every one that it holds for
  FieldPath at;
  std::optional<double> value;       // SI
  std::optional<double> plus_minus;  // k = 2
  std::optional<double> said;        // by the design
  bool held = false;                 // measured, and left alone
};

enum class ReadingKind { kMass, kBalance, kDrop, kFrequency };

struct IdentifiedReading {
  ReadingKind kind = ReadingKind::kMass;
  FieldPath at;
  double measured = 0, plus_minus = 0;  // SI; k = 2, written or assumed
  std::optional<double> fitted;
  std::optional<double> deviation;  // over its own standard deviation
  bool rejected = false;
  bool faulty = false;  // cannot be used as it is written: left out
  std::string remark;
};

struct OpenCombination {
  std::string text;
  std::optional<double> doubt;  // relative, k = 2; unset = without bound
};

struct NextReading {
  std::string text;
  UnknownKind kind = UnknownKind::kModulus;
  int section = -1;
  double narrows = 1;  // its doubt is divided by this
};

enum class IdentificationState { kFound, kNotEnough, kContradictory, kCannotTell };

struct Identification {
  IdentificationState state = IdentificationState::kCannotTell;
  std::string verdict;
  std::vector<IdentifiedFigure> figures;
  std::vector<IdentifiedReading> readings;
  std::vector<OpenCombination> open;
  std::vector<NextReading> next;  // the most helpful first, three at most
  std::optional<double> misfit, condition;
  std::vector<Profile> walls;  // as Rod::blank.sections, metres as supplied: measured, and found between and beyond
  std::vector<Assumption> assumptions;
};

// Never fails: state and verdict say what could not be told.
Identification Identify(const Rod& rod, const SectionsAnswers& sections, WallModel wall = WallModel::kLinear);

}  // namespace withy

#endif  // WITHY_BENDING_IDENTIFY_H_
