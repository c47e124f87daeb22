#include "bond.h"

#include <algorithm>
#include <utility>

#include "absl/strings/str_cat.h"

namespace withy {
namespace {

// All round, of a part that is pulled or shrunk on: the thinner end of what holds best (0.05 to 0.13 mm, a supplier's
// advice). Its adhesive is a film, not the filling of a gap.
constexpr double kFilm_m = 0.00005;
// Both legs of the fillet at an end that shows: squeeze-out is wiped to a small one (common practice, no source).
constexpr double kFilletLeg_m = 0.001;
// How far beyond the plugs a bore is taken to go on as it is.
constexpr double kNear_m = 0.001;

struct Stretch {
  double from = 0, to = 0;
};

Bond CannotBeTold(std::string measure) {
  Bond bond;
  bond.measure = std::move(measure);
  return bond;
}

Profile WiderBy(const Profile& profile, double by_m) {
  std::vector<Profile::Knot> knots = profile.knots();
  for (Profile::Knot& knot : knots) knot.y += by_m;
  return Profile(std::move(knots));
}

// What a part sits on, in the part's own coordinate: the blank, or the part named in `on`.
struct Inner {
  Profile outer;
  Stretch extent;
  std::string measure;  // where not known
  bool is_blank = true;
  bool known() const { return !outer.empty(); }
};

Inner BlankUnder(const Rod& rod, const Along& start) {
  Inner inner;
  if (rod.blank.outer.empty() || !rod.blank.length_m) {
    inner.measure = "measure the blank: its diameters, its length, and how far the sections seat in one another";
  } else if (!start.on_blank_m) {
    inner.measure = rod.blank_butt_m || rod.rest_measure.empty() ? "say where it lies" : rod.rest_measure;
  } else {
    const double blank_m = -start.on_blank_m->value();
    inner.outer = rod.blank.outer.Shifted(blank_m);
    inner.extent = {blank_m, blank_m + rod.blank.length_m->value()};
  }
  return inner;
}

Inner HostUnder(const Rod& rod, const Part& part) {
  Inner inner;
  inner.is_blank = false;
  const Part* host = rod.FindPart(part.on);
  if (host == nullptr || host->outer.empty() || !host->length) {
    inner.measure = absl::StrCat("measure the outside and the length of ", part.on);
  } else if (!host->start.from_butt_m || !part.start.from_butt_m) {
    inner.measure = "say where it lies";
  } else {
    const double host_m = host->start.from_butt_m->value() - part.start.from_butt_m->value();
    inner.outer = host->outer.Shifted(host_m);
    inner.extent = {host_m, host_m + host->length->value.meters()};
  }
  return inner;
}

std::optional<double> OriginOf(const Along& start) {
  return start.from_butt_m ? std::optional<double>(start.from_butt_m->value()) : std::nullopt;
}

// By what a bore as read is tighter than the dry fit says, where this is the part that the blank rests in.
double TighterThanRead(const Rod& rod, const Part& part) {
  const bool host = rod.rest_law && rod.rest_law->host() >= 0 && &rod.handle.parts[rod.rest_law->host()] == &part;
  return host ? rod.rest_law->tighter_m() : 0;
}

// The bore as it is when the adhesive goes in; empty where it is not known over the whole stretch.
Profile BoreInPlace(const Rod& rod, const Part& part, const Profile& inner, const Stretch& over) {
  if (part.fitting != FitKind::kRigid) return WiderBy(inner, 2 * kFilm_m);
  const bool by_plugs = part.bore_known == BoreKnown::kPlugs;
  const bool known = !part.bore.empty() && (part.bore_known == BoreKnown::kProfile || by_plugs) &&
                     !(by_plugs && (over.from < part.bore.begin() - kNear_m || over.to > part.bore.end() + kNear_m));
  const Profile reamed = part.reamed ? WiderBy(inner, GlueClearanceOf(part)) : Profile();
  if (!known) return reamed;
  if (part.reamed) return WiderOf(part.bore, reamed, over.from, over.to);
  return WiderBy(part.bore, -TighterThanRead(rod, part));
}

// False where the diameter of one is not known.
bool AddRings(const Part& part, const PartFit& fit, BondGap& gap) {
  for (std::size_t i = 0; i < part.arbors.size(); ++i) {
    const Arbor& arbor = part.arbors[i];
    std::optional<double> outer = i < fit.arbors.size() ? fit.arbors[i].outer_m : std::nullopt;
    if (arbor.outer) outer = arbor.outer->value.meters();
    if (!outer || !arbor.own_at || !arbor.length || !(arbor.length->value.meters() > 0)) return false;
    gap.rings.push_back({arbor.own_at->value.meters(), arbor.length->value.meters(), *outer});
  }
  return true;
}

// Whether another part begins or ends at this point of the finished rod.
bool MeetsAnother(const Rod& rod, const Part& part, double from_butt_m) {
  return std::any_of(rod.handle.parts.begin(), rod.handle.parts.end(), [&](const Part& other) {
    if (&other == &part || !other.start.from_butt_m || !other.length) return false;
    const double start = other.start.from_butt_m->value(), end = start + other.length->value.meters();
    return from_butt_m >= start - kFilletLeg_m && from_butt_m <= end + kFilletLeg_m;
  });
}

// At ends of a rigid part beyond which the bare blank goes on.
void AddFillets(const Rod& rod, const Part& part, const Inner& inner, double length, Bond& bond) {
  if (part.fitting != FitKind::kRigid || !inner.is_blank || !bond.origin_m) return;
  for (const double end : {0.0, length}) {
    const bool bare = end - kFilletLeg_m >= inner.extent.from && end + kFilletLeg_m <= inner.extent.to;
    if (!bare || MeetsAnother(rod, part, *bond.origin_m + end)) continue;
    bond.fillets.push_back({inner.outer.At(end), kFilletLeg_m, kFilletLeg_m});
  }
}

// Inside of a section where its wall was read near enough.
Profile BoreOfSection(const Section& section, const Stretch& over) {
  constexpr double kWallNear_m = 0.05;
  if (section.outer.empty() || section.wall.empty()) return {};
  if (over.from < section.wall.begin() - kWallNear_m || over.to > section.wall.end() + kWallNear_m) return {};
  std::vector<double> places = {over.from, over.to};
  for (const Profile* profile : {&section.outer, &section.wall}) {
    for (const Profile::Knot& knot : profile->knots()) {
      if (knot.x > over.from && knot.x < over.to) places.push_back(knot.x);
    }
  }
  std::sort(places.begin(), places.end());
  std::vector<Profile::Knot> knots;
  for (const double x : places) {
    for (const auto side : {Profile::Limit::kLeft, Profile::Limit::kRight}) {
      knots.push_back({x, section.outer.At(x, side) - 2 * section.wall.At(x, side)});
    }
  }
  return Profile(std::move(knots));
}

}  // namespace

Profile WiderOf(const Profile& a, const Profile& b, double from_m, double to_m) {
  std::vector<double> places = {from_m, to_m};
  for (const Profile* profile : {&a, &b}) {
    for (const Profile::Knot& knot : profile->knots()) {
      if (knot.x > from_m && knot.x < to_m) places.push_back(knot.x);
    }
  }
  std::sort(places.begin(), places.end());
  std::vector<Profile::Knot> knots;
  for (std::size_t i = 0; i + 1 < places.size(); ++i) {
    const double x0 = places[i], x1 = places[i + 1];
    if (!(x0 < x1)) continue;
    const double a0 = a.At(x0), a1 = a.At(x1, Profile::Limit::kLeft);
    const double b0 = b.At(x0), b1 = b.At(x1, Profile::Limit::kLeft);
    knots.push_back({x0, std::max(a0, b0)});
    const double before = a0 - b0, after = a1 - b1;
    if ((before < 0 && after > 0) || (before > 0 && after < 0)) {
      const double cross = x0 + (x1 - x0) * before / (before - after);
      if (cross > x0 && cross < x1) knots.push_back({cross, a.At(cross)});
    }
    knots.push_back({x1, std::max(a1, b1)});
  }
  if (knots.empty()) knots.push_back({from_m, std::max(a.At(from_m), b.At(from_m))});
  return Profile(std::move(knots));
}

Bond BondOfPart(const Rod& rod, const Part& part, const PartFit& fit) {
  if (!part.length || !(part.length->value.meters() > 0)) return CannotBeTold("measure its length");
  const double length = part.length->value.meters();
  const Inner inner = part.on.empty() ? BlankUnder(rod, part.start) : HostUnder(rod, part);
  if (!inner.known()) return CannotBeTold(inner.measure);
  const Stretch over{std::max(0.0, inner.extent.from), std::min(length, inner.extent.to)};
  if (!(over.from < over.to)) return CannotBeTold("weigh what its plug takes: a plug is not part of a design");
  const Profile bore = BoreInPlace(rod, part, inner.outer, over);
  if (bore.empty()) return CannotBeTold("measure its bore from the mouth to where the blank ends");
  Bond bond;
  bond.gap = BondGap{bore, inner.outer, over.from, over.to, {}};
  bond.origin_m = OriginOf(part.start);
  if (!AddRings(part, fit, *bond.gap)) return CannotBeTold("enter place, length and diameter of each of its arbors");
  AddFillets(rod, part, inner, length, bond);
  return bond;
}

Bond BondOfArbor(const Rod& rod, const Part& host, const Arbor& arbor) {
  if (!arbor.length || !(arbor.length->value.meters() > 0)) return CannotBeTold("measure its length");
  if (!host.on.empty()) return CannotBeTold("weigh what its bore takes");
  const Inner inner = BlankUnder(rod, arbor.start);
  if (!inner.known()) return CannotBeTold(inner.measure);
  const Stretch over{std::max(0.0, inner.extent.from), std::min(arbor.length->value.meters(), inner.extent.to)};
  if (!(over.from < over.to)) return CannotBeTold("the blank does not reach into it");
  Bond bond;
  bond.gap = BondGap{arbor.bore, inner.outer, over.from, over.to, {}};
  bond.origin_m = OriginOf(arbor.start);
  return bond;
}

Bond BondOfTipTop(const Rod& rod) {
  const TipTop& tip = *rod.tip_top;
  if (!tip.tube_bore || !tip.tube_length || !(tip.tube_length->value.meters() > 0)) {
    return CannotBeTold("measure bore and length of the tip-top's tube");
  }
  if (rod.blank.outer.empty() || !rod.blank.length_m) return CannotBeTold("measure the blank at its tip");
  const double end = rod.blank.length_m->value(), length = std::min(tip.tube_length->value.meters(), end);
  Bond bond;
  const Profile tube({{0, tip.tube_bore->value.meters()}});
  bond.gap = BondGap{tube, rod.blank.outer.Shifted(length - end), 0, length, {}};
  if (rod.blank_tip_m) bond.origin_m = rod.blank_tip_m->value() - length;
  return bond;
}

Bond BondOfJoint(const Rod& rod, const Joint& joint) {
  if (joint.kind != JointKind::kSpigot) return CannotBeTold("dry fit it, and weigh what adhesive goes in");
  if (!joint.spigot_length || !joint.spigot_standing_out || joint.spigot_outer.empty()) {
    return CannotBeTold("measure the spigot: its length, how much of it stands out, and its diameters");
  }
  const double length = joint.spigot_length->value.meters(), out = joint.spigot_standing_out->value.meters();
  const Section* section = rod.FindSection(joint.spigot_fixed_in);
  if (!(out >= 0 && length > out) || section == nullptr || !section->from_m || !section->to_m) {
    return CannotBeTold("say which section the spigot is fixed in, and how long it is");
  }
  const bool in_upper = joint.spigot_fixed_in == joint.upper;
  const double mouth = in_upper ? section->from_m->value() : section->to_m->value();
  // Own zero of the spigot on the section as supplied.
  const double zero = in_upper ? mouth - out : mouth - (length - out);
  const Stretch inside = in_upper ? Stretch{out, length} : Stretch{0, length - out};
  const Profile bore = BoreOfSection(*section, {zero + inside.from, zero + inside.to});
  if (bore.empty()) return CannotBeTold(absl::StrCat("measure the wall at the mouth of ", section->id));
  Bond bond;
  bond.gap = BondGap{bore.Shifted(-zero), joint.spigot_outer, inside.from, inside.to, {}};
  if (rod.blank_butt_m && section->start_m) {
    bond.origin_m = (*rod.blank_butt_m + *section->start_m).value() - section->from_m->value() + zero;
  }
  return bond;
}

}  // namespace withy
