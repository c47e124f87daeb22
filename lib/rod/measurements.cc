#include "measurements.h"

#include <cmath>
#include <utility>

#include "absl/strings/str_format.h"
#include "codes.h"
#include "read_taper.h"

namespace withy {
namespace {

// Values in the unit `unit` ("g", "mm"), allowances likewise.
void Compare(Resolver& r, const FieldPath& before_at, double before, const FieldPath& after_at, double after,
             double allowed, const char* unit) {
  if (std::abs(after - before) <= allowed) return;
  Finding finding = MakeFinding(kMeasurementsDiffer, after_at,
                                absl::StrFormat("measured %.6g %s here and %.6g %s before; the later is used", after, unit,
                                                before, unit),
                                {{absl::StrFormat("before_%s", unit), before}, {absl::StrFormat("after_%s", unit), after}});
  finding.related.push_back(before_at);
  r.rod.findings.push_back(std::move(finding));
}

}  // namespace

void CompareMasses(Resolver& r, const Known<Mass>& a, const Known<Mass>& b) {
  if (a.source != Source::kMeasured || b.source != Source::kMeasured) return;
  const double allowed =
      std::hypot(a.plus_minus.value_or(kUnstatedMassKg), b.plus_minus.value_or(kUnstatedMassKg)) * 1000;
  Compare(r, a.at, a.value.grams(), b.at, b.value.grams(), allowed, "g");
}

void CompareLengths(Resolver& r, const Known<Length>& a, const Known<Length>& b) {
  if (a.source != Source::kMeasured || b.source != Source::kMeasured) return;
  const double allowed =
      std::hypot(a.plus_minus.value_or(kUnstatedLengthM), b.plus_minus.value_or(kUnstatedLengthM)) * 1000;
  Compare(r, a.at, a.value.mm(), b.at, b.value.mm(), allowed, "mm");
}

void CompareTapers(Resolver& r, const TaperTable& before, const TaperTable& after) {
  TaperTable measured = before;
  std::erase_if(measured.stations, [](const Station& s) { return s.outer_source != Source::kMeasured; });
  const Profile outer_before = OuterProfile(measured);
  if (outer_before.empty()) return;
  const Station* worst = nullptr;
  double worst_difference = 0;
  for (const Station& station : after.stations) {
    if (!station.at || !station.outer || station.outer_source != Source::kMeasured) continue;
    const double x = station.at->meters();
    if (x < outer_before.begin() || x > outer_before.end()) continue;
    const double difference = std::abs(station.outer->meters() - outer_before.At(x));
    if (difference > worst_difference) {
      worst = &station;
      worst_difference = difference;
    }
  }
  if (worst == nullptr) return;
  const double allowed = std::hypot(before.diameter_plus_minus_m.value_or(kUnstatedDiameterM),
                                    after.diameter_plus_minus_m.value_or(kUnstatedDiameterM));
  Compare(r, before.at, outer_before.At(worst->at->meters()) * 1000, after.PathOf(*worst).Field("outer"),
          worst->outer->mm(), allowed * 1000, "mm");
}

}  // namespace withy
