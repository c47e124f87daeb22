// Whether a stated mass can be that of the tube whose outer diameters are stated: the slip of ounces written as grams
// is within every plausible range, and shows only beside the taper.
#ifndef WITHY_DOCUMENT_SECTION_MASS_H_
#define WITHY_DOCUMENT_SECTION_MASS_H_

#include <vector>

#include "spot.h"
#include "withy/findings/finding.h"
#include "withy/v1/blank.pb.h"

namespace withy {

// Compares the mass with the lightest tube of the section's outer diameters: a wall of 0.1 mm, the least that the
// schema finds plausible, of 1.2 g/cm3, less than any laminate of glass or carbon (common practice, no source; cane is
// lighter, but never so thin). Only the stretch between the first and the last row counts. A table of fewer than two
// rows, or whose rows do not run from the butt to the tip, says nothing.
void CheckSectionMass(const v1::Section& section, const Spot& spot, std::vector<Finding>& findings);

// The same for the whole blank, spare tips not counted.
void CheckBlankMass(const v1::Blank& blank, const Spot& spot, std::vector<Finding>& findings);

}  // namespace withy

#endif  // WITHY_DOCUMENT_SECTION_MASS_H_
