#include "joints.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <string>
#include <utility>

#include "absl/strings/str_cat.h"
#include "adhesive.h"
#include "bond.h"
#include "withy/rod/weights_cover.h"

namespace withy {
namespace {

// Of each diameter where none is written, and of each volume for what is wiped away or not filled (common practice, no
// source).
constexpr double kDiameterPlusMinus_m = 0.00005;
constexpr double kVolumePlusMinus = 0.1;

class Collector {
 public:
  Collector(const Rod& rod, const FitAnswers& fit, Inputs& inputs, BondingAnswers& answers)
      : rod_(rod), fit_(fit), inputs_(inputs), answers_(answers) {
    for (const Section& section : rod.blank.sections) {
      blank_plus_minus_m_ = std::max(blank_plus_minus_m_, section.taper.diameter_plus_minus_m.value_or(0));
    }
    if (!(blank_plus_minus_m_ > 0)) blank_plus_minus_m_ = kDiameterPlusMinus_m;
    for (std::size_t i = 0; i < rod.adhesives.size(); ++i) adhesives_.emplace(rod.adhesives[i].id, static_cast<int>(i));
  }

  void AddAll() {
    const std::vector<std::size_t> parts = PartsButtFirst();
    for (const Joint& joint : rod_.blank.joints) AddSectionJoint(joint);
    for (const std::size_t i : parts) AddArbors(rod_.handle.parts[i]);
    for (const std::size_t i : parts) AddWeights(rod_.handle.parts[i], true);
    for (const std::size_t i : parts) AddPart(rod_.handle.parts[i], fit_.parts[i]);
    AddTipTop();
    for (const std::size_t i : parts) AddWeights(rod_.handle.parts[i], false);
    TellAssumptions();
  }

 private:
  std::vector<std::size_t> PartsButtFirst() const {
    std::vector<std::size_t> parts;
    for (std::size_t i = 0; i < std::min(rod_.handle.parts.size(), fit_.parts.size()); ++i) parts.push_back(i);
    const auto start = [this](std::size_t i) { return rod_.handle.parts[i].start.from_butt_m; };
    const bool all_known = std::all_of(parts.begin(), parts.end(), [&](std::size_t i) { return start(i).has_value(); });
    if (!all_known) return parts;
    std::stable_sort(parts.begin(), parts.end(),
                     [&](std::size_t a, std::size_t b) { return start(a)->value() < start(b)->value(); });
    return parts;
  }

  GluedJoint Begin(Glued kind, int session, const std::string& what, const FieldPath& at, const std::string& bond) {
    GluedJoint joint;
    joint.kind = kind;
    joint.session = session;
    joint.what = what;
    joint.at = at;
    joint.adhesive = bond;
    const auto found = adhesives_.find(bond);
    if (found != adhesives_.end()) {
      joint.adhesive_index = found->second;
      joint.pot_life_s = PotLifeOf(rod_.adhesives[found->second], rod_.shop);
    }
    joint.potting = kind == Glued::kWeights;
    joint.working_s = GluingTimeOf(rod_.shop);
    joint.done = rod_.FindClosed(joint.potting ? Closed::Kind::kPotted : Closed::Kind::kGlued, what) != nullptr;
    return joint;
  }

  void AddSectionJoint(const Joint& joint) {
    if (joint.bond.empty()) return;
    Finish(Begin(Glued::kSectionJoint, 0, joint.id, joint.at, joint.bond), BondOfJoint(rod_, joint));
  }

  void AddArbors(const Part& part) {
    for (const Arbor& arbor : part.arbors) {
      const std::string& bond = arbor.bond.empty() ? part.bond : arbor.bond;
      if (arbor.bore.empty() || bond.empty()) continue;
      GluedJoint joint = Begin(Glued::kArbor, 0, arbor.id, arbor.at, bond);
      // what is glued over it holds it
      joint.done = joint.done || rod_.FindClosed(Closed::Kind::kGlued, part.id) != nullptr;
      Finish(std::move(joint), BondOfArbor(rod_, part, arbor));
    }
  }

  void AddPart(const Part& part, const PartFit& fit) {
    if (part.bond.empty() || part.loose) return;
    const Bond bond = BondOfPart(rod_, part, fit);
    film_ = film_ || (bond.gap && part.fitting != FitKind::kRigid);
    GluedJoint joint = Begin(Glued::kPart, 2, part.id, part.at, part.bond);
    if (bond.gap) joint.proposed_m3 = ProposedIn(*bond.gap, part, fit);
    Finish(std::move(joint), bond);
  }

  // What arbors that the design does not have would take of the room; unset where none is proposed.
  static std::optional<double> ProposedIn(BondGap gap, const Part& part, const PartFit& fit) {
    if (fit.proposed.empty() || !part.start.from_butt_m) return std::nullopt;
    gap.rings.clear();
    for (const ArborFit& arbor : fit.proposed) {
      if (!arbor.start_m || !arbor.length_m || !arbor.outer_m) continue;
      gap.rings.push_back({*arbor.start_m - part.start.from_butt_m->value(), *arbor.length_m, *arbor.outer_m});
    }
    return VolumeOf(gap).rings_m3;
  }

  void AddTipTop() {
    if (!rod_.tip_top || rod_.tip_top->bond.empty()) return;
    Finish(Begin(Glued::kTipTop, 2, rod_.tip_top->id, rod_.tip_top->at, rod_.tip_top->bond), BondOfTipTop(rod_));
  }

  void AddWeights(const Part& part, bool first) {
    if (!part.weights || part.weights->bond.empty() || part.weights->potted_first != first) return;
    const Closed* potted = rod_.FindClosed(Closed::Kind::kPotted, part.id);
    std::optional<double> count;
    if (part.weights->count) count = *part.weights->count;
    if (potted != nullptr) count = potted->amount;
    if (count && !(*count > 0)) return;
    GluedJoint joint = Begin(Glued::kWeights, first ? 1 : 3, part.id, part.weights->at, part.weights->bond);
    if (!count) {
      joint.measure = "decide how many counterweights go in";
    } else {
      FillPotting(part, PottingOf(part, *count), joint);
    }
    Push(std::move(joint));
  }

  void FillPotting(const Part& part, const Potting& potting, GluedJoint& joint) {
    joint.volume_m3 = potting.volume_m3;
    joint.measure = potting.measure;
    if (!potting.volume_m3) return;
    joint.gross_m3 = potting.volume_m3;
    if (!TellsCover(*part.weights)) {
      answers_.assumptions.push_back({part.weights->at.Field("cover"),
                                      "3 mm of potting over the foremost counterweight", "common practice, no source"});
    }
    FillMass(*potting.volume_m3 * kVolumePlusMinus, joint);
    if (!part.start.from_butt_m) return;
    const double start = part.start.from_butt_m->value();
    joint.from_m = start + part.cavity->own_at->value.meters();
    joint.to_m = *joint.from_m + potting.length_m;
    joint.center_m = start + *potting.center_m;
  }

  void Finish(GluedJoint joint, const Bond& bond) {
    joint.measure = bond.measure;
    if (bond.gap) FillVolume(bond, joint);
    Push(std::move(joint));
  }

  void FillVolume(const Bond& bond, GluedJoint& joint) {
    const BondGap& gap = *bond.gap;
    const BondVolume volume = VolumeOf(gap);
    joint.area_m2 = SurfaceOf(gap.inner, gap.from_m, gap.to_m);
    joint.gap_m = volume.gap_m;
    joint.gross_m3 = volume.gross_m3;
    joint.arbors_m3 = volume.rings_m3;
    for (const RingInBond& ring : volume.rings) {
      joint.arbor_gap_m = std::min(joint.arbor_gap_m.value_or(ring.clearance_m), ring.clearance_m);
    }
    if (bond.origin_m) {
      joint.from_m = *bond.origin_m + gap.from_m;
      joint.to_m = *bond.origin_m + gap.to_m;
    }
    if (!volume.net_m3 || !std::isfinite(*volume.net_m3)) {
      joint.measure = volume.gross_m3 ? "build the arbors so that they fit between bore and blank"
                                      : "bore and blank touch by these figures: dry fit, or measure both again";
      return;
    }
    double fillets = 0;
    for (const Fillet& fillet : bond.fillets) fillets += FilletOutside(fillet);
    fillet_ = fillet_ || !bond.fillets.empty();
    joint.fillets_m3 = fillets;
    joint.volume_m3 = *volume.net_m3 + fillets;
    // First order: a diameter that is off by d moves its wall by d / 2.
    const double geometry = *joint.area_m2 / 2 * std::hypot(blank_plus_minus_m_, kDiameterPlusMinus_m);
    FillMass(std::hypot(geometry, *joint.volume_m3 * kVolumePlusMinus), joint);
    if (bond.origin_m && volume.center_m) joint.center_m = *bond.origin_m + *volume.center_m;
  }

  void FillMass(double volume_plus_minus_m3, GluedJoint& joint) {
    const Uncertain* density = DensityOf(joint.adhesive_index);
    if (density == nullptr) {
      joint.measure = absl::StrCat("enter the density of ", joint.adhesive);
      return;
    }
    const std::string input = joint.at.Field("bond").ToString() + " (how much of it stays)";
    joint.mass_kg = inputs_.Add(*joint.volume_m3, volume_plus_minus_m3, input) * *density;
  }

  // Null where it is not known.
  const Uncertain* DensityOf(int index) {
    if (index < 0) return nullptr;
    const auto known = densities_.find(index);
    if (known != densities_.end()) return &known->second;
    const Adhesive& adhesive = rod_.adhesives[index];
    const FieldPath at = adhesive.at.Field("mix").Field("density");
    const Maybe<double>& density = adhesive.density_kg_m3;
    if (density && density->value > 0) {
      return &densities_.emplace(index, inputs_.Add(density->value, density->plus_minus.value_or(0), at.ToString()))
                  .first->second;
    }
    if (!IsEpoxy(adhesive)) {
      if (unknown_densities_.insert(index).second) {
        answers_.unknowns.push_back({"bonding.joints.mass_g", absl::StrCat("enter the density of ", adhesive.id)});
      }
      return nullptr;
    }
    answers_.assumptions.push_back(
        {at, "1150 kg/m3", "cured epoxy, 1100 to 1200: matrix table of a composites course"});
    return &densities_.emplace(index, inputs_.Add(kEpoxy_kg_m3, kEpoxyPlusMinus_kg_m3, at.ToString())).first->second;
  }

  void Push(GluedJoint joint) {
    if (!joint.volume_m3 && !joint.done) {
      answers_.unknowns.push_back({absl::StrCat("bonding.joints[", joint.what, "].volume_ml"), joint.measure});
    }
    answers_.joints.push_back(std::move(joint));
  }

  void TellAssumptions() {
    const FieldPath parts = FieldPath().Field("handle").Field("parts");
    if (fillet_) {
      answers_.assumptions.push_back({parts, "a fillet of 1 mm by 1 mm at each glued end that shows",
                                      "squeeze-out is wiped to a small one: common practice, no source"});
    }
    if (film_) {
      answers_.assumptions.push_back({parts, "a film of 0.05 mm of adhesive under parts that are pulled or shrunk on",
                                      "0.05 to 0.13 mm hold best: a supplier's advice"});
    }
  }

  const Rod& rod_;
  const FitAnswers& fit_;
  Inputs& inputs_;
  BondingAnswers& answers_;
  double blank_plus_minus_m_ = 0;
  std::map<std::string, int> adhesives_;  // the first of an id
  std::map<int, Uncertain> densities_;
  std::set<int> unknown_densities_;
  bool fillet_ = false, film_ = false;
};

}  // namespace

void CollectJoints(const Rod& rod, const FitAnswers& fit, Inputs& inputs, BondingAnswers& answers) {
  Collector(rod, fit, inputs, answers).AddAll();
}

}  // namespace withy
