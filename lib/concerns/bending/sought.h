// What identification looks for in a blank, and what it holds because it was measured.
#ifndef WITHY_BENDING_SOUGHT_H_
#define WITHY_BENDING_SOUGHT_H_

#include <optional>
#include <vector>

#include "withy/bending/identify.h"

namespace withy::bending {

// One of the blank's figures.
struct Sought {
  UnknownKind kind = UnknownKind::kModulus;
  std::vector<int> sections;  // positions in Rod::blank.assembled that share it
  FieldPath at;
  double value = 0;            // where the search starts, or where it is held; SI, above zero
  std::optional<double> said;  // by the design
  bool held = false;           // measured
  double held_deviation = 0;   // standard, relative: 0 = exact
};

// Walls of one section that were read from an instrument, in order along it.
struct MeasuredWalls {
  std::vector<Profile::Knot> knots;  // as supplied, metres
  std::vector<double> deviations_m;  // standard, by knot
  bool butt = false, tip = false;    // one of them is that of the end

  bool IsButt(std::size_t knot) const { return butt && knot == 0; }
  bool IsTip(std::size_t knot) const { return tip && knot + 1 == knots.size(); }
};

struct SoughtFigures {
  std::vector<Sought> figures;               // by section from the butt: modulus, density, walls
  std::vector<MeasuredWalls> walls;          // by position in Rod::blank.assembled
  std::vector<double> diameter_deviation_m;  // likewise: standard, of all outer diameters together
};

// REQUIRES: every assembled section has its outer profile, a length and a shape with a formula. Sections of one
// material and shape share a modulus and a density unless it was measured of one of them: listed as an assumption.
SoughtFigures SoughtIn(const Rod& rod, const SectionsAnswers& sections, WallModel wall,
                       std::vector<Assumption>& assumptions);

// In Rod::blank.sections; -1 where several sections, all of the blank, share it.
int SectionShownFor(const Sought& figure, const Rod& rod);

// Where a wall of this section is written, butt or tip; empty where its table has no rows.
FieldPath WallPath(const Section& section, bool tip);

}  // namespace withy::bending

#endif  // WITHY_BENDING_SOUGHT_H_
