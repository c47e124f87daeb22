// The rules of this concern, in groups of one file each.
#ifndef WITHY_FIT_RULES_H_
#define WITHY_FIT_RULES_H_

#include <vector>

#include "withy/findings/rule.h"
#include "withy/fit/fit.h"
#include "withy/fit/span.h"
#include "withy/rod/rod.h"
#include "withy/sections/sections.h"

namespace withy::fit {

struct View {
  const Rod& rod;
  const SectionsAnswers& sections;
  const FitAnswers& answers;
};

std::vector<Rule<View>> LengthRules();   // of the finished rod
std::vector<Rule<View>> RestRules();     // of a place of the blank that was written or tried on
std::vector<Rule<View>> SawRules();      // of what the shop may saw at once
std::vector<Rule<View>> CutRules();      // of what the butt does in its handle
std::vector<Rule<View>> StackRules();    // parts beside one another
std::vector<Rule<View>> BoreRules();     // a part and the blank in it
std::vector<Rule<View>> SlideRules();    // a part on its way over the blank
std::vector<Rule<View>> ReadingRules();  // two readings of one thing
std::vector<Rule<View>> ArborRules();    // what is inside a part: arbors, cavity, counterweights
std::vector<Rule<View>> ArborWayRules();  // arbors on their way home, and over hollows
std::vector<Rule<View>> HoldRules();     // what holds a part, and the reel
std::vector<Rule<View>> JointRules();    // sections in one another

// Whether the blank comes to rest inside the part, by a dry fit or a written place: bore and blank are then equally
// wide there by definition.
bool BlankRestsIn(const Rod& rod, const Part& part);

// Whether the blank's place is written, still open, and bore and taper tell it too.
bool RestIsJudgedByContact(const Rod& rod);

// Uncertainty of the blank's diameters, in metres; what the bore's adds is not known.
double BlankPlusMinus(const Rod& rod);

}  // namespace withy::fit

#endif  // WITHY_FIT_RULES_H_
