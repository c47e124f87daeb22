// Guides with their model filled in, and the tip-top.
#ifndef WITHY_ROD_GUIDE_H_
#define WITHY_ROD_GUIDE_H_

#include <string>

#include "withy/rod/handle.h"
#include "withy/rod/known.h"

namespace withy {

enum class GuideForm { kSingleFoot, kDoubleFoot, kSnake, kSingleWire, kRoller, kOther };

struct Guide {
  std::string id;
  FieldPath at;
  std::string model;          // id; values below come from the model and say so in their `at`
  bool model_found = false;
  GuideForm form = GuideForm::kOther;
  std::string form_word;      // as written
  Maybe<Length> from_tip;     // tip-top's ring centre to this ring's centre; unset = to be computed
  Maybe<double> angle_deg;    // unset = on the reel's side
  End foot_towards = End::kButt;
  bool locked = false;
  Maybe<Length> ring_outer, ring_inner, ring_height, foot_length, foot_width, foot_thickness;
  Maybe<Mass> mass;
  Along ring;                 // plane of the ring

  // Feet that a wrap goes on: 2, of single_foot 1, of single_wire 1.
  int feet() const { return form == GuideForm::kSingleFoot || form == GuideForm::kSingleWire ? 1 : 2; }
};

struct TipTop {
  std::string id;
  FieldPath at;
  Maybe<Length> tube_bore, tube_length, ring_outer, ring_inner, ring_height;
  Maybe<Length> end_beyond_tube;          // lengthens the rod
  Maybe<Length> ring_center_beyond_tube;  // default worked out as the schema says; else assumed 0 and listed
  Maybe<double> angle_deg;                // about the blank; unset = on the reel's side
  Maybe<Mass> mass;
  std::string bond;
};

}  // namespace withy

#endif  // WITHY_ROD_GUIDE_H_
