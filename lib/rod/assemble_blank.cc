// The assembled blank: sections in order, each seated in or over the one before it.
#include <algorithm>
#include <unordered_map>
#include <utility>

#include "absl/strings/str_cat.h"
#include "codes.h"
#include "read_quantity.h"
#include "read_taper.h"
#include "resolver.h"

namespace withy {
namespace {

JointKind JointKindOf(const std::string& word) {
  if (word == "tip_over_butt") return JointKind::kTipOverButt;
  if (word == "put_in") return JointKind::kPutIn;
  if (word == "spigot") return JointKind::kSpigot;
  if (word == "sleeve") return JointKind::kSleeve;
  if (word == "metal") return JointKind::kMetal;
  return JointKind::kOther;
}

Joint ReadJoint(const v1::Joint& from, int i) {
  Joint joint;
  joint.id = from.id();
  joint.at = FieldPath().Field("blank").Field("joints").Item(from.id(), i);
  joint.kind = JointKindOf(from.kind());
  joint.lower = from.lower();
  joint.upper = from.upper();
  joint.overlap = ReadLength(from.overlap(), joint.at, "overlap");
  joint.gap = ReadLength(from.gap(), joint.at, "gap");
  joint.mass = ReadMass(from.mass(), joint.at, "mass");
  const FieldPath spigot = joint.at.Field("spigot");
  joint.spigot_length = ReadLength(from.spigot().length(), spigot, "length");
  joint.spigot_standing_out = ReadLength(from.spigot().standing_out(), spigot, "standing_out");
  joint.spigot_mass = ReadMass(from.spigot().mass(), spigot, "mass");
  joint.spigot_fixed_in = from.spigot().fixed_in();
  joint.spigot_taper = ReadTaper(from.spigot().taper(), spigot.Field("taper"));
  joint.spigot_outer = OuterProfile(joint.spigot_taper);
  joint.spigot_wall = WallProfile(joint.spigot_taper);
  joint.spigot_wall_plus_minus_m = WallPlusMinus(joint.spigot_taper);
  joint.bond = from.bond();
  return joint;
}

// How far the upper section's butt end lies beyond the lower one's tip end; negative = overlap. Unset = not known.
std::optional<Uncertain> Offset(Resolver& r, const Joint& joint) {
  if (joint.kind == JointKind::kSpigot || joint.kind == JointKind::kSleeve) {
    if (!joint.gap) return Uncertain(0);  // closed, as the schema says
    if (joint.gap->value.meters() < 0) return std::nullopt;
    return r.Input(*joint.gap);
  }
  if (!joint.overlap || joint.overlap->value.meters() < 0) return std::nullopt;
  return -r.Input(*joint.overlap);
}

// The joint between two neighbours: by the names it gives, else by its place in the list.
Joint* JointBetween(Blank& blank, std::size_t pair, const Section& lower, const Section& upper) {
  for (Joint& joint : blank.joints) {
    if (!joint.lower.empty() && joint.lower == lower.id && joint.upper == upper.id) return &joint;
  }
  if (pair < blank.joints.size() && blank.joints[pair].lower.empty() && blank.joints[pair].upper.empty()) {
    return &blank.joints[pair];
  }
  return nullptr;
}

void ReportJoint(Resolver& r, const Section& lower, const Section& upper, const Joint* joint) {
  const FieldPath at = joint ? joint->at : upper.at;
  r.rod.findings.push_back(CannotTell(
      kJointMissing, at,
      absl::StrCat(joint ? "how far the joint seats is not known, between " : "no joint is described between ", lower.id,
                   " and ", upper.id),
      "Seat the two sections, measure the overlap, and write it down with the kind of the joint."));
}

// Which of two profiles is outside where the sections overlap.
bool LowerIsOutside(const Joint& joint) { return joint.kind == JointKind::kPutIn; }

void AppendProfile(const Section& section, double start, double from, double to, std::vector<Profile::Knot>& knots) {
  const double shift = start - section.from_m->value();
  const Profile part = section.outer.Slice(from - shift, to - shift);
  for (const Profile::Knot& knot : part.knots()) {
    // Rounding at a joint must not put a knot before the last one.
    const double x = knots.empty() ? knot.x + shift : std::max(knot.x + shift, knots.back().x);
    knots.push_back({x, knot.y});
  }
}

// Chains the sections; returns the joints used, or nothing where a length or a joint is not known.
std::optional<std::vector<const Joint*>> PlaceSections(Resolver& r) {
  Blank& blank = r.rod.blank;
  std::vector<const Joint*> used;
  std::optional<Uncertain> end = Uncertain(0);
  std::optional<double> supplied = 0;
  for (std::size_t i = 0; i < blank.assembled.size(); ++i) {
    Section& section = blank.sections[blank.assembled[i]];
    if (i > 0) {
      const Section& lower = blank.sections[blank.assembled[i - 1]];
      Joint* joint = JointBetween(blank, i - 1, lower, section);
      const auto offset = joint ? Offset(r, *joint) : std::nullopt;
      if (!offset) ReportJoint(r, lower, section, joint);
      if (end && offset) {
        joint->lower_end_m = end->value();
        joint->upper_start_m = (*end + *offset).value();
      }
      end = end && offset ? std::optional<Uncertain>(*end + *offset) : std::nullopt;
      supplied = supplied && offset ? std::optional<double>(*supplied + offset->value()) : std::nullopt;
      used.push_back(joint);
    }
    if (!section.from_m) end = std::nullopt;
    section.start_m = end;
    if (end) end = *end + (*section.to_m - *section.from_m);
    const auto length = Positive(section.length);
    supplied = supplied && length ? std::optional<double>(*supplied + length->meters()) : std::nullopt;
  }
  blank.supplied_m = supplied;
  if (!end || !(end->value() > 0)) return std::nullopt;
  blank.length_m = end;
  return used;
}

// Each section covers the stretch where it is the outside one.
void DrawOuter(Blank& blank, const std::vector<const Joint*>& joints) {
  std::vector<Profile::Knot> knots;
  double covered = 0;
  for (std::size_t i = 0; i < blank.assembled.size(); ++i) {
    const Section& section = blank.sections[blank.assembled[i]];
    if (section.outer.empty()) return;
    const double start = section.start_m->value();
    const double end = start + (*section.to_m - *section.from_m).value();
    const double from = std::max(covered, start);
    const bool hidden_tip = i < joints.size() && !LowerIsOutside(*joints[i]);
    const double to = hidden_tip ? std::min(end, std::max(from, *joints[i]->upper_start_m)) : end;
    if (to > from) AppendProfile(section, start, from, to, knots);
    covered = std::max(covered, to);
  }
  if (!knots.empty()) blank.outer = Profile(std::move(knots));
}

}  // namespace

void AssembleBlank(Resolver& r) {
  Blank& blank = r.rod.blank;
  for (int i = 0; i < r.design.blank().joints_size(); ++i) {
    blank.joints.push_back(ReadJoint(r.design.blank().joints(i), i));
  }
  if (const auto joints = PlaceSections(r); joints && !blank.assembled.empty()) DrawOuter(blank, *joints);
}

}  // namespace withy
