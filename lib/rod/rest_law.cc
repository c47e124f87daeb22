#include "withy/rod/rest_law.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace withy {
namespace {

constexpr double kSameM = 1e-9;
constexpr double kJumpM = 1e-4;          // what a rule shows
constexpr double kForgottenM = 0.075;    // cut after which a dry fit says no more than the readings
constexpr double kMostThickerM = 0.005;  // no reading of a diameter is further out
constexpr double kPushedHomeM = 0.003;   // between two times that a handle is pushed home (common practice, no source)
constexpr double kLeastCutM = 0.001;     // between two dry fits that tell a slope
constexpr double kMostPerCut = 2;        // a drawn-on slope (common practice, no source)
constexpr double kSlopeWithin = 0.25;

// Diameter errors that go with a dry fit: with what its reading leaves open, and with the reading itself, which on a step
// or beside a jump are many.
struct Told {
  double low = 0, value_from = 0, value_to = 0, high = 0;
};

// Of all `by` in the range, the least from which on the length is at least `length`. The length never falls with `by`.
double LeastThicker(const Insertion& as_read, double cut, double length) {
  double low = -kMostThickerM, high = kMostThickerM;
  while (high - low > kSameM) {
    const double middle = (low + high) / 2;
    (as_read.Thicker(middle).LengthAt(cut) >= length ? high : low) = middle;
  }
  return (low + high) / 2;
}

// Whether the length leaps over what was read as the blank gets thicker: no diameter gives it.
bool LeapsOver(const Insertion& as_read, double cut, const Told& told, double shortest, double longest) {
  constexpr double kBesideM = 3 * kSameM;  // a jump found to kSameM lies between the two
  return as_read.Thicker(told.low - kBesideM).LengthAt(cut) < shortest - kJumpM &&
         as_read.Thicker(told.low + kBesideM).LengthAt(cut) > longest + kJumpM;
}

// Unset where the length read is none that bore and blank can have.
std::optional<Told> TellDiameter(const Insertion& as_read, const RestLaw::Seen& seen) {
  const double shortest = seen.length_m - seen.plus_minus_m, longest = seen.length_m + seen.plus_minus_m;
  const double most = as_read.Thicker(kMostThickerM).LengthAt(seen.cut_m);
  const double least = as_read.Thicker(-kMostThickerM).LengthAt(seen.cut_m);
  if (shortest > most || longest < least) return std::nullopt;
  const Told told{.low = LeastThicker(as_read, seen.cut_m, shortest),
                  .value_from = LeastThicker(as_read, seen.cut_m, seen.length_m),
                  .value_to = LeastThicker(as_read, seen.cut_m, seen.length_m + kSameM),
                  .high = LeastThicker(as_read, seen.cut_m, longest + kSameM)};
  if (LeapsOver(as_read, seen.cut_m, told, shortest, longest)) return std::nullopt;
  return told;
}

}  // namespace

RestLaw::RestLaw(Setup setup) : setup_(std::move(setup)) {
  if (setup_.from != From::kContact) return;
  tighter_plus_minus_m_ = setup_.diameter_plus_minus_m;
  for (Seen& seen : setup_.seen) Calibrate(seen);
  corrected_ = setup_.as_read->Thicker(tighter_m_);
}

// A fit on a step or a stop goes with many diameters: then it tells nothing, unless none of them is as read.
void RestLaw::Calibrate(Seen& seen) {
  const Insertion& as_read = *setup_.as_read;
  seen.expected_m = as_read.LengthAt(seen.cut_m);
  const auto told = TellDiameter(as_read, seen);
  if (!told) return;
  const bool exact = (told->high - told->low) / 2 < setup_.diameter_plus_minus_m;
  if (!exact && told->low <= 0 && told->high >= 0) return;
  // of all that give the reading the one nearest to what was known before
  const double value = std::clamp(tighter_m_, told->value_from, told->value_to);
  seen.tighter_m = exact ? value : told->low > 0 ? told->low : told->high;
  tighter_m_ = *seen.tighter_m;
  tighter_plus_minus_m_ =
      exact ? std::max(value - told->low, told->high - value) : setup_.diameter_plus_minus_m;
  told_at_cut_m_ = seen.cut_m;
  told_plus_minus_m_ = seen.plus_minus_m;
}

RestLaw::Band RestLaw::LengthAt(double cut_m) const {
  Band band;
  double also = 0;  // uncertainty that is not of the diameters
  switch (setup_.from) {
    case From::kThrough: {
      const double length = setup_.through_m + setup_.blank_m - cut_m;
      band = {length, length, length};
      also = setup_.blank_plus_minus_m;
      break;
    }
    case From::kContact:
      band = ByContact(cut_m);
      if (!told_at_cut_m_) {
        also = setup_.blank_plus_minus_m;
      } else {  // a dry fit reads the blank's length along, as well as it reads
        band.low = std::min(band.low, band.value - told_plus_minus_m_);
        band.high = std::max(band.high, band.value + told_plus_minus_m_);
      }
      break;
    case From::kDryFits:
      band = ByDryFits(cut_m);
      also = setup_.seen.back().plus_minus_m;
      break;
  }
  return {band.value - std::hypot(band.value - band.low, also), band.value,
          band.value + std::hypot(band.high - band.value, also)};
}

double RestLaw::RestAt(double cut_m) const {
  const double rest = LengthAt(cut_m).value - setup_.blank_m + cut_m;
  return setup_.as_read ? setup_.as_read->bore().OntoJump(rest, kOnStepM) : rest;
}

RestLaw::Band RestLaw::ByContact(double cut_m) const {
  const double error = DiameterErrorAt(cut_m);
  const Insertion thinner = corrected_->Thicker(-error);
  Band band{thinner.LengthAt(cut_m), corrected_->LengthAt(cut_m), corrected_->Thicker(error).LengthAt(cut_m)};
  const double blank = setup_.blank_m - cut_m;
  if (band.low - blank < setup_.known_from_z_m - kSameM) Behind(thinner, cut_m, band);
  if (band.high - blank > setup_.known_to_z_m + kSameM) {
    band.low = std::min(band.low, setup_.known_to_z_m + blank);
    band.high = std::max(band.high, setup_.as_read->bore_length() + blank);
  }
  return band;
}

// The butt face goes where the bore is not known. It may stand at once, or go deeper by as much as comes off.
void RestLaw::Behind(const Insertion& thinner, double cut_m, Band& band) const {
  const double known = setup_.known_from_z_m + setup_.blank_m;
  double before = 0, behind = cut_m;  // cuts
  if (thinner.LengthAt(0) < known) behind = 0;
  while (behind - before > kSameM) {
    const double middle = (before + behind) / 2;
    (thinner.LengthAt(middle) + middle < known ? behind : before) = middle;
  }
  const double stopped = setup_.as_read->stop() + setup_.blank_m - cut_m;
  band.low = std::max(stopped, std::min(band.low, known - behind - kMostPerCut * (cut_m - behind)));
  band.high = std::max(band.high, known - cut_m);
}

// From the latest, with the slope of the last two.
RestLaw::Band RestLaw::ByDryFits(double cut_m) const {
  const Seen& last = setup_.seen.back();
  const Drawn drawn = DrawOn();
  const double further = cut_m - last.cut_m;
  const double value = last.length_m - drawn.slope * further;
  const double open = drawn.within * std::abs(further);
  return {value - open, value, value + open};
}

RestLaw::Drawn RestLaw::DrawOn() const {
  const Seen& last = setup_.seen.back();
  for (auto before = setup_.seen.rbegin() + 1; before != setup_.seen.rend(); ++before) {
    const double cut = last.cut_m - before->cut_m;
    if (!(cut > kLeastCutM)) continue;
    const double slope = std::clamp((before->length_m - last.length_m) / cut, 0.0, kMostPerCut);
    return {slope, std::hypot(slope * kSlopeWithin, std::hypot(before->plus_minus_m, last.plus_minus_m) / cut)};
  }
  return {1, 1};
}

bool RestLaw::Contradicted() const {
  return setup_.from == From::kContact && !setup_.seen.empty() && Contradicts(setup_.seen.back());
}

bool RestLaw::Contradicts(const Seen& fit) const {
  const Band band = LengthAt(fit.cut_m);
  const double open = kPushedHomeM + std::hypot(fit.plus_minus_m, setup_.blank_plus_minus_m);
  return fit.length_m > band.high + open || fit.length_m < band.low - open;
}

double RestLaw::ShorterPer(double cut_m) const {
  switch (setup_.from) {
    case From::kThrough:
      return 1;
    case From::kContact:
      return std::max(0.0, -corrected_->At(cut_m).slope_after);
    case From::kDryFits:
      break;
  }
  return DrawOn().slope;
}

bool RestLaw::JumpNear(double cut_m) const {
  if (!corrected_) return false;
  const double error = DiameterErrorAt(cut_m);
  return corrected_->LargestJump(cut_m, -error, error, kJumpM) > 0;
}

std::optional<double> RestLaw::LeastCut(double length_m) const {
  if (corrected_) return corrected_->LeastCut(length_m);
  double cut = setup_.through_m + setup_.blank_m - length_m;
  if (setup_.from == From::kDryFits) {
    const Seen& last = setup_.seen.back();
    const double slope = DrawOn().slope, further = last.length_m - length_m;
    if (slope == 0 && further > 0) return std::nullopt;
    cut = slope == 0 ? 0 : last.cut_m + further / slope;
  }
  return cut < setup_.blank_m ? std::optional<double>(std::max(0.0, cut)) : std::nullopt;
}

const Insertion* RestLaw::insertion() const {
  return corrected_ ? &*corrected_ : nullptr;
}

double RestLaw::DiameterErrorAt(double cut_m) const {
  if (!told_at_cut_m_) return tighter_plus_minus_m_;
  const double forgotten = std::min(1.0, std::abs(cut_m - *told_at_cut_m_) / kForgottenM);
  return tighter_plus_minus_m_ + forgotten * std::max(0.0, setup_.diameter_plus_minus_m - tighter_plus_minus_m_);
}

bool RestLaw::KnownAt(double cut_m) const {
  if (setup_.from != From::kContact) return setup_.from == From::kThrough;
  const double rest = corrected_->RestAt(cut_m);
  return rest >= setup_.known_from_z_m - kSameM && rest <= setup_.known_to_z_m + kSameM;
}

}  // namespace withy
