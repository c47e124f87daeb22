#include "rest.h"

#include <cmath>
#include <string>
#include <unordered_map>
#include <utility>

#include "absl/strings/str_format.h"
#include "codes.h"
#include "dry_fits.h"
#include "measurements.h"
#include "read_quantity.h"

namespace withy {
namespace {

constexpr double kSameM = 1e-9;

bool IsCap(const Part& part) {
  return part.on.empty() && !part.loose &&
         (part.kind == "butt_cap" || part.kind == "gimbal" || part.kind == "extension_butt");
}

// Off one end of a section by the time of an entry of the log.
double DoneBefore(const Resolver& r, const Section& section, End end, int order) {
  double sum = 0;
  for (const auto& cut : r.log.cuts) {
    if (cut.order > order || cut.entry->section() != section.id) continue;
    const End of = cut.entry->at_end() == v1::End::TIP ? End::kTip : End::kButt;
    if (of == end) sum += LengthOf(cut.entry->amount()).value_or(Length()).meters();
  }
  return sum;
}

const Section* ButtSection(const Rod& rod) {
  return rod.blank.assembled.empty() ? nullptr : &rod.blank.sections[rod.blank.assembled.front()];
}

int PartIndex(const Rod& rod, const std::string& id) {
  for (std::size_t i = 0; i < rod.handle.parts.size(); ++i) {
    if (!id.empty() && rod.handle.parts[i].id == id) return static_cast<int>(i);
  }
  return -1;
}

// The latest fit that told a length; whether the butt is, or is to be, shorter than it was then.
int LatestDryFit(Resolver& r) {
  for (int i = static_cast<int>(r.rod.dry_fits.size()) - 1; i >= 0; --i) {
    DryFit& fit = r.rod.dry_fits[i];
    if (!Positive(fit.overall) || PartIndex(r.rod, fit.part) < 0) continue;
    const Section* butt = ButtSection(r.rod);
    if (butt == nullptr) return -1;
    const double then = DoneBefore(r, *butt, End::kButt, r.log.fits[i].order);
    fit.stale = butt->cut_butt.amount.meters() > then + kSameM;
    return i;
  }
  return -1;
}

void SayStale(Resolver& r, int index, const Section& butt) {
  const DryFit& fit = r.rod.dry_fits[index];
  const double then_mm = DoneBefore(r, butt, End::kButt, r.log.fits[index].order) * 1000;
  const double done_mm = butt.cut_butt.done.mm(), to_be_mm = butt.cut_butt.amount.mm();
  const bool cut_since = done_mm > then_mm + kSameM * 1000;
  const bool planned = to_be_mm > done_mm + kSameM * 1000;
  std::string message = absl::StrFormat("%.1f mm were off the butt at this dry fit; ", then_mm);
  message += cut_since ? absl::StrFormat("%.1f mm are off now", done_mm) : "";
  message += planned ? absl::StrFormat("%s%.1f mm are planned", cut_since ? ", and " : "", to_be_mm) : "";
  Finding finding = MakeFinding(kDryFitStale, fit.at, std::move(message), {{"then_mm", then_mm}, {"cut_mm", to_be_mm}});
  r.rod.rest_measure = "try the handle on again after the cut and log the fit";
  if (planned && !cut_since) {
    finding.help = absl::StrFormat(
        "Are the %.1f mm that are left of the plan off already? Then log the cut. Else cut part of them, try the handle "
        "on and log the fit.",
        to_be_mm - done_mm);
  }
  if (!butt.cut_butt.at.empty()) finding.related.push_back(butt.cut_butt.at);
  r.rod.findings.push_back(std::move(finding));
}

// What came off the other ends since the fit, or is still to come off: it only shortens.
double OffElsewhereSince(const Resolver& r, int order) {
  double sum = 0;
  for (const int i : r.rod.blank.assembled) {
    const Section& section = r.rod.blank.sections[i];
    if (&section != ButtSection(r.rod)) {
      sum += section.cut_butt.amount.meters() - DoneBefore(r, section, End::kButt, order);
    }
    sum += section.cut_tip.amount.meters() - DoneBefore(r, section, End::kTip, order);
  }
  return sum;
}

void SettleFromDryFit(Resolver& r, const RestPlan& plan, const PlacedPart& part) {
  Rod& rod = r.rod;
  const DryFit& fit = rod.dry_fits[plan.dry_fit];
  if (!part.start_m) {
    rod.rest_measure = "give the part that was tried on a place from the butt end";
    return;
  }
  rod.blank_tip_m = *part.start_m + r.Input(*fit.overall) -
                    Uncertain(OffElsewhereSince(r, r.log.fits[plan.dry_fit].order));
  if (rod.blank.length_m) rod.blank_butt_m = *rod.blank_tip_m - *rod.blank.length_m;
}

void SettleAgainstCap(Resolver& r, const RestPlan& plan, const PlacedPart& part) {
  Rod& rod = r.rod;
  if (plan.part >= 0 && !(part.start_m && part.length_m)) {
    rod.rest_measure = "measure the length of the butt cap";
    return;
  }
  rod.blank_butt_m = plan.part >= 0 ? *part.start_m + *part.length_m : Uncertain(0);
  if (rod.blank.assembled.empty()) return;
  r.Assume(rod.handle.at.Field("blank_butt_from_butt"), absl::StrFormat("%.1f mm", rod.blank_butt_m->value() * 1000),
           plan.part >= 0 ? "the blank runs through the handle up to the butt cap"
                          : "without a butt cap the blank runs through to the butt end");
}

// A written place and a dry fit tell the same thing.
void CompareWithDryFit(Resolver& r, const Known<Length>& written) {
  const int i = LatestDryFit(r);
  if (i < 0 || r.rod.dry_fits[i].stale || !r.rod.blank.length_m) return;
  const Part& part = r.rod.handle.parts[PartIndex(r.rod, r.rod.dry_fits[i].part)];
  if (!part.start.from_butt_m) return;
  Known<Length> fitted = *r.rod.dry_fits[i].overall;
  fitted.value += Length::Meters(part.start.from_butt_m->value() - OffElsewhereSince(r, r.log.fits[i].order) -
                                 r.rod.blank.length_m->value());
  CompareLengths(r, written, fitted);
}

// How far the tip-top reaches beyond its tube.
std::optional<Uncertain> EndBeyondTube(Resolver& r) {
  const TipTop& tip = *r.rod.tip_top;
  if (tip.end_beyond_tube) return r.Input(*tip.end_beyond_tube);
  if (!tip.ring_outer || tip.ring_center_beyond_tube->source == Source::kAssumed) return std::nullopt;
  const double end = tip.ring_center_beyond_tube->value.meters() + tip.ring_outer->value.meters() / 2;
  r.Assume(tip.at.Field("end_beyond_tube"), absl::StrFormat("%.1f mm", end * 1000),
           "the ring's far side is the outermost point");
  return Uncertain(end);
}

std::optional<Uncertain> Plus(const std::optional<Uncertain>& a, const std::optional<Uncertain>& b) {
  return a && b ? std::optional<Uncertain>(*a + *b) : std::nullopt;
}

Datums SettleTip(Resolver& r) {
  Rod& rod = r.rod;
  if (!rod.tip_top) {
    if (!rod.guides.empty()) r.Assume(FieldPath().Field("tip_top"), "0 mm", "without a tip-top guides count from the blank's tip");
    rod.tip_ring_m = rod.blank_tip_m;
    return {std::nullopt, rod.blank.length_m};
  }
  r.Assume(rod.tip_top->at.Field("tube_length"), "tube pushed home", "the tip of the blank is at the end of the tube");
  const std::optional<Uncertain> center = r.Input(*rod.tip_top->ring_center_beyond_tube);
  const std::optional<Uncertain> end = EndBeyondTube(r);
  rod.tip_ring_m = Plus(rod.blank_tip_m, center);
  rod.overall_m = Plus(rod.blank_tip_m, end);
  return {Plus(rod.blank.length_m, end), Plus(rod.blank.length_m, center)};
}

}  // namespace

RestPlan PlanRest(Resolver& r) {
  ReadDryFits(r);
  CompareDryFits(r);
  Rod& rod = r.rod;
  const v1::Handle& handle = r.design.handle();
  if (ReadLength(handle.blank_butt_from_butt(), rod.handle.at, "blank_butt_from_butt")) return {RestBasis::kGiven, -1, -1};
  const int fit = LatestDryFit(r);
  if (fit >= 0 && !rod.dry_fits[fit].stale) {
    return {RestBasis::kDryFit, PartIndex(rod, rod.dry_fits[fit].part), fit};
  }
  bool one_piece = false;
  int cap = -1;
  for (std::size_t i = 0; i < rod.handle.parts.size(); ++i) {
    if (rod.handle.parts[i].kind == "one_piece_handle" && rod.handle.parts[i].on.empty()) one_piece = true;
    if (IsCap(rod.handle.parts[i])) cap = static_cast<int>(i);
  }
  if (!one_piece) return {RestBasis::kAgainstCap, cap, -1};
  if (fit >= 0) {
    SayStale(r, fit, *ButtSection(rod));
  } else {
    rod.rest_measure = "try the one-piece handle on dry and log the fit";
    r.rod.findings.push_back(MakeFinding(kRestUnknown, rod.handle.at,
                                         "a one-piece handle without a dry fit: the finished length cannot be told"));
  }
  return {};
}

Datums SettleRest(Resolver& r, const RestPlan& plan, const PlacedPart& part) {
  Rod& rod = r.rod;
  switch (plan.basis) {
    case RestBasis::kGiven: {
      const auto written = ReadLength(r.design.handle().blank_butt_from_butt(), rod.handle.at, "blank_butt_from_butt");
      rod.blank_butt_m = r.Input(*written);
      break;
    }
    case RestBasis::kDryFit: SettleFromDryFit(r, plan, part); break;
    case RestBasis::kAgainstCap: SettleAgainstCap(r, plan, part); break;
    case RestBasis::kUnknown: break;
  }
  if (rod.blank_butt_m || rod.blank_tip_m) rod.rest_basis = plan.basis;
  if (!rod.blank_tip_m) rod.blank_tip_m = Plus(rod.blank_butt_m, rod.blank.length_m);
  return SettleTip(r);
}

void CompareRestWithDryFit(Resolver& r) {
  const auto written =
      ReadLength(r.design.handle().blank_butt_from_butt(), r.rod.handle.at, "blank_butt_from_butt");
  if (written) CompareWithDryFit(r, *written);
}

}  // namespace withy
