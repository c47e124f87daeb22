// Where a glued thing and what it is glued to overlap, and the profiles on either side of the adhesive.
//
// Coordinates of a bond are the thing's own: metres from its own butt end towards the tip.
#ifndef WITHY_BONDING_BOND_H_
#define WITHY_BONDING_BOND_H_

#include <optional>
#include <string>
#include <vector>

#include "withy/bonding/joint_volume.h"
#include "withy/fit/fit.h"
#include "withy/rod/rod.h"

namespace withy {

struct Bond {
  std::optional<BondGap> gap;      // unset = cannot be told; `measure` says what would settle it
  std::string measure;
  std::optional<double> origin_m;  // own zero, from the butt end of the finished rod
  std::vector<Fillet> fillets;     // where an end shows on what it is glued to
};

Bond BondOfPart(const Rod& rod, const Part& part, const PartFit& fit);
// Of an arbor with a bore of its own: between it and the blank.
Bond BondOfArbor(const Rod& rod, const Part& host, const Arbor& arbor);
// Of the tip-top's tube on the blank.
Bond BondOfTipTop(const Rod& rod);
// Of a spigot in the section that it is fixed in. Of sleeve and metal ferrule the diameters are not part of a design.
Bond BondOfJoint(const Rod& rod, const Joint& joint);

// Counterweights and what they are potted in, as one thing that fills the cavity from its butt end. Adhesive over the
// foremost is as thick as withy/rod/weights_cover.h says.
struct Potting {
  std::optional<double> volume_m3, center_m;  // centre: own, of the host part; unset with measure
  double length_m = 0;
  std::string measure;
};
Potting PottingOf(const Part& part, double count);

// The wider of two profiles over [from, to], with a knot where they cross.
Profile WiderOf(const Profile& a, const Profile& b, double from_m, double to_m);

}  // namespace withy

#endif  // WITHY_BONDING_BOND_H_
