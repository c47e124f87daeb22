// A place of the blank that is written or was tried on dry, against the one that bore and taper give.
#include <cmath>
#include <utility>

#include "absl/strings/str_format.h"
#include "both_units.h"
#include "plan_basis.h"
#include "rules.h"

namespace withy::fit {
namespace {

constexpr Code kRestDiffers = {
    .name = "fit/rest-differs",
    .severity = Severity::kWarning,
    .summary = "The written place of the blank's butt face is not where bore and taper let it come to rest",
    .why =
        "The finished length follows the place that is written, the cut plan where bore and taper let the blank come to "
        "rest: one of them is wrong by the difference, and so is the cut.",
    .action =
        "Push the handle on dry and log the fit; then take `blank_butt_from_butt` out, for the fit tells the place. "
        "Where a plug or the adhesive is to hold the blank out, say so with `fitting.stop` of the handle.",
};

// Of a place that was written without one: a steel rule (common practice, no source).
constexpr double kUnstated_m = 0.001;

// Where the butt face comes to rest by bore and taper, from the butt end of the finished rod, and how far that may be
// off towards the place that is written.
struct ByContact {
  double butt_m = 0, plus_minus_m = 0;
};

ByContact RestByContact(const PlanBasis& basis, double written_m) {
  const RestLaw::Band band = basis.law.LengthAt(basis.planned_m);
  const double butt_m = *basis.host_start_m + basis.law.RestAt(basis.planned_m);
  return {butt_m, written_m > butt_m ? band.high - band.value : band.value - band.low};
}

void JudgeRestDiffers(const View& view, std::vector<Finding>& findings) {
  if (!RestIsJudgedByContact(view.rod)) return;
  const auto basis = PlanBasisOf(view.rod);
  const Uncertain& written = *view.rod.blank_butt_m;
  const ByContact contact = RestByContact(*basis, written.value());
  const double written_plus_minus_m = written.plus_minus() > 0 ? written.plus_minus() : kUnstated_m;
  const double allowed_m =
      std::hypot(contact.plus_minus_m, written_plus_minus_m, basis->host->start.from_butt_m->plus_minus());
  const double further_out_m = written.value() - contact.butt_m;
  if (std::abs(further_out_m) <= allowed_m) return;
  findings.push_back(MakeFinding(
      kRestDiffers, view.rod.handle.at.Field("blank_butt_from_butt"),
      absl::StrFormat("the butt face is written at %.1f mm and by bore and taper comes to rest at %.1f mm, %.1f mm further "
                      "%s, where %.1f mm are open: the length is of the one, the cut plan of the other",
                      written.value() * 1000, contact.butt_m * 1000, std::abs(further_out_m) * 1000,
                      further_out_m > 0 ? "in" : "out", allowed_m * 1000),
      {{"written_mm", written.value() * 1000},
       {"contact_mm", contact.butt_m * 1000},
       {"plus_minus_mm", allowed_m * 1000}}));
  findings.back().related.push_back(basis->host->at);
  findings.back().from_tip_mm = view.rod.FromTipMm({written, std::nullopt});
}

constexpr Code kDryFitDiffers = {
    .name = "fit/dry-fit-differs",
    .severity = Severity::kWarning,
    .summary = "The latest dry fit reads another length than bore and blank as read can give",
    .why =
        "Both say where the butt comes to rest, and the next cut is worked out from both. When they differ by more than "
        "they leave open, a diameter, a length, a cut or the fit itself was misread.",
    .action =
        "Push the handle home once more and log what it reads; drop the plugs in again, and measure the butt where it "
        "enters. Correct the reading that was wrong.",
};

void JudgeDryFitDiffers(const View& view, std::vector<Finding>& findings) {
  const auto basis = PlanBasisOf(view.rod);
  if (!basis || basis->law.seen().empty() || basis->closed != nullptr) return;
  const bool contradicted = basis->law.Contradicted();
  // one that other diameters explain is told as these where the blank rests as it was tried: fit/bore-differs
  if (!contradicted && view.rod.rest_basis != RestBasis::kLaw) return;
  const RestLaw::Seen& last = basis->law.seen().back();
  RestLaw::Setup setup = basis->law.setup();
  setup.seen.clear();
  const RestLaw as_read(std::move(setup));
  if (!as_read.KnownAt(last.cut_m)) return;
  const DryFit& logged = view.rod.dry_fits[last.dry_fit];
  const RestLaw::Band band = as_read.LengthAt(last.cut_m);
  const double since_m = logged.overall->value.meters() - last.length_m;  // off elsewhere since
  const double longer_m = last.length_m - band.value;
  const double open_m = longer_m > 0 ? band.high - band.value : band.value - band.low;
  if (!contradicted && std::abs(longer_m) <= std::hypot(open_m, last.plus_minus_m)) return;
  findings.push_back(MakeFinding(
      kDryFitDiffers, logged.overall->at,
      absl::StrFormat("%.1f mm were read, %.1f mm %s than bore and blank as read give, where their diameters leave %.1f mm "
                      "open",
                      logged.overall->value.mm(), std::abs(longer_m) * 1000, longer_m > 0 ? "more" : "less", open_m * 1000),
      {{"read_mm", logged.overall->value.mm()},
       {"expected_mm", (band.value + since_m) * 1000},
       {"plus_minus_mm", open_m * 1000}}));
  findings.back().related.push_back(basis->host->at.Field(basis->host->plugs.empty() ? "bore" : "plugs"));
}

}  // namespace

// What is glued is a fact that no dry fit can ask any more.
bool RestIsJudgedByContact(const Rod& rod) {
  if (rod.rest_basis != RestBasis::kGiven || !rod.blank_butt_m) return false;
  const auto basis = PlanBasisOf(rod);
  return basis && basis->law.insertion() != nullptr && basis->host_start_m && basis->closed == nullptr &&
         basis->Told(basis->planned_m);
}

std::vector<Rule<View>> RestRules() {
  return {{&kRestDiffers, JudgeRestDiffers}, {&kDryFitDiffers, JudgeDryFitDiffers}};
}

}  // namespace withy::fit
