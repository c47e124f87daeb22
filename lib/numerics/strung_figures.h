// From the unknowns of the shooting system to what is asked of a strung beam; and its sections walked anew.
#ifndef WITHY_LIB_NUMERICS_STRUNG_FIGURES_H_
#define WITHY_LIB_NUMERICS_STRUNG_FIGURES_H_

#include <vector>

#include "strung_system.h"
#include "withy/numerics/strung_beam.h"

namespace withy {

// Rings, spans, nodes, path and tensions, at the share of the last Factor or Evaluate. False where a number ran away.
bool SetFigures(const StrungSystem& system, double share, StrungBeam& bent);

// Points and strain energy, from the nodes. False as above.
bool SetPoints(const StrungCase& given, StrungBeam& bent);

// Whether the solution has the nodes of the case: without, nothing can be told from it.
bool Fits(const StrungCase& given, const StrungBeam& solved);

// The ring of node k, and the span from it to the next.
PlaneVector CentreOf(const StrungCase& given, const std::vector<StrungNode>& nodes, std::size_t k);
SpanChord SpanOf(const StrungCase& given, const std::vector<StrungNode>& nodes, std::size_t k);

// Up the section above node k of a solved beam, to s.
SectionWalk WalkOf(const StrungCase& given, const StrungBeam& solved, std::size_t k, double s);
// The arcs of the whole section, end to end.
std::vector<BendArc> ArcsOf(const StrungCase& given, const StrungBeam& solved, std::size_t k);
// Diameter at t of an arc, from those at both ends of each piece.
double OuterAt(const Beam& beam, const std::vector<double>& outer_m, const BendArc& arc, double t);

}  // namespace withy

#endif  // WITHY_LIB_NUMERICS_STRUNG_FIGURES_H_
