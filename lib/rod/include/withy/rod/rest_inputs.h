// What the uncertainty of the law of the cut (rest_law.h) comes from.
//
//   for (const RestInput& input : RestInputsOf(rod, 0.1625)) input.name, input.of_variance;
//   // blank.sections[blank].length                                   0.20
//   // handle.parts[module].plugs (its diameters and the blank's)     0.80
//
// Of a law by contact: by how much the square of half the band falls without the blank's length, and with the dry fits read
// exactly; what is left are the diameters. Own derivation. It costs two more laws, so it is asked only when somebody wants
// to know.
#ifndef WITHY_ROD_REST_INPUTS_H_
#define WITHY_ROD_REST_INPUTS_H_

#include <string>
#include <vector>

#include "withy/rod/rod.h"

namespace withy {

struct RestInput {
  std::string name;        // as of an UncertainInput
  double of_variance = 0;  // all together 1
};

// Name of the one input of Rod::inputs that the place of the blank by the law is. REQUIRES: a law.
std::string RestInputName(const Rod& rod);

// Empty without a law, and where it leaves nothing open. REQUIRES: 0 <= cut < the blank's length.
std::vector<RestInput> RestInputsOf(const Rod& rod, double cut_m);

}  // namespace withy

#endif  // WITHY_ROD_REST_INPUTS_H_
