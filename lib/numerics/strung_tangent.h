// How a solved strung beam answers to small changes: implicit differentiation of the shooting system.
#ifndef WITHY_LIB_NUMERICS_STRUNG_TANGENT_H_
#define WITHY_LIB_NUMERICS_STRUNG_TANGENT_H_

#include <vector>

#include "strung_system.h"
#include "withy/numerics/strung_beam.h"

namespace withy {

// By the place of a ring, per metre, or by the logarithm of the tension. A moving ring is followed.
struct StrungChange {
  std::size_t moved = 0;         // node; 0 where none moves
  std::vector<double> unknowns;  // as those of the system
};

class StrungTangent {
 public:
  StrungTangent(const StrungCase& given, const StrungBeam& solved);

  // False where the solution has no tangent: all changes are then nought.
  bool usable() const { return usable_; }
  const StrungSystem& system() const { return system_; }

  StrungChange ByRing(std::size_t node) const;
  StrungChange ByTension() const;

  StateChange OfNode(const StrungChange& change, std::size_t node) const;  // moment: of Q
  PlaneVector OfCentre(const StrungChange& change, std::size_t node) const;
  PlaneVector OfChord(const StrungChange& change, std::size_t span) const;
  // Of M above a node, but for what grows with the tension itself.
  double OfMoment(const StrungChange& change, std::size_t node) const;
  // Of the axis at a fixed place within a section, whose answers to its start are `by`.
  StateChange Within(const StrungChange& change, std::size_t section, const FirstVariations& by) const;

 private:
  PlaneVector OfPull(const StrungChange& change, std::size_t section) const;
  // What the end of a section answers to its start being moved along the beam while its state is held.
  StateChange ByStart(std::size_t section, const FirstVariations& by) const;
  double StiffnessAt(std::size_t node) const;

  const StrungCase& given_;
  StrungSystem system_;
  bool usable_ = false;
};

}  // namespace withy

#endif  // WITHY_LIB_NUMERICS_STRUNG_TANGENT_H_
