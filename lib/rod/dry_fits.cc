#include "dry_fits.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <unordered_map>
#include <unordered_set>
#include <utility>

#include "absl/strings/str_format.h"
#include "codes.h"
#include "log_codes.h"
#include "measurements.h"
#include "read_quantity.h"

namespace withy {
namespace {

// How far the same handle comes to rest elsewhere when it is pushed home again (common practice, no source).
constexpr double kPushedHomeM = 0.003;
// A butt that is thinner by the taper of what came off goes deeper, by less than came off unless blank and bore are
// nearly parallel (common practice, no source).
constexpr double kDeeperShare = 1;

constexpr double kSameCutM = 1e-9;

// What had been cut off by one entry of the log.
struct Off {
  double butt_m = 0, elsewhere_m = 0;
  double variance_m2 = 0;
  int last_butt = -1;  // of the cuts in the log
};

class Cuts {
 public:
  explicit Cuts(const Resolver& r) : r_(r) {
    const Blank& blank = r.rod.blank;
    for (const int i : blank.assembled) assembled_.insert(blank.sections[i].id);
    if (!blank.assembled.empty()) butt_ = blank.sections[blank.assembled.front()].id;
  }
  // To be asked in the order of the log.
  const Off& Before(int order) {
    for (; next_ < r_.log.cuts.size() && r_.log.cuts[next_].order < order; ++next_) Add(*r_.log.cuts[next_].entry);
    return off_;
  }

 private:
  void Add(const v1::Cut& cut) {
    if (!assembled_.contains(cut.section())) return;
    const double amount = LengthOf(cut.amount()).value_or(Length()).meters();
    const double plus_minus = PlusMinusMeters(cut.amount()).value_or(0);
    off_.variance_m2 += plus_minus * plus_minus;
    if (cut.section() != butt_ || cut.at_end() == v1::End::TIP) {
      off_.elsewhere_m += amount;
      return;
    }
    off_.butt_m += amount;
    off_.last_butt = static_cast<int>(next_);
  }

  const Resolver& r_;
  std::unordered_set<std::string> assembled_;
  std::string butt_;
  Off off_;
  std::size_t next_ = 0;
};

// What a fit says, with what was off by then.
struct Seen {
  int fit = 0;  // in Rod::dry_fits
  Off off;
};

// An inch for a millimetre, or a decimal point.
constexpr double kSlips[] = {25.4, 1 / 25.4, 10.0, 1 / 10.0};

// What the cut should say if its author slipped by an inch for a millimetre or a decimal point; unset where no slip
// fits.
std::optional<double> Suspected(double cut_m, double shorter_m, double allowed_m) {
  for (const double factor : kSlips) {
    const double meant = cut_m * factor;
    if (meant <= allowed_m) continue;  // lost in the readings
    if (shorter_m >= meant - allowed_m && shorter_m <= meant * (1 + kDeeperShare) + allowed_m) return meant;
  }
  return std::nullopt;
}

// Of the sections as supplied: what a later cut adds must not make a fit possible after all.
double SuppliedPlusMinus(const Blank& blank) {
  double sum = 0;
  for (const int i : blank.assembled)
    sum = std::hypot(sum, blank.sections[i].length->plus_minus.value_or(kUnstatedLengthM));
  return sum;
}

// What a fit can read: of a handle that has a butt end at least the blank alone, and at most the two end to end.
struct Possible {
  double blank = 0, least = 0, most = 0, allowed = 0;
  bool Holds(double length) const { return length >= least - allowed && length <= most + allowed; }
};

Possible PossibleAt(const Blank& blank, const Part& part, const DryFit& fit) {
  Possible possible;
  possible.blank = *blank.supplied_m - fit.cut_butt_m - fit.cut_elsewhere_m;
  possible.least = part.kind == "one_piece_handle" ? possible.blank : 0;
  possible.most = possible.blank + part.length->value.meters();
  possible.allowed =
      kPushedHomeM + std::hypot(fit.overall->plus_minus.value_or(kUnstatedLengthM),
                                part.length->plus_minus.value_or(kUnstatedLengthM), SuppliedPlusMinus(blank));
  return possible;
}

void ReportImpossible(Resolver& r, const Part& part, const Known<Length>& read, const Possible& possible) {
  const double value = read.value.meters();
  const bool too_long = value > possible.most;
  std::string message =
      absl::StrFormat("%.1f mm were read, and %.1f mm of blank were left", value * 1000, possible.blank * 1000);
  std::vector<Number> numbers = {{"read_mm", value * 1000}, {"blank_mm", possible.blank * 1000}};
  if (too_long) {
    message += absl::StrFormat("; with %s end to end that is %.1f mm", part.id, possible.most * 1000);
    numbers.push_back({"most_mm", possible.most * 1000});
  }
  for (const double factor : kSlips) {
    if (!possible.Holds(value * factor)) continue;
    message += absl::StrFormat("; %.1f mm would fit", value * factor * 1000);
    numbers.push_back({"suspected_mm", value * factor * 1000});
    break;
  }
  r.rod.findings.push_back(
      MakeFinding(too_long ? kFitTooLong : kFitTooShort, read.at, std::move(message), std::move(numbers)));
}

void ReportCut(Resolver& r, const Seen& before, const Seen& after, double cut_m, double shorter_m, double allowed_m) {
  std::string message =
      absl::StrFormat("%.1f mm came off the butt, and the dry fit after it is %.1f mm %s than the one before", cut_m * 1000,
                      std::abs(shorter_m) * 1000, shorter_m < 0 ? "longer" : "shorter");
  std::vector<Number> numbers = {{"cut_mm", cut_m * 1000}, {"shorter_mm", shorter_m * 1000}};
  if (const auto meant = Suspected(cut_m, shorter_m, allowed_m)) {
    message += absl::StrFormat("; %.1f mm would fit", *meant * 1000);
    numbers.push_back({"suspected_mm", *meant * 1000});
  }
  Finding finding = MakeFinding(kCutAgainstFits, r.log.cuts[after.off.last_butt].at.Field("amount"), std::move(message),
                                std::move(numbers));
  finding.related = {r.rod.dry_fits[before.fit].at, r.rod.dry_fits[after.fit].at};
  r.rod.findings.push_back(std::move(finding));
}

void CompareFits(Resolver& r, const Seen& before, const Seen& after) {
  const Known<Length>& a = *r.rod.dry_fits[before.fit].overall;
  const Known<Length>& b = *r.rod.dry_fits[after.fit].overall;
  const double elsewhere = after.off.elsewhere_m - before.off.elsewhere_m;
  const double cut = after.off.butt_m - before.off.butt_m;
  const double shorter = (a.value - b.value).meters() - elsewhere;
  const double read = std::hypot(a.plus_minus.value_or(kUnstatedLengthM), b.plus_minus.value_or(kUnstatedLengthM));
  const double allowed =
      kPushedHomeM + std::sqrt(read * read + std::max(0.0, after.off.variance_m2 - before.off.variance_m2));
  if (shorter >= cut - allowed && shorter <= cut * (1 + kDeeperShare) + allowed) return;
  if (cut > 0) {
    ReportCut(r, before, after, cut, shorter, allowed);
    return;
  }
  Finding finding = MakeFinding(
      kMeasurementsDiffer, b.at,
      absl::StrFormat("this dry fit is %.1f mm %s than the one before, and no cut of the butt is logged between them",
                      std::abs(shorter) * 1000, shorter > 0 ? "shorter" : "longer"),
      {{"before_mm", a.value.mm() - elsewhere * 1000}, {"after_mm", b.value.mm()}},
      "Log the cut that is missing, if there was one; else try the handle on again, and correct the fit that was "
      "wrong.");
  finding.related.push_back(a.at);
  r.rod.findings.push_back(std::move(finding));
}

// The latest entry of the log up to which nothing before it can be compared: of a part that was reamed; of all, where
// something broke.
struct Disturbed {
  std::unordered_map<std::string, std::vector<int>> reamed;  // "" = all
  std::vector<int> broke;

  explicit Disturbed(const BenchLog& log) {
    for (const auto& done : log.reamings) {
      if (done.entry->what().empty()) reamed[""].push_back(done.order);
      for (const std::string& id : done.entry->what()) reamed[id].push_back(done.order);
    }
    for (const auto& breakage : log.breakages) broke.push_back(breakage.order);
  }
  bool Between(int from, int to, const std::string& part) const {
    const auto any = [from, to](const std::vector<int>& orders) {
      const auto first = std::upper_bound(orders.begin(), orders.end(), from);
      return first != orders.end() && *first < to;
    };
    for (const std::string& id : {std::string(), part}) {
      if (const auto found = reamed.find(id); found != reamed.end() && any(found->second)) return true;
    }
    return any(broke);
  }
};

// A tape laid along rod and handle (common practice, no source).
void AssumeTape(Resolver& r, Known<Length>& read) {
  if (read.plus_minus) return;
  read.plus_minus = kUnstatedLengthM;
  r.Assume(read.at, absl::StrFormat("+/- %.0f mm", kUnstatedLengthM * 1000), "a steel rule (common practice, no source)");
}

// The last of the handle, where it was with the arbors on and none without them tells how deep that butt goes. After a
// cut it is stale whatever was on.
void SayNotUsed(Resolver& r, double cut_m) {
  const int host = r.rod.handle.Host();
  if (host < 0) return;
  const DryFit *last = nullptr, *bare = nullptr;
  for (const DryFit& fit : r.rod.dry_fits) {
    if (fit.part != r.rod.handle.parts[host].id || !Positive(fit.overall)) continue;
    last = &fit;
    if (!fit.arbors_on) bare = &fit;
  }
  const auto of_this_butt = [cut_m](const DryFit* fit) { return fit && std::abs(fit->cut_butt_m - cut_m) < kSameCutM; };
  if (!of_this_butt(last) || !last->arbors_on || of_this_butt(bare)) return;
  r.rod.findings.push_back(MakeFinding(
      kFitNotUsed, last->at.Field("arbors_on"),
      absl::StrFormat("%s was tried on with its arbors on, and not without them since the last cut", last->part)));
}

}  // namespace

double CutElsewhere(const Blank& blank) {
  double sum = 0;
  for (std::size_t i = 0; i < blank.assembled.size(); ++i) {
    const Section& section = blank.sections[blank.assembled[i]];
    sum += section.cut_tip.amount.meters() + (i == 0 ? 0 : section.cut_butt.amount.meters());
  }
  return sum;
}

double LengthOfFit(const Resolver& r, const DryFit& fit) {
  return fit.overall->value.meters() - (CutElsewhere(r.rod.blank) - fit.cut_elsewhere_m);
}

std::optional<double> RestAtFit(const Rod& rod, const DryFit& fit) {
  if (!rod.blank.supplied_m) return std::nullopt;
  return fit.overall->value.meters() - (*rod.blank.supplied_m - fit.cut_butt_m - fit.cut_elsewhere_m);
}

void ReadDryFits(Resolver& r) {
  Cuts cuts(r);
  for (const auto& logged : r.log.fits) {
    DryFit fit;
    fit.part = logged.entry->part();
    fit.overall = ReadLength(logged.entry->overall(), logged.at, "overall", Source::kMeasured);
    fit.stand_out = ReadLength(logged.entry->stand_out(), logged.at, "stand_out", Source::kMeasured);
    if (fit.overall) AssumeTape(r, *fit.overall);
    fit.at = logged.at;
    fit.arbors_on = logged.entry->arbors_on();
    const Off& off = cuts.Before(logged.order);
    fit.cut_butt_m = off.butt_m;
    fit.cut_elsewhere_m = off.elsewhere_m;
    r.rod.dry_fits.push_back(std::move(fit));
  }
  SayNotUsed(r, CutButtBefore(r, r.design.log_size()));
}

double CutButtBefore(const Resolver& r, int order) {
  return Cuts(r).Before(order).butt_m;
}

void TellRestOfGlued(Resolver& r) {
  const int host = r.rod.handle.Host();
  if (host < 0 || !r.host_glued) return;
  const double cut = CutButtBefore(r, *r.host_glued);
  std::optional<double> rest;
  for (std::size_t i = 0; i < r.rod.dry_fits.size() && r.log.fits[i].order < *r.host_glued; ++i) {
    const DryFit& fit = r.rod.dry_fits[i];
    if (fit.part != r.rod.handle.parts[host].id || !Positive(fit.overall) || fit.impossible) continue;
    rest = std::abs(fit.cut_butt_m - cut) < kSameCutM ? RestAtFit(r.rod, fit) : std::nullopt;
  }
  for (Closed& closed : r.rod.closed) {
    if (closed.kind == Closed::Kind::kGlued && closed.id == r.rod.handle.parts[host].id) closed.rest_m = rest;
  }
}

void JudgeDryFits(Resolver& r) {
  if (!r.rod.blank.supplied_m) return;
  for (DryFit& fit : r.rod.dry_fits) {
    const Part* part = r.rod.FindPart(fit.part);
    if (!Positive(fit.overall) || !part || !Positive(part->length)) continue;
    const Possible possible = PossibleAt(r.rod.blank, *part, fit);
    fit.impossible = possible.blank > 0 && !possible.Holds(fit.overall->value.meters());
    // An entry that is not understood may be the cut that explains it.
    if (fit.impossible && r.log.not_understood.empty()) ReportImpossible(r, *part, *fit.overall, possible);
  }
}

void CompareDryFits(Resolver& r) {
  if (!r.log.not_understood.empty()) return;
  const Disturbed disturbed(r.log);
  Cuts cuts(r);
  std::unordered_map<std::string, Seen> last;  // by part
  for (std::size_t i = 0; i < r.rod.dry_fits.size(); ++i) {
    const DryFit& fit = r.rod.dry_fits[i];
    const Part* part = r.rod.FindPart(fit.part);
    // A handle that slides on from the tip stops where the blank fills it: the butt has no say.
    if (!Positive(fit.overall) || fit.impossible || part == nullptr || part->slides_on_from == End::kTip) continue;
    const Seen now{static_cast<int>(i), cuts.Before(r.log.fits[i].order)};
    const auto before = last.find(fit.part);
    if (before != last.end() &&
        !disturbed.Between(r.log.fits[before->second.fit].order, r.log.fits[i].order, fit.part)) {
      CompareFits(r, before->second, now);
    }
    last.insert_or_assign(fit.part, now);
  }
}

}  // namespace withy
