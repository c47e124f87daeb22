// The handle: every part with its place worked out.
#ifndef WITHY_ROD_HANDLE_H_
#define WITHY_ROD_HANDLE_H_

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "withy/numerics/profile.h"
#include "withy/numerics/uncertain.h"
#include "withy/rod/known.h"

namespace withy {

// One point along the rod by its two origins, in metres. With the blank's place in the handle known, both are set;
// before a dry fit a handle part has only the first and a guide only the second.
struct Along {
  std::optional<Uncertain> from_butt_m;  // from the butt end of the finished rod, towards the tip
  std::optional<Uncertain> on_blank_m;   // from the butt end of the assembled blank, towards the tip
  bool known() const { return from_butt_m || on_blank_m; }
  // The point `by` metres further towards the tip.
  Along Moved(const Uncertain& by) const {
    Along to;
    if (from_butt_m) to.from_butt_m = *from_butt_m + by;
    if (on_blank_m) to.on_blank_m = *on_blank_m + by;
    return to;
  }
};

enum class End { kUnknown, kButt, kTip };
enum class FitKind { kRigid, kStretched, kShrunk };
enum class BoreKnown { kProfile, kPlugs, kMouth, kUnknown };

struct Plug {
  Length plug, depth;
  End entered_at = End::kTip;
  FieldPath at;
};

struct Arbor {
  std::string id;
  FieldPath at;
  std::string kind;        // "tape", "graphite", "foam", "turned"
  Maybe<Length> own_at;    // butt-side edge from the host's butt-side face
  Maybe<Length> length;
  Maybe<Length> outer;
  Maybe<Length> tape_thickness;
  Maybe<double> density_kg_m3;
  Maybe<Mass> mass;
  Profile bore;            // from its own butt end, metres; empty = not given
  std::string bond;        // empty = as the host
  Along start;
};

struct Cavity {
  FieldPath at;
  Maybe<Length> own_at, length, diameter;
};

struct Weights {
  FieldPath at;
  std::optional<std::uint32_t> count;  // unset = not decided, none counted
  Maybe<Mass> unit_mass;
  Maybe<Length> unit_length, unit_diameter;
  std::string material;
  std::string bond;
  bool potted_first = false;           // before the blank goes in; else last
  Maybe<Length> cover;                 // adhesive over the foremost; unset = not given
};

struct Part {
  std::string id;
  FieldPath at;
  std::string kind;                    // a word of the schema, or another
  std::string material;
  Maybe<Length> length;
  Profile outer;                       // from its own butt-side face, metres; empty = not given or not usable
  Profile bore;                        // likewise; one row = straight
  BoreKnown bore_known = BoreKnown::kUnknown;
  std::vector<Plug> plugs;
  FitKind fitting = FitKind::kRigid;
  std::optional<double> stretch_limit;  // blank diameter / bore diameter
  bool reamed = false;                  // the bore as received may be tighter than the blank
  Maybe<Length> glue_clearance;         // room for adhesive, both sides together; unset = not given
  Maybe<Length> stop;                   // the butt face goes no further in, from its own butt end; unset = not given
  Maybe<Mass> mass;
  Maybe<double> density_kg_m3;
  Maybe<Length> balance_from_own_butt;
  End slides_on_from = End::kUnknown;
  bool clamps_on = false;
  std::string on;                      // sits on or in that part; empty = the blank
  std::string bond, held_by;
  bool loose = false;
  Maybe<Length> travel;
  Maybe<double> angle_deg;
  Maybe<Length> foot_center, screw_thread_length, neck;  // of what holds the reel, from its own butt end
  End fixed_hood = End::kUnknown;
  bool has_seat = false;
  std::vector<Arbor> arbors;
  std::optional<Cavity> cavity;
  std::optional<Weights> weights;
  std::optional<Length> rings_total;   // sum of the grip's rings; unset = none, or one without thickness
  // Butt-side face. Unset = cannot be told; its place then is a finding or an unknown.
  Along start;
  bool place_written = false;          // has a place of its own; else against the part before it
  bool gap_written = false;            // that place says how much is left free (`gap`)

  bool runs_over_blank() const { return on.empty() && kind != "butt_cap" && kind != "gimbal"; }
};

// Room for adhesive between blank and bore, both sides together, in metres; not below 0. Where the part does not say: 0.1
// mm of a one-piece handle (0.05 mm all round: bond lines of 0.05 to 0.13 mm are recommended for rod epoxy), 0.3 mm of any
// other (common practice, no source).
double GlueClearanceOf(const Part& part);

struct Handle {
  FieldPath at;
  std::vector<Part> parts;  // in the order of the design

  // The part that the blank comes to rest in: the one-piece handle on the blank, the first of several. -1 = there is none,
  // and the blank runs through.
  int Host() const;
};

}  // namespace withy

#endif  // WITHY_ROD_HANDLE_H_
