// The law of the cut: how long blank and handle are together, as a function of what is off the butt. Every plan of a cut
// rests on it.
//
// Lengths here run as a dry fit reads them: from the host's own butt end to the tip end of the assembled blank, all other
// cuts as planned or done. The finished rod is longer by the constant `rod.overall - length`.
//
//   rod.rest_law->LengthAt(0.1714).value   // 2.1969
//   rod.rest_law->LengthAt(0.1714).low     // 2.1955: the blank may be as much thinner, or the bore wider, than read
//   rod.rest_law->ShorterPer(0.1714)       // 2.4: one mm off the butt takes 2.4 mm off the rod
//
// Three laws:
//   kThrough   the blank runs through the handle to the butt end or a cap: 1 mm off takes 1 mm off the rod.
//   kContact   bore and taper are known: the contact problem of withy/numerics/insertion.h. The diameters are read with an
//              uncertainty; a dry fit tells the difference of blank and bore at its place, and the latest corrects all that
//              is further in. How sure that is falls off with the distance to it (see `DiameterErrorAt`).
//   kDryFits   the bore is not known and at least one dry fit is. One alone: one mm off takes between 0 (something ahead
//              carries) and 2 mm off the rod, 1 expected; of several the last two with a cut between them give the slope,
//              within a quarter and what their readings leave open, never above 2. Common practice, no source.
//
// Of the band's parts that of the diameters is exact (the contact solved for a thinner and a thicker blank), that of the
// blank's length is added in quadrature until a dry fit has read it along; then no length is surer than that reading. A cut
// counts as exact.
#ifndef WITHY_ROD_REST_LAW_H_
#define WITHY_ROD_REST_LAW_H_

#include <limits>
#include <optional>
#include <vector>

#include "withy/numerics/insertion.h"

namespace withy {

// A butt face that is no further from a shoulder of the bore stands on it: less than any reading, more than sums round.
inline constexpr double kOnStepM = 1e-6;

class RestLaw {
 public:
  enum class From { kThrough, kContact, kDryFits };

  // A dry fit of the host that counts, oldest first.
  struct Seen {
    int dry_fit = 0;                  // in Rod::dry_fits
    double cut_m = 0;                 // off the butt then
    double length_m = 0;              // read; what came off elsewhere since is taken off
    double plus_minus_m = 0;          // of that, expanded
    // Of kContact, filled in here. By contact of the profiles as read; and the diameter error that explains the
    // difference, positive = blank thicker or bore tighter than read. Unset where the length says nothing of diameters (on a
    // step or a stop) or is none that blank and bore can have, as one between both sides of a jump.
    std::optional<double> expected_m;
    std::optional<double> tighter_m;
  };

  // Expanded; low <= value <= high.
  struct Band {
    double low = 0, value = 0, high = 0;
  };

  struct Setup {
    From from = From::kThrough;
    int host = -1;                     // in Handle::parts; -1 = none: the butt end of the rod itself
    double through_m = 0;              // kThrough: where the butt face rests, from the host's own butt end (or the butt end)
    double blank_m = 0;                // assembled, nothing off the butt; other cuts as planned or done
    double blank_plus_minus_m = 0;
    std::optional<Insertion> as_read;  // kContact: profiles as read, the host's glue clearance, its stop
    // kContact: where the bore is known, from the host's own butt end. Beyond, as_read->bore() is drawn on, and the band says
    // so: behind it the blank stands at once or goes deeper by as much as comes off, ahead of it it may be anywhere.
    double known_from_z_m = 0;
    double known_to_z_m = std::numeric_limits<double>::infinity();
    double diameter_plus_minus_m = 0;  // kContact: of blank less bore, expanded, where no dry fit has told
    std::vector<Seen> seen;            // kDryFits: at least one
  };
  // Requires of kContact: as_read, with blank_m as the length of its shaft; of all fits seen 0 <= cut < blank_m.
  explicit RestLaw(Setup setup);

  From from() const { return setup_.from; }
  int host() const { return setup_.host; }
  double blank_m() const { return setup_.blank_m; }
  const std::vector<Seen>& seen() const { return setup_.seen; }
  // To ask what the law would be with one more dry fit: a copy with that fit added.
  const Setup& setup() const { return setup_; }

  // Requires of all: 0 <= cut < blank_m().
  Band LengthAt(double cut_m) const;
  // Where the butt face rests, from the host's own butt end; best estimate. Within kOnStepM of a shoulder it is the
  // shoulder's own place.
  double RestAt(double cut_m) const;
  // What one unit more off the butt takes off the length, >= 0.
  double ShorterPer(double cut_m) const;
  // A jump of the length of more than 0.1 mm lies within the uncertainty of the diameters.
  bool JumpNear(double cut_m) const;
  // Least cut whose best estimate is at most `length`; unset where none is. In closed form for kContact.
  std::optional<double> LeastCut(double length_m) const;
  // Of kContact, corrected by the latest dry fit; null otherwise.
  const Insertion* insertion() const;
  const Insertion* as_read() const { return setup_.as_read ? &*setup_.as_read : nullptr; }
  // By how much the blank is thicker than read, less the bore; 0 without a dry fit. And how far that may be off at `cut`:
  // at the latest dry fit what its reading leaves open; from there growing to the uncertainty of the readings over 75 mm of
  // cut, about the distance of two rows of a taper table at the butt (common practice, no source).
  double tighter_m() const { return tighter_m_; }
  double DiameterErrorAt(double cut_m) const;
  // Whether a dry fit reads another length than the law gives at its cut: the distance from the band is more than both
  // readings and pushing the handle home again (3 mm: common practice, no source) leave open.
  bool Contradicts(const Seen& fit) const;
  // Of kContact: the latest dry fit does, so that neither may be cut by.
  bool Contradicted() const;
  // Whether the bore is known where the butt face comes to rest.
  bool KnownAt(double cut_m) const;

 private:
  struct Drawn {
    double slope = 1, within = 1;
  };
  void Calibrate(Seen& seen);
  Band ByContact(double cut_m) const;
  void Behind(const Insertion& thinner, double cut_m, Band& band) const;
  Band ByDryFits(double cut_m) const;
  Drawn DrawOn() const;

  Setup setup_;
  double tighter_m_ = 0;
  double tighter_plus_minus_m_ = 0;
  std::optional<double> told_at_cut_m_;  // the dry fit that told it
  double told_plus_minus_m_ = 0;         // of its reading
  std::optional<Insertion> corrected_;
};

}  // namespace withy

#endif  // WITHY_ROD_REST_LAW_H_
