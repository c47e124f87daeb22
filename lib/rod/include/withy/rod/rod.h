// What a design means: SI units, defaults and models filled in, places worked out, the log taken into account, every
// assumption listed. Made by `Resolve` (resolve.h), trusted by the concerns. Knows no Protocol Buffers.
//
//   Rod rod = Resolve(document);
//   rod.overall_m->value()                          // 2.2097, +/- rod.overall_m->plus_minus()
//   rod.handle.parts[1].start.from_butt_m->value()  // of the second part
//   rod.BlankDiameterAt(0.250)                      // under a point of the finished rod
//
// Unset is 'cannot be told', never zero. Values are finite; where the design holds something absurd (a negative length)
// it is kept as written for the checks to speak of, and nothing is derived from it.
#ifndef WITHY_ROD_ROD_H_
#define WITHY_ROD_ROD_H_

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "withy/findings/finding.h"
#include "withy/numerics/uncertain.h"
#include "withy/rod/blank.h"
#include "withy/rod/bond.h"
#include "withy/rod/guide.h"
#include "withy/rod/handle.h"
#include "withy/rod/known.h"
#include "withy/rod/load_case.h"
#include "withy/rod/rest_law.h"
#include "withy/rod/wrap.h"

namespace withy {

// The order, as far as figures go.
struct Order {
  std::string technique, hand;
  Maybe<Length> overall_length;     // plus_minus = tolerance
  Maybe<Length> balance_from_butt;  // with the reel on; plus_minus = tolerance
  Maybe<Length> holding_point;      // from the butt end
  Maybe<Mass> reel_mass;
  // From `foot_center_from_butt`, else from the part that holds the reel. `reel_foot_m` is the place that counts.
  Maybe<Length> reel_foot_center;
  std::optional<Uncertain> reel_foot_m;
  std::optional<double> line_strength_n;
  Maybe<Length> line_diameter, knot_diameter;
  std::optional<Mass> lure_min, lure_max;
  bool has_reel = false;
  // Side of reel and rings: +1 above (outside of the bend), -1 below; as written, else by technique; 0 = cannot be told.
  int side = 0;
  Maybe<Length> spool_diameter, spool_axis_height;
  Maybe<double> spool_axis_angle_deg;  // tip end turned towards the blank is positive; unset = parallel
  Maybe<Length> spool_lip;             // from the middle of the reel foot, towards the tip
  Maybe<double> friction;              // of line on ring
};

// How the blank's place in the handle is known.
enum class RestBasis {
  kUnknown,      // `rest_measure` says what to do
  kGiven,        // handle.blank_butt_from_butt
  kDryFit,       // the latest dry fit that still holds
  kLaw,          // the law of the cut (rest_law.h): bore against taper, or drawn on from dry fits
  kAgainstCap,   // a blank that runs through comes to rest against the butt cap: assumed
};

// A weighing of several things together.
struct Weighing {
  struct Off {
    double butt_m = 0, tip_m = 0;
  };
  std::vector<std::string> what;  // never empty
  std::vector<Off> off;           // as `what`: what had been cut off a section by then; 0 for other things
  Known<Mass> mass;
  Maybe<Length> balance;          // from the butt end of what was weighed
  bool with_reel = false;
  FieldPath at;                   // of the entry, or of blank.mass
};

// The whole rod as it then stood, weighed or laid on an edge.
struct WholeWeighing {
  Maybe<Mass> mass;                  // unset = only the balance point was read
  Maybe<Length> balance;             // from the butt end of the rod
  bool with_reel = false;
  bool outdated = false;             // a section was, or is to be, cut after it
  std::uint32_t weights = 0;         // counterweights in it: as written, else those potted by then
  std::uint32_t potted = 0;          // those potted by then
  std::vector<std::string> missing;  // ids of what was not on yet, as written
  FieldPath at;
};

// A dry fit as logged; corrected ones are left out.
struct DryFit {
  std::string part;
  Maybe<Length> overall;    // butt end of the part to the tip end of the blank
  Maybe<Length> stand_out;
  FieldPath at;
  bool arbors_on = false;
  double cut_butt_m = 0;    // off the butt when it was read
  double cut_elsewhere_m = 0;  // off all other ends of the assembled blank then
  bool impossible = false;  // longer, or of a one-piece handle shorter, than the two can be together: counts for nothing
  bool stale = false;       // the butt was cut, or is to be cut, after it
};

// What the log has closed: no plan alters it. A correction of the entry undoes it; what is removed, or broke, is open
// again. Each thing stands here once, as the log leaves it.
struct Closed {
  enum class Kind { kCut, kGlued, kPotted, kReamed, kWrapped, kCoated };
  Kind kind = Kind::kCut;
  std::string id;                  // of the section, part, arbor, joint, tip-top, wrap, guide or inscription
  End end = End::kUnknown;         // of a cut
  double amount = 0;               // metres off that end; number of counterweights potted; coats; else 0
  // Of the glued part that the blank rests in: butt face of the blank from its own butt end, where a dry fit told it.
  std::optional<double> rest_m;
  FieldPath at;                    // the last entry that says so
};

struct Rod {
  Order order;
  Blank blank;
  Handle handle;
  std::vector<Guide> guides;              // in the order of the design
  std::optional<TipTop> tip_top;
  std::vector<Thread> threads;
  std::vector<Finish> finishes;
  std::vector<Wrap> wraps;                // in the order of the design, one per foot
  std::vector<Inscription> inscriptions;
  std::vector<Adhesive> adhesives;        // in the order of the design
  Shop shop;
  std::vector<LoadCase> load_cases;       // in the order of the design
  std::vector<StaticTest> static_tests;   // oldest first

  // Along the finished rod, from its butt end, metres; unset = cannot be told.
  RestBasis rest_basis = RestBasis::kUnknown;
  std::string rest_measure;
  std::optional<Uncertain> blank_butt_m;  // butt face of the blank
  std::optional<Uncertain> blank_tip_m;   // tip end of the blank
  std::optional<Uncertain> tip_ring_m;    // tip-top's ring centre: the datum of guide positions
  std::optional<Uncertain> overall_m;     // tip end of the rod: its length

  std::optional<RestLaw> rest_law;        // unset = what the butt does in its handle is not known
  std::vector<Closed> closed;             // in the order in which the entries closed them first
  std::vector<DryFit> dry_fits;           // oldest first
  std::vector<GlueUp> glue_ups;           // oldest first
  std::vector<Weighing> weighings;        // totals, oldest first; single things are in the things themselves
  std::vector<WholeWeighing> wholes;      // oldest first
  std::vector<FieldPath> not_understood;  // log entries: every plan is 'cannot tell'

  std::vector<Assumption> assumptions;    // in the order met
  std::vector<Unknown> unknowns;
  std::vector<Finding> findings;          // rod/*
  Inputs inputs;                          // the independent inputs of all Uncertain above; concerns go on from a copy

  // Outer diameter of the blank under a point of the finished rod, in metres. Unset where the blank's place or profile
  // is not known, and beyond the blank's ends.
  std::optional<double> BlankDiameterAt(double from_butt_m) const;
  // The same on the blank.
  std::optional<double> DiameterOnBlank(double on_blank_m) const;
  // Diameter under a thing by whichever of its two origins is known.
  std::optional<double> DiameterUnder(const Along& place) const;
  // Distance from the tip end of the finished rod in mm, for findings; unset where it cannot be told.
  std::optional<double> FromTipMm(const Along& place) const;
  // Null where there is none of that id.
  const Section* FindSection(std::string_view id) const;
  const Part* FindPart(std::string_view id) const;
  const Guide* FindGuide(std::string_view id) const;
  // Null where the log has not closed it.
  const Closed* FindClosed(Closed::Kind kind, std::string_view id, End end = End::kUnknown) const;
};

// Every code of resolve (rod/*).
std::vector<Code> RodCodes();

}  // namespace withy

#endif  // WITHY_ROD_ROD_H_
