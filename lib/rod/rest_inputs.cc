#include "withy/rod/rest_inputs.h"

#include <algorithm>
#include <utility>

namespace withy {
namespace {

constexpr double kExactM = 1e-9;

std::string BoreOfHost(const Rod& rod) {
  if (rod.rest_law->host() < 0) return rod.handle.at.ToString();
  const Part& host = rod.handle.parts[rod.rest_law->host()];
  return host.at.Field(host.bore_known == BoreKnown::kPlugs ? "plugs" : "bore").ToString();
}

std::string LatestDryFit(const Rod& rod) {
  return rod.dry_fits[rod.rest_law->seen().back().dry_fit].at.Field("overall").ToString();
}

std::string LengthOfBlank(const Rod& rod) {
  const FieldPath sections = rod.blank.at.Field("sections");
  if (rod.blank.assembled.size() != 1) return sections.ToString() + " (lengths)";
  return rod.blank.sections[rod.blank.assembled.front()].at.Field("length").ToString();
}

// Of half the band.
double SquareAt(const RestLaw& law, double cut_m) {
  const RestLaw::Band band = law.LengthAt(cut_m);
  return (band.high - band.low) * (band.high - band.low) / 4;
}

}  // namespace

std::string RestInputName(const Rod& rod) {
  const bool drawn_on = rod.rest_law->from() == RestLaw::From::kDryFits;
  return drawn_on ? LatestDryFit(rod) + " (drawn on to the cut as planned)"
                  : BoreOfHost(rod) + " (where the blank comes to rest)";
}

std::vector<RestInput> RestInputsOf(const Rod& rod, double cut_m) {
  if (!rod.rest_law) return {};
  const RestLaw& law = *rod.rest_law;
  const double all = SquareAt(law, cut_m);
  if (!(all > 0)) return {};
  if (law.from() == RestLaw::From::kThrough) return {{LengthOfBlank(rod), 1}};
  if (law.from() == RestLaw::From::kDryFits) return {{LatestDryFit(rod), 1}};
  RestLaw::Setup without_length = law.setup(), read_exactly = law.setup();
  without_length.blank_plus_minus_m = 0;
  for (RestLaw::Seen& seen : read_exactly.seen) seen.plus_minus_m = std::min(seen.plus_minus_m, kExactM);
  const auto share_of = [&](RestLaw::Setup setup) {
    return std::clamp(1 - SquareAt(RestLaw(std::move(setup)), cut_m) / all, 0.0, 1.0);
  };
  const double length = share_of(std::move(without_length));
  const double read = law.seen().empty() ? 0 : std::min(share_of(std::move(read_exactly)), 1 - length);
  std::vector<RestInput> inputs;
  const auto add = [&inputs](std::string name, double share) {
    if (share > 0) inputs.push_back({std::move(name), share});
  };
  add(LengthOfBlank(rod), length);
  if (read > 0) add(LatestDryFit(rod), read);
  add(BoreOfHost(rod) + " (its diameters and the blank's)", 1 - length - read);
  return inputs;
}

}  // namespace withy
