#include "make_rest_law.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "absl/strings/str_format.h"
#include "dry_fits.h"
#include "measurements.h"
#include "read_quantity.h"

namespace withy {
namespace {

constexpr double kSameM = 1e-9;

// A bore drawn over the whole length of its part, and where it is known.
struct Bore {
  Profile drawn;
  double from_z = 0, to_z = std::numeric_limits<double>::infinity();
};

// Rows that begin inside the part tell nothing of what lies behind; one row alone is a straight bore.
std::optional<Bore> BoreOfRows(const Part& part, double length) {
  if (part.bore.begin() >= length) return std::nullopt;
  Bore bore;
  bore.drawn = part.bore.Slice(0, length);
  if (part.bore.knots().size() == 1) return bore;
  bore.from_z = part.bore.begin();
  if (part.bore.end() < length - kSameM) bore.to_z = part.bore.end();
  return bore;
}

// Rise of the bore from knot a to knot b; a shoulder, or one that narrows, is drawn on straight.
double Slope(const Profile::Knot& a, const Profile::Knot& b) {
  return b.x > a.x ? std::max(0.0, (b.y - a.y) / (b.x - a.x)) : 0;
}

// Those put in at the mouth. Behind the deepest and ahead of the widest the bore is drawn on with the slope of the last
// two; it is at least as wide as the widest all the way to the mouth. Unset where a wider one went deeper.
std::optional<Bore> BoreOfPlugs(const Part& part, double length) {
  std::vector<Profile::Knot> knots;
  for (const Plug& plug : part.plugs) {
    if (plug.entered_at != End::kTip) continue;
    const double z = length - plug.depth.meters();
    if (z < 0 || z > length || !(plug.plug.meters() > 0)) return std::nullopt;
    knots.push_back({z, plug.plug.meters()});
  }
  if (knots.empty()) return std::nullopt;
  std::sort(knots.begin(), knots.end(),
            [](const auto& a, const auto& b) { return std::pair(a.x, a.y) < std::pair(b.x, b.y); });
  if (!std::is_sorted(knots.begin(), knots.end(), [](const auto& a, const auto& b) { return a.y < b.y; }))
    return std::nullopt;
  const std::size_t n = knots.size();
  Bore bore;
  bore.from_z = knots.front().x;
  bore.to_z = knots.back().x;
  const double behind = n > 1 ? Slope(knots[0], knots[1]) : 0, ahead = n > 1 ? Slope(knots[n - 2], knots[n - 1]) : 0;
  const Profile::Knot first = knots.front(), last = knots.back();
  if (first.x > 0) knots.insert(knots.begin(), {0, std::max(0.0, first.y - behind * first.x)});
  if (last.x < length) knots.push_back({length, last.y + ahead * (length - last.x)});
  bore.drawn = Profile(std::move(knots));
  return bore;
}

std::optional<Bore> BoreOf(const Part& part) {
  const auto length = Positive(part.length);
  if (!length || part.fitting != FitKind::kRigid || part.reamed) return std::nullopt;
  if (part.bore_known == BoreKnown::kPlugs) return BoreOfPlugs(part, length->meters());
  if (part.bore_known != BoreKnown::kProfile || part.bore.empty()) return std::nullopt;
  return BoreOfRows(part, length->meters());
}

// The assembled blank with its butt uncut. Unset where it is not known from the butt face as supplied on.
std::optional<Profile> UncutBlank(const Blank& blank) {
  const Section& butt = blank.sections[blank.assembled.front()];
  const bool round = butt.shape == Shape::kTube || butt.shape == Shape::kSolidRound;
  if (!round || blank.outer.empty() || butt.outer.empty() || butt.outer.begin() > kSameM) return std::nullopt;
  const double cut = butt.cut_butt.amount.meters();
  const Profile rest = blank.outer.Shifted(cut);
  if (!(cut > 0)) return rest;
  std::vector<Profile::Knot> knots = butt.outer.Slice(0, cut).knots();
  const bool jump = knots.back().y != rest.knots().front().y;
  knots.insert(knots.end(), rest.knots().begin() + (jump ? 0 : 1), rest.knots().end());
  return Profile(std::move(knots));
}

double Widest(double widest, const v1::Length& length) {
  return std::max(widest, PlusMinusMeters(length).value_or(-1));
}

// Of the bore's diameters; what is not said is listed.
double PlusMinusOfBore(Resolver& r, const Part& part, const v1::Part& written) {
  const bool plugs = part.bore_known == BoreKnown::kPlugs;
  double widest = -1;
  bool measured = true;
  for (const auto& plug : written.plugs()) widest = plugs ? Widest(widest, plug.plug()) : widest;
  for (const auto& ring : written.bore()) {
    if (plugs) break;
    widest = Widest(widest, ring.diameter());
    measured = measured && ring.diameter().source() == v1::Source::MEASURED;
  }
  if (widest >= 0) return widest;
  const double assumed = plugs || measured ? kUnstatedDiameterM : kDrawnBorePlusMinusM;
  r.Assume(part.at.Field(plugs ? "plugs" : "bore"), absl::StrFormat("+/- %.2f mm", assumed * 1000),
           plugs || measured ? "bore read with a plug or a calliper, no uncertainty given (common practice, no source)"
                             : "bore from a drawing, no uncertainty given (common practice, no source)");
  return assumed;
}

double PlusMinusOfBlank(Resolver& r, const Section& butt) {
  if (butt.taper.diameter_plus_minus_m) return *butt.taper.diameter_plus_minus_m;
  r.Assume(butt.taper.at.Field("reading").Field("diameter_plus_minus"),
           absl::StrFormat("%.2f mm", kUnstatedDiameterM * 1000), "a calliper (common practice, no source)");
  return kUnstatedDiameterM;
}

double ClearanceOf(Resolver& r, const Part& part) {
  const double clearance = GlueClearanceOf(part);
  if (!part.glue_clearance) {
    r.Assume(part.at.Field("fitting").Field("glue_clearance"), absl::StrFormat("%.1f mm", clearance * 1000),
             "a bond line of 0.05 mm all round (common practice; 0.05 to 0.13 mm are recommended)");
  }
  return clearance;
}

double StopOf(const Part& part) {
  const double stop = part.stop ? part.stop->value.meters() : 0;
  return std::clamp(stop, 0.0, part.length->value.meters());
}

// The last entry that reamed the part; -1 = none.
int Reamed(const Resolver& r, const std::string& part) {
  int order = -1;
  for (const auto& done : r.log.reamings) {
    const auto& what = done.entry->what();
    if (what.empty() || std::find(what.begin(), what.end(), part) != what.end()) order = std::max(order, done.order);
  }
  return order;
}

// The last entry after which the part or the blank was another.
int Disturbed(const Resolver& r, const std::string& part) {
  int order = Reamed(r, part);
  for (const auto& breakage : r.log.breakages) {
    const std::string& what = breakage.entry->what();
    if (what == part || r.rod.FindSection(what)) order = std::max(order, breakage.order);
  }
  return order;
}

// Arbors may bind before the bore does: a fit with them on tells nothing of it.
std::vector<RestLaw::Seen> FitsOf(Resolver& r, const Part& part, double blank_m) {
  std::vector<RestLaw::Seen> fits;
  const int disturbed = Disturbed(r, part.id);
  for (std::size_t i = 0; i < r.rod.dry_fits.size(); ++i) {
    const DryFit& fit = r.rod.dry_fits[i];
    const int order = r.log.fits[i].order;
    if (part.id.empty() || fit.part != part.id || !Positive(fit.overall) || fit.impossible || fit.arbors_on) continue;
    if (order < disturbed || (r.host_glued && order > *r.host_glued) || !(fit.cut_butt_m < blank_m)) continue;
    RestLaw::Seen seen;
    seen.dry_fit = static_cast<int>(i);
    seen.cut_m = fit.cut_butt_m;
    seen.length_m = LengthOfFit(r, fit);
    seen.plus_minus_m = fit.overall->plus_minus.value_or(kUnstatedLengthM);
    fits.push_back(std::move(seen));
  }
  if (fits.empty()) return fits;
  const Known<Length>& last = *r.rod.dry_fits[fits.back().dry_fit].overall;
  if (!last.plus_minus) r.Assume(last.at, "+/- 1 mm", "a steel rule (common practice, no source)");
  return fits;
}

// What is known of the blank whatever the law.
std::optional<RestLaw::Setup> SetupOf(const Rod& rod) {
  if (!rod.blank.length_m || rod.blank.assembled.empty()) return std::nullopt;
  const Section& butt = rod.blank.sections[rod.blank.assembled.front()];
  const Uncertain uncut = *rod.blank.length_m + *butt.from_m;  // what the cut leaves open goes out with it
  RestLaw::Setup setup;
  setup.blank_m = uncut.value();
  setup.blank_plus_minus_m = uncut.plus_minus();
  return setup;
}

// A last fit that came to rest where the bore is not known says more than what is drawn on.
bool RestsWhereKnown(const Bore& bore, const RestLaw::Setup& setup) {
  if (setup.seen.empty()) return true;
  const RestLaw::Seen& last = setup.seen.back();
  const double rest = last.length_m - setup.blank_m + last.cut_m;
  return rest >= bore.from_z - last.plus_minus_m && rest <= bore.to_z + last.plus_minus_m;
}

void TakeContact(Resolver& r, const Part& part, const Bore& bore, const Profile& blank, RestLaw::Setup& setup) {
  const Section& butt = r.rod.blank.sections[r.rod.blank.assembled.front()];
  setup.from = RestLaw::From::kContact;
  setup.as_read = Insertion({.bore = bore.drawn,
                             .shaft = blank.Slice(0, setup.blank_m),
                             .clearance = ClearanceOf(r, part),
                             .stop = StopOf(part)});
  setup.known_from_z_m = bore.from_z;
  setup.known_to_z_m = bore.to_z;
  const double of_blank = PlusMinusOfBlank(r, butt);
  setup.diameter_plus_minus_m = std::hypot(of_blank, PlusMinusOfBore(r, part, r.design.handle().parts(setup.host)));
}

}  // namespace

void MakeLawOfHandle(Resolver& r) {
  Rod& rod = r.rod;
  const int host = rod.handle.Host();
  auto setup = SetupOf(rod);
  if (host < 0 || !setup) return;
  const Part& part = rod.handle.parts[host];
  if (part.slides_on_from == End::kTip || part.fitting != FitKind::kRigid) return;
  setup->host = host;
  setup->seen = FitsOf(r, part, setup->blank_m);
  const auto bore = Reamed(r, part.id) < 0 ? BoreOf(part) : std::nullopt;
  const auto blank = UncutBlank(rod.blank);
  if (bore && blank && RestsWhereKnown(*bore, *setup)) {
    TakeContact(r, part, *bore, *blank, *setup);
  } else if (!setup->seen.empty()) {
    setup->from = RestLaw::From::kDryFits;
  } else {
    return;
  }
  rod.rest_law.emplace(std::move(*setup));
}

void MakeLawOfButt(Resolver& r) {
  auto setup = SetupOf(r.rod);
  if (!setup || !r.rod.blank_butt_m || r.rod.handle.Host() >= 0) return;
  setup->from = RestLaw::From::kThrough;
  setup->through_m = r.rod.blank_butt_m->value();
  setup->blank_plus_minus_m = std::hypot(setup->blank_plus_minus_m, r.rod.blank_butt_m->plus_minus());
  r.rod.rest_law.emplace(std::move(*setup));
}

}  // namespace withy
