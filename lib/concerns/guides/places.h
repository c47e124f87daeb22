// The places of the guides as they follow one another in the list, and the one that spoils them.
//
// One wrong distance makes two or three spacings wrong, and two guides change places. Who reads that wants to hear of
// the one distance: it is that of the guide which could stand somewhere between its neighbours so that all is regular.
#ifndef WITHY_GUIDES_PLACES_H_
#define WITHY_GUIDES_PLACES_H_

#include <optional>
#include <vector>

#include "withy/rod/rod.h"

namespace withy::guides {

class Places {
 public:
  // From the list, butt first; the tip-top ends it. A guide without a place leaves a gap that is not judged.
  explicit Places(const std::vector<Guide>& guides);

  bool InOrder() const;  // each known place nearer to the tip than the known one before it in the list
  // From guide `i` (in the list) to the next one or the tip-top, in mm; unset where one of the two has no place.
  std::optional<double> Ahead(int i) const;
  // The spacing in front of guide `i` is more than a quarter longer than the one behind it.
  bool Grows(int i) const;
  // The guide that could stand elsewhere between its neighbours so that the list is in order and no spacing grows. Of
  // several the one that leaves the spacings most even, of about equal ones the one that has to move least, of two that
  // were interchanged the later one; unset where there is none, or nothing is wrong.
  std::optional<int> Culprit() const;

 private:
  bool Regular() const;
  // The guides beside the first thing that is wrong: one of them it must be.
  std::vector<int> Suspects() const;
  bool InterchangedWithNext(int i) const;
  // The nearest place to its own that makes everything regular for `i`, in mm from the tip-top; unset where none does.
  std::optional<double> RegularPlaceOf(int i) const;
  // How uneven the spacings are: the sum of the logarithms of their ratios, one to the next.
  double Roughness() const;

  std::vector<std::optional<double>> mm_;  // from the tip-top's ring; the last one is the tip-top itself
};

}  // namespace withy::guides

#endif  // WITHY_GUIDES_PLACES_H_
