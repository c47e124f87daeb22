// The rules of this concern, in groups of one file each.
#ifndef WITHY_GUIDES_RULES_H_
#define WITHY_GUIDES_RULES_H_

#include <vector>

#include "withy/findings/rule.h"
#include "withy/fit/fit.h"
#include "withy/fit/span.h"
#include "withy/guides/guides.h"
#include "withy/rod/rod.h"

namespace withy::guides {

struct View {
  const Rod& rod;
  const FitAnswers& fit;
  const GuidesAnswers& answers;
};

std::vector<Rule<View>> SpacingRules();   // one guide and the next
std::vector<Rule<View>> PlaceRules();     // a guide and what is under it
std::vector<Rule<View>> RingRules();      // what a guide is
std::vector<Rule<View>> TipRules();       // the tip-top
std::vector<Rule<View>> ConeRules();      // the butt guide and the spool
std::vector<Rule<View>> PracticeRules();  // what is usual

// Guides that say how far from the tip-top they are, in order along the rod, butt first; without the one that is told
// to stand out of its place in the list.
std::vector<const Guide*> AlongTheRod(const View& view);

// The butt guide's ring takes the loops of a fixed spool (guides/line-cone); unset where there is none, or not all of it is known.
std::optional<bool> InLineCone(const Rod& rod, const Guide& guide);

// The butt guide is told to stand too close to the reel: more about its place would only repeat that.
bool NearTheReel(const View& view);

// The stretch that a guide's feet and its ring's plane take.
std::optional<Span> FeetOn(Origin origin, const Guide& guide);

// A finding at a guide's place, with its place on the rod.
Finding AtGuide(const View& view, const Code& code, const Guide& guide, std::string message,
                std::vector<Number> numbers);

}  // namespace withy::guides

#endif  // WITHY_GUIDES_RULES_H_
