// Each part of the handle as it is; its place comes later (resolve_places.cc).
#include <algorithm>
#include <utility>

#include "read_quantity.h"
#include "resolver.h"

namespace withy {
namespace {

End EndOf(v1::End::Value end) {
  switch (end) {
    case v1::End::BUTT: return End::kButt;
    case v1::End::TIP: return End::kTip;
    default: return End::kUnknown;
  }
}

// Empty where no row is complete, places fall back, or a row holds what cannot be.
Profile ReadRings(const google::protobuf::RepeatedPtrField<v1::Ring>& rings) {
  std::vector<Profile::Knot> knots;
  for (const v1::Ring& ring : rings) {
    const auto at = LengthOf(ring.at());
    const auto diameter = LengthOf(ring.diameter());
    if (!at || !diameter) continue;
    if (at->meters() < 0 || diameter->meters() <= 0) return {};
    if (!knots.empty() && at->meters() < knots.back().x) return {};
    knots.push_back({at->meters(), diameter->meters()});
  }
  return knots.empty() ? Profile() : Profile(std::move(knots));
}

std::vector<Plug> ReadPlugs(const v1::Part& from, const FieldPath& at) {
  std::vector<Plug> plugs;
  for (int i = 0; i < from.plugs_size(); ++i) {
    const auto plug = LengthOf(from.plugs(i).plug());
    const auto depth = LengthOf(from.plugs(i).depth());
    if (!plug || !depth) continue;
    const End entered = from.plugs(i).entered_at() == v1::End::BUTT ? End::kButt : End::kTip;
    plugs.push_back({*plug, *depth, entered, at.Field("plugs").Item("", i)});
  }
  return plugs;
}

// A plug stops where the bore is as wide as the plug.
Profile BoreFromPlugs(const Part& part) {
  const auto length = Positive(part.length);
  std::vector<Profile::Knot> knots;
  for (const Plug& plug : part.plugs) {
    if (plug.entered_at == End::kTip && !length) return {};
    const double x = plug.entered_at == End::kTip ? length->meters() - plug.depth.meters() : plug.depth.meters();
    if (x < 0 || plug.plug.meters() <= 0) return {};
    knots.push_back({x, plug.plug.meters()});
  }
  std::stable_sort(knots.begin(), knots.end(), [](const auto& a, const auto& b) { return a.x < b.x; });
  return knots.empty() ? Profile() : Profile(std::move(knots));
}

BoreKnown BoreKnownOf(const v1::Part& from, const Part& part) {
  const std::string& word = from.bore_known();
  if (word == "unknown") return BoreKnown::kUnknown;
  if (word == "mouth") return BoreKnown::kMouth;
  if (word == "plugs") return BoreKnown::kPlugs;
  if (!part.bore.empty()) return BoreKnown::kProfile;
  return part.plugs.empty() ? BoreKnown::kUnknown : BoreKnown::kPlugs;
}

Arbor ReadArbor(const v1::Arbor& from, FieldPath at) {
  Arbor arbor;
  arbor.id = from.id();
  arbor.kind = from.kind();
  arbor.own_at = ReadLength(from.at(), at, "at");
  arbor.length = ReadLength(from.length(), at, "length");
  arbor.outer = ReadLength(from.outer(), at, "outer");
  arbor.tape_thickness = ReadLength(from.tape_thickness(), at, "tape_thickness");
  arbor.density_kg_m3 = ReadDensity(from.density(), at, "density");
  arbor.mass = ReadMass(from.mass(), at, "mass");
  arbor.bore = ReadRings(from.bore());
  arbor.bond = from.bond();
  arbor.at = std::move(at);
  return arbor;
}

void ReadWeights(const v1::Part& from, Part& part) {
  if (from.has_cavity()) {
    const FieldPath at = part.at.Field("cavity");
    part.cavity = Cavity{at, ReadLength(from.cavity().at(), at, "at"), ReadLength(from.cavity().length(), at, "length"),
                         ReadLength(from.cavity().diameter(), at, "diameter")};
  }
  if (!from.has_weights()) return;
  Weights weights;
  weights.at = part.at.Field("weights");
  if (from.weights().has_count()) weights.count = from.weights().count();
  weights.unit_mass = ReadMass(from.weights().unit_mass(), weights.at, "unit_mass");
  weights.unit_length = ReadLength(from.weights().unit_length(), weights.at, "unit_length");
  weights.unit_diameter = ReadLength(from.weights().unit_diameter(), weights.at, "unit_diameter");
  weights.material = from.weights().material();
  weights.bond = from.weights().bond();
  weights.potted_first = from.weights().potted() == "first";
  weights.cover = ReadLength(from.weights().cover(), weights.at, "cover");
  part.weights = std::move(weights);
}

std::optional<Length> RingsTotal(const v1::Part& from) {
  if (from.rings().empty()) return std::nullopt;
  Length total;
  for (const v1::GripRing& ring : from.rings()) {
    const auto thickness = LengthOf(ring.thickness());
    if (!thickness) return std::nullopt;
    total += *thickness;
  }
  return total;
}

void ReadSeat(const v1::Part& from, Part& part) {
  if (!from.has_seat()) return;
  const FieldPath at = part.at.Field("seat");
  part.has_seat = true;
  part.foot_center = ReadLength(from.seat().foot_center(), at, "foot_center");
  part.screw_thread_length = ReadLength(from.seat().thread_length(), at, "thread_length");
  part.neck = ReadLength(from.seat().neck(), at, "neck");
  part.fixed_hood = EndOf(from.seat().fixed_hood());
}

void ReadBore(const v1::Part& from, Part& part) {
  part.bore = ReadRings(from.bore());
  part.plugs = ReadPlugs(from, part.at);
  part.bore_known = BoreKnownOf(from, part);
  if (part.bore_known == BoreKnown::kPlugs && !part.plugs.empty()) part.bore = BoreFromPlugs(part);
}

void ReadFitting(const v1::Fitting& from, Part& part) {
  const std::string& kind = from.kind();
  part.fitting = kind == "stretched" ? FitKind::kStretched : kind == "shrunk" ? FitKind::kShrunk : FitKind::kRigid;
  if (from.has_limit()) part.stretch_limit = from.limit();
  part.reamed = from.reamed();
  const FieldPath at = part.at.Field("fitting");
  part.glue_clearance = ReadLength(from.glue_clearance(), at, "glue_clearance");
  part.stop = ReadLength(from.stop(), at, "stop");
}

Part ReadPart(Resolver& r, const v1::Part& from, int i) {
  Part part;
  part.id = from.id();
  part.at = r.rod.handle.at.Field("parts").Item(from.id(), i);
  part.kind = from.kind();
  part.material = from.material();
  part.length = ReadLength(from.length(), part.at, "length");
  part.rings_total = RingsTotal(from);
  if (!part.length && part.rings_total && part.rings_total->meters() > 0) {
    part.length = Known<Length>{*part.rings_total, std::nullopt, Source::kComputed, part.at.Field("rings")};
  }
  part.outer = ReadRings(from.outer());
  ReadBore(from, part);
  ReadFitting(from.fitting(), part);
  part.mass = ReadMass(from.mass(), part.at, "mass");
  part.density_kg_m3 = ReadDensity(from.density(), part.at, "density");
  part.balance_from_own_butt = ReadLength(from.balance_from_own_butt(), part.at, "balance_from_own_butt");
  part.slides_on_from = EndOf(from.slides_on_from());
  part.clamps_on = from.clamps_on();
  part.on = from.on();
  part.bond = from.bond();
  part.held_by = from.held_by();
  part.loose = from.loose();
  part.travel = ReadLength(from.travel(), part.at, "travel");
  part.angle_deg = ReadAngle(from.angle(), part.at, "angle");
  ReadSeat(from, part);
  const bool few = WithinLimit(r, part.at.Field("arbors"), from.arbors_size(), kMostParts, "arbors");
  for (int a = 0; few && a < from.arbors_size(); ++a) {
    part.arbors.push_back(ReadArbor(from.arbors(a), part.at.Field("arbors").Item(from.arbors(a).id(), a)));
  }
  ReadWeights(from, part);
  part.place_written = from.has_place();
  part.gap_written = from.place().has_gap();
  return part;
}

}  // namespace

void ResolveHandle(Resolver& r) {
  r.rod.handle.at = FieldPath().Field("handle");
  const int parts = r.design.handle().parts_size();
  if (!WithinLimit(r, r.rod.handle.at.Field("parts"), parts, kMostParts, "handle parts")) {
    Part all;  // of which nothing is known, so that no sum is made without them; no rule asks for more of it
    all.at = r.rod.handle.at.Field("parts");
    all.on = "all parts";
    all.held_by = "all parts";
    r.rod.handle.parts.push_back(std::move(all));
    return;
  }
  for (int i = 0; i < parts; ++i) r.rod.handle.parts.push_back(ReadPart(r, r.design.handle().parts(i), i));
}

}  // namespace withy
