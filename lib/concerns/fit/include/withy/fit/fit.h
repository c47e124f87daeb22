// Fit: how long does the rod come out, and does every part go where it is to go?
#ifndef WITHY_FIT_FIT_H_
#define WITHY_FIT_FIT_H_

#include <optional>
#include <vector>

#include "withy/findings/finding.h"
#include "withy/numerics/uncertain.h"
#include "withy/rod/figure.h"
#include "withy/rod/rod.h"
#include "withy/sections/sections.h"

namespace withy {

// Metres.
struct ArborFit {
  std::optional<double> blank_m;  // largest blank diameter under it
  std::optional<double> bore_m;   // smallest bore diameter of the host around it
};

struct PartFit {
  std::optional<double> blank_at_start_m;     // blank diameter under its butt-side face
  std::optional<double> blank_at_tip_side_m;  // under its tip-side face
  // Smallest bore less blank diameter along the part, where bore and blank are known over it; negative = tighter than
  // the blank. Of a bore of which only the mouth is known: at the mouth. Both sides together.
  std::optional<double> clearance_m;
  std::optional<double> clearance_at_m;       // where that is, from the butt end of the finished rod
  // Largest and smallest blank / bore over the part, for stretched and shrunk parts.
  std::optional<double> most_stretch, least_stretch;
  std::vector<ArborFit> arbors;               // as Part::arbors
};

struct FitAnswers {
  std::optional<Uncertain> overall_m;
  std::optional<Uncertain> short_of_target_m;  // wanted less had
  std::vector<PartFit> parts;                  // as Rod::handle.parts
  // Thickest blank that the tip-top's tube goes over: at the tube's mouth, at the tip where its length is not known.
  std::optional<Uncertain> under_tip_tube_m;
  std::optional<Uncertain> tip_tube_clearance_m;  // tube bore less that
  std::optional<int> pieces;
  std::optional<Uncertain> packed_length_m;    // longest piece, with handle or tip-top where they are on it
  std::vector<Assumption> assumptions;
  std::vector<Unknown> unknowns;
};

FitAnswers ComputeFit(const Rod& rod, const SectionsAnswers& sections);

void CheckFit(const Rod& rod, const SectionsAnswers& sections, const FitAnswers& answers,
              std::vector<Finding>& findings);
std::vector<Code> FitCodes();
std::vector<Figure> FitFigures();

}  // namespace withy

#endif  // WITHY_FIT_FIT_H_
