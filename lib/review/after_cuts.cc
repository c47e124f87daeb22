#include "after_cuts.h"

#include <algorithm>
#include <map>
#include <optional>
#include <string>

#include "bench_cuts.h"
#include "figures.h"
#include "withy/rod/resolve.h"

namespace withy {
namespace {

// `section` with `total_mm` off its butt, whatever was planned before.
Document WithButtCut(const Document& document, const std::string& section, double total_mm) {
  Document after = document;
  auto& cuts = *after.design.mutable_blank()->mutable_cuts();
  cuts.erase(std::remove_if(
                 cuts.begin(), cuts.end(),
                 [&](const v1::PlannedCut& cut) { return cut.section() == section && cut.at_end() != v1::End::TIP; }),
             cuts.end());
  v1::PlannedCut& cut = *cuts.Add();
  cut.set_section(section);
  cut.set_at_end(v1::End::BUTT);
  cut.mutable_amount()->set_mm(total_mm);
  return after;
}

// By the field path of what is glued, in ml.
std::map<std::string, double> VolumesOf(const Rod& rod) {
  Inputs inputs = rod.inputs;
  const SectionsAnswers sections = ComputeSections(rod, inputs);
  const BondingAnswers bonding = ComputeBonding(rod, sections, ComputeFit(rod, sections), inputs);
  std::map<std::string, double> volumes;
  for (const GluedJoint& joint : bonding.joints) {
    if (joint.volume_m3) volumes.emplace(joint.at.ToString(), *joint.volume_m3 * kMl);
  }
  return volumes;
}

// Unset where a joint of it cannot be told.
std::optional<double> MixOf(const v1::MixedBatch& batch, const std::map<std::string, double>& volumes,
                            const Shop& shop) {
  double need_ml = 0;
  for (const std::string& at : batch.joint_at()) {
    const auto volume = volumes.find(at);
    if (volume == volumes.end()) return std::nullopt;
    need_ml += volume->second;
  }
  return MixFor(need_ml / kMl, shop) * kMl;
}

}  // namespace

void ReportAfterCuts(const Document& document, const Rod& rod, v1::Report& report) {
  const v1::CutPlan& plan = report.fit().cut_plan();
  if (!CutsAreToCome(plan) || report.bonding().batches_size() == 0) return;
  const Section& butt = rod.blank.sections[rod.blank.assembled.front()];
  const double total_mm = plan.stages().rbegin()->total_mm();
  const std::map<std::string, double> volumes = VolumesOf(Resolve(WithButtCut(document, butt.id, total_mm)));
  for (v1::GluedJoint& joint : *report.mutable_bonding()->mutable_joints()) {
    const auto volume = volumes.find(joint.at());
    if (volume != volumes.end() && !joint.done()) joint.set_volume_after_cuts_ml(volume->second);
  }
  for (v1::MixedBatch& batch : *report.mutable_bonding()->mutable_batches()) {
    if (const auto mix_ml = MixOf(batch, volumes, rod.shop)) batch.set_mix_after_cuts_ml(*mix_ml);
  }
}

}  // namespace withy
