#include "rest.h"

#include <algorithm>
#include <string>
#include <utility>

#include "absl/strings/str_format.h"
#include "codes.h"
#include "dry_fits.h"
#include "judge_log.h"
#include "make_rest_law.h"
#include "measurements.h"
#include "read_quantity.h"
#include "withy/rod/rest_inputs.h"

namespace withy {
namespace {

constexpr double kSameM = 1e-9;

bool IsCap(const Part& part) {
  return part.on.empty() && !part.loose &&
         (part.kind == "butt_cap" || part.kind == "gimbal" || part.kind == "extension_butt");
}

int CapOf(const Handle& handle) {
  int cap = -1;
  for (std::size_t i = 0; i < handle.parts.size(); ++i) {
    if (IsCap(handle.parts[i])) cap = static_cast<int>(i);
  }
  return cap;
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

// The latest fit that told a length, of a handle that is glued on the latest before that; whether the butt is, or is to
// be, shorter than it was then.
int LatestDryFit(Resolver& r) {
  const int host = r.rod.handle.Host();
  const Section* butt = ButtSection(r.rod);
  for (int i = static_cast<int>(r.rod.dry_fits.size()) - 1; butt && i >= 0; --i) {
    DryFit& fit = r.rod.dry_fits[i];
    const int part = PartIndex(r.rod, fit.part);
    if (!Positive(fit.overall) || fit.impossible || part < 0) continue;
    const bool glued = part == host && r.host_glued;
    if (glued && r.log.fits[i].order > *r.host_glued) continue;
    const double cut = glued ? CutButtBefore(r, *r.host_glued) : butt->cut_butt.amount.meters();
    fit.stale = cut > fit.cut_butt_m + kSameM;
    return i;
  }
  return -1;
}

void SayStale(Resolver& r, int index, const Section& butt) {
  const DryFit& fit = r.rod.dry_fits[index];
  const double then_mm = fit.cut_butt_m * 1000;
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

void SettleFromDryFit(Resolver& r, const RestPlan& plan, const PlacedPart& part) {
  Rod& rod = r.rod;
  const DryFit& fit = rod.dry_fits[plan.dry_fit];
  if (!part.start_m) {
    rod.rest_measure = "give the part that was tried on a place from the butt end";
    return;
  }
  rod.blank_tip_m = *part.start_m + r.Input(*fit.overall) + Uncertain(LengthOfFit(r, fit) - fit.overall->value.meters());
  if (rod.blank.length_m) rod.blank_butt_m = *rod.blank_tip_m - *rod.blank.length_m;
}

// Half the band on both sides, the wider one. The tip end is an input of its own; the butt face then carries the blank's
// length once more than it should: too wide, never too narrow.
void SettleFromLaw(Resolver& r, const PlacedPart& part) {
  Rod& rod = r.rod;
  if (!part.start_m) {
    rod.rest_measure = "give the one-piece handle a place from the butt end";
    return;
  }
  const RestLaw::Band band = rod.rest_law->LengthAt(ButtSection(rod)->cut_butt.amount.meters());
  rod.blank_tip_m = *part.start_m + rod.inputs.Add(band.value, std::max(band.value - band.low, band.high - band.value),
                                                   RestInputName(rod));
  rod.blank_butt_m = *rod.blank_tip_m - *rod.blank.length_m;
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
  fitted.value = Length::Meters(part.start.from_butt_m->value() + LengthOfFit(r, r.rod.dry_fits[i]) -
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

// What has to be put right before any length can be told; empty = nothing.
std::string WhatBarsALength(const Resolver& r) {
  if (!r.log.not_understood.empty()) return "make the log entry understood that may be a cut";
  if (r.rod.handle.parts.size() < static_cast<std::size_t>(r.design.handle().parts_size())) {
    return "split the design: one file is one rod";
  }
  for (const auto& breakage : UnrepairedBreakages(r)) {
    const std::string& id = breakage.entry->what();
    if (!r.rod.FindSection(id)->assembled()) continue;
    return absl::StrFormat("'%s' is broken: log its repair and what was cut off, or plan a new section", id);
  }
  return "";
}

// A dry fit that is read worse than a handle repeats tells nothing that bore and taper do not tell better, as long as the
// two agree. The law has taken from it what it does tell.
bool LawIsSurer(const Rod& rod, const DryFit& fit) {
  constexpr double kRepeatsM = 0.003;  // common practice, no source
  const int host = rod.handle.Host();
  if (!rod.rest_law || rod.rest_law->from() != RestLaw::From::kContact || rod.rest_law->Contradicted()) return false;
  if (host < 0 || fit.part != rod.handle.parts[host].id) return false;
  if (rod.FindClosed(Closed::Kind::kGlued, fit.part) != nullptr || !rod.rest_law->KnownAt(fit.cut_butt_m)) return false;
  const double read = fit.overall->plus_minus.value_or(kUnstatedLengthM);
  const RestLaw::Band band = rod.rest_law->LengthAt(fit.cut_butt_m);
  return read > kRepeatsM && (band.high - band.low) / 2 < read;
}

}  // namespace

RestPlan PlanRest(Resolver& r) {
  ReadDryFits(r);
  JudgeDryFits(r);
  CompareDryFits(r);
  TellRestOfGlued(r);
  Rod& rod = r.rod;
  rod.rest_measure = WhatBarsALength(r);
  if (!rod.rest_measure.empty()) return {};
  MakeLawOfHandle(r);
  const v1::Handle& handle = r.design.handle();
  if (ReadLength(handle.blank_butt_from_butt(), rod.handle.at, "blank_butt_from_butt")) return {RestBasis::kGiven, -1, -1};
  const int fit = LatestDryFit(r);
  if (fit >= 0 && !rod.dry_fits[fit].stale && !LawIsSurer(rod, rod.dry_fits[fit])) {
    return {RestBasis::kDryFit, PartIndex(rod, rod.dry_fits[fit].part), fit};
  }
  const int host = rod.handle.Host();
  if (rod.rest_law) return {RestBasis::kLaw, host, -1};
  if (host < 0) return {RestBasis::kAgainstCap, CapOf(rod.handle), -1};
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
    case RestBasis::kLaw: SettleFromLaw(r, part); break;
    case RestBasis::kAgainstCap: SettleAgainstCap(r, plan, part); break;
    case RestBasis::kUnknown: break;
  }
  if (rod.blank_butt_m || rod.blank_tip_m) rod.rest_basis = plan.basis;
  if (!rod.blank_tip_m) rod.blank_tip_m = Plus(rod.blank_butt_m, rod.blank.length_m);
  MakeLawOfButt(r);
  return SettleTip(r);
}

void PutButtOnShoulder(Rod& rod) {
  const int host = rod.handle.Host();
  if (host < 0 || !rod.blank_butt_m) return;
  const Part& part = rod.handle.parts[host];
  if (!part.start.from_butt_m || part.bore.empty()) return;
  const double butt_m = rod.blank_butt_m->value();
  // moved as all who ask for the bore along the rod move it, to the last digit
  const double shoulder_m = part.bore.Shifted(part.start.from_butt_m->value()).OntoJump(butt_m, kOnStepM);
  if (shoulder_m != butt_m) rod.blank_butt_m = *rod.blank_butt_m + Uncertain(shoulder_m - butt_m);
}

void CompareRestWithDryFit(Resolver& r) {
  const auto written =
      ReadLength(r.design.handle().blank_butt_from_butt(), r.rod.handle.at, "blank_butt_from_butt");
  if (written) CompareWithDryFit(r, *written);
}

}  // namespace withy
