// The blank: its sections as supplied, what comes off them, and the assembled whole.
//
// Three origins, never mixed in one number:
//   as supplied   from the butt end of a section before any cut (stations, splices, cuts)
//   on the blank  from the butt end of the assembled blank after the cuts (`start_m`, `outer`)
//   from the butt from the butt end of the finished rod (see rod.h: `Rod::rest`)
#ifndef WITHY_ROD_BLANK_H_
#define WITHY_ROD_BLANK_H_

#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "withy/numerics/profile.h"
#include "withy/numerics/uncertain.h"
#include "withy/rod/bench_reading.h"
#include "withy/rod/known.h"

namespace withy {

enum class Shape { kTube, kSolidRound, kSolidHexagon, kOther };  // of a hexagon `outer` is across flats

// One row of a taper table, as written. Values are in SI and may be anything finite; checks look here, never trust.
struct Station {
  int table = 0;                       // in TaperTable::tables
  int row = 0;                         // in that table, from 0
  std::optional<Length> at;            // as supplied
  std::optional<Length> outer;
  std::optional<Length> outer_across;  // a quarter turn on
  std::optional<Length> wall;          // as written; at most one of wall and inner
  std::optional<Length> inner;
  Source outer_source = Source::kPlan, wall_source = Source::kPlan;  // wall: of `wall` or `inner`
  std::optional<double> wall_plus_minus_m;  // of one wall
};

// The rows that count: the blank's, with what was calipered at the bench laid over them. A reading of the outer
// diameter replaces those between its first and its last row, a reading of the wall likewise; everything else stays, so
// that one diameter read again changes one row. Of a place that knows its wall from one table and its outer diameter from
// another there are two rows.
struct TaperTable {
  FieldPath at;                                // of the first table that has rows, for findings about the whole
  std::vector<FieldPath> tables;               // where the rows stand
  std::optional<double> at_plus_minus_m;
  std::optional<double> diameter_plus_minus_m;  // of the reading, else the largest that a row gives
  std::vector<Station> stations;

  FieldPath PathOf(const Station& station) const {
    return tables[station.table].Field("stations").Item("", station.row);
  }
};

// What comes off one end of a section: the larger of plan and log.
struct EndCut {
  Length amount;                          // 0 = none; kerf included
  Length done;                            // of it, what the log says is off already
  std::optional<double> plus_minus_m;
  FieldPath at;                           // the planned cut, or the last logged one; empty = none
};

// A weighing of one section: what of it was on the scales, as supplied.
struct SectionMass {
  Known<Mass> mass;
  Length from, to;
  Maybe<Length> balance;  // of what was weighed, as supplied
};

struct Section {
  std::string id;
  FieldPath at;
  int index = 0;                     // in the design's list
  Shape shape = Shape::kTube;
  std::string material;
  Maybe<Length> length;              // as supplied; assumed from the last station where only the table tells it
  TaperTable taper;
  // Drawn through the rows that know it, metres over metres as supplied: outer diameter (mean of two readings across),
  // wall. Empty = not known, also where the rows fall back along the section or hold a value that cannot be.
  Profile outer;
  Profile wall;
  bool wall_measured = false;        // every wall in the profile was read from an instrument
  std::optional<double> wall_plus_minus_m;
  Maybe<double> modulus_pa;
  Maybe<double> density_kg_m3;
  std::optional<SectionMass> mass;   // the best: the latest weighing, else `mass` as supplied
  // The weighing before it, where something came off in between; and the latest that found a balance point, where
  // `mass` has none: what came off since takes its share from it.
  std::optional<SectionMass> mass_before, balanced_before;
  Maybe<double> spine_deg;           // from the mark on the blank, clockwise seen from the butt
  Maybe<double> natural_bend_deg;
  std::string aligned_on;            // "spine", "natural_bend", "straightest"; empty = not known
  std::string spare_for;             // not part of the assembled rod where set
  Maybe<Length> splice_at;           // where a solid tip begins, as supplied
  std::string splice_material;
  Maybe<double> splice_modulus_pa;
  Maybe<double> splice_density_kg_m3;
  EndCut cut_butt, cut_tip;
  // What is left after the cuts, as supplied; unset = cannot be told (length unknown, nothing left, or an entry of the
  // log that is not understood: it may be a cut).
  std::optional<Uncertain> from_m, to_m;
  // Butt end of what is left, on the blank; unset = cannot be told, or a spare.
  std::optional<Uncertain> start_m;

  bool assembled() const { return spare_for.empty(); }
  // Where a tube turns solid, as supplied; infinite where it does not.
  double SolidFrom() const {
    return splice_at && shape == Shape::kTube ? splice_at->value.meters() : std::numeric_limits<double>::infinity();
  }
};

enum class JointKind { kTipOverButt, kPutIn, kSpigot, kSleeve, kMetal, kOther };

struct Joint {
  std::string id;
  FieldPath at;
  JointKind kind = JointKind::kOther;
  std::string lower, upper;            // section ids
  Maybe<Length> overlap;               // one section in the other; shortens the blank
  Maybe<Length> gap;                   // left free; lengthens it
  Maybe<Mass> mass;                    // of loose hardware
  Maybe<Length> spigot_length;
  Maybe<Length> spigot_standing_out;
  Maybe<Mass> spigot_mass;
  std::string spigot_fixed_in;
  TaperTable spigot_taper;             // from its own butt end
  Profile spigot_outer, spigot_wall;   // drawn through it; empty = not known
  std::optional<double> spigot_wall_plus_minus_m;
  std::string bond;                    // what holds spigot, sleeve or ferrule in its own section
  // On the blank: butt end of the upper section, and tip end of the lower one; unset = cannot be told.
  std::optional<double> upper_start_m, lower_end_m;
};

struct Blank {
  FieldPath at;
  std::vector<Section> sections;       // as written, spares too
  std::vector<int> assembled;          // indices of those in the rod, butt first
  std::vector<Joint> joints;
  std::vector<BenchReading> bench;     // as written
  Maybe<Mass> mass;                    // all sections together, as supplied
  Maybe<double> rated_lift_n;
  std::optional<double> rated_line_min_n, rated_line_max_n;
  std::optional<Mass> rated_lure_min, rated_lure_max;
  // Assembled, after the cuts; unset or empty = cannot be told.
  std::optional<Uncertain> length_m;
  std::optional<double> supplied_m;    // assembled, nothing cut off
  Profile outer;                       // on the blank, metres; of an overlap the outer section's; jumps at joints
};

}  // namespace withy

#endif  // WITHY_ROD_BLANK_H_
