// The blank as supplied with a guess in place of what is not known of it: its masses, and the beam that it makes.
#ifndef WITHY_BENDING_TRIAL_BLANK_H_
#define WITHY_BENDING_TRIAL_BLANK_H_

#include <vector>

#include "blank_beam.h"
#include "sought.h"

namespace withy::bending {

// Of one section.
struct Guess {
  double modulus_pa = 0, density_kg_m3 = 0;
  double wall_butt_m = 0, wall_tip_m = 0;  // used where none was measured there
  double outer_off_m = 0;                  // added to every outer diameter
  // Of measured walls: at the ends, and of those between together; in standard uncertainties of each.
  double wall_butt_off = 0, wall_tip_off = 0, walls_between_off = 0;
};

class TrialBlank {
 public:
  // REQUIRES: as SoughtIn. The rod must outlive it; nothing of it is changed.
  TrialBlank(const Rod& rod, const std::vector<MeasuredWalls>& walls);

  // By position in Rod::blank.assembled. False where such a section cannot be: a wall of nothing, or with no bore left.
  bool Set(const std::vector<Guess>& guesses);

  // From butt end to tip end, on the blank as supplied; unset = how its sections meet is not known.
  std::optional<double> length_m() const { return length_; }
  // Butt end of a section, on the blank as supplied. REQUIRES length_m().
  double StartOf(int position) const { return starts_[position]; }
  // As it was set; empty of a solid section.
  const Profile& WallOf(int position) const { return rod_.blank.sections[position].wall; }
  // Of a stretch of a section as supplied, about the section's butt end.
  MassProperties PropertiesOf(int position, double from_m, double to_m) const;
  // REQUIRES length_m(), and 0 <= clamp_m < that.
  Beam BeamFrom(double clamp_m) const;

 private:
  void PlaceSections();
  void DrawWall(int position, const Guess& guess);

  Rod rod_;  // uncut, and without what only text needs
  std::vector<MeasuredWalls> walls_;
  SectionsAnswers answers_;
  std::vector<ModuliOfSection> moduli_;
  std::vector<ShapeDoubts> doubts_;
  std::vector<Plug> plugs_;
  std::vector<Guess> guesses_;
  std::vector<double> starts_;
  std::optional<double> length_;
};

}  // namespace withy::bending

#endif  // WITHY_BENDING_TRIAL_BLANK_H_
