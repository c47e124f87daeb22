// Beams of one rod for any place where it is held, and what bends them.
#ifndef WITHY_BENDING_WORKSHOP_H_
#define WITHY_BENDING_WORKSHOP_H_

#include <vector>

#include "bend.h"

namespace withy::bending {

// REQUIRES: what MakeBlankBeam asks of the sections; the place of the blank and of the tip-top's ring. Keeps references
// to rod, answers and things. Places where it is held are from the butt end of the finished rod.
class Workshop {
 public:
  Workshop(const Rod& rod, const SectionsAnswers& sections, std::vector<ModuliOfSection> moduli,
           std::vector<Plug> plugs, const std::vector<OnTheBlank>& things, Inputs& inputs);

  // Whether there is blank ahead of the clamp.
  bool Holds(double clamp_m) const;
  // Where that is from the datum of the report: of the bare blank its butt face, else the butt end of the rod. A clamp
  // behind the blank holds it at its butt face: the handle in between counts as rigid.
  double Datum(double clamp_m, bool finished) const;
  // Of all places where a load case, or `clamp_m`, holds the rod: from there on everything on it counts.
  double FurthestBack(double clamp_m) const;

  StiffBlank MakeStiff() const;
  LoadedBeam MakeBeam(double clamp_m, bool finished) const;
  // Under a load case, by its number. `held` is the beam for `clamp_m`, which holds where the load case says no other
  // place.
  BentRod BendUnder(std::size_t load_case, const LoadedBeam& held, double clamp_m, bool finished) const;

 private:
  const Rod& rod_;
  const SectionsAnswers& sections_;
  const std::vector<ModuliOfSection> moduli_;
  const std::vector<ShapeDoubts> doubts_;
  const std::vector<Plug> plugs_;
  const std::vector<Pull> pulls_;  // of the load cases: the same inputs for the bare blank and the finished rod
  const std::vector<OnTheBlank>& things_;
};

}  // namespace withy::bending

#endif  // WITHY_BENDING_WORKSHOP_H_
