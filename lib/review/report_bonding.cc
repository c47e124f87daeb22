// Bonding in the report.
#include <string>
#include <vector>

#include "figures.h"
#include "report_parts.h"

namespace withy {
namespace {

constexpr double kCm2 = 1e4;
constexpr double kMinutes = 1 / 60.0;

void ReportJoint(const GluedJoint& joint, v1::GluedJoint& to) {
  to.set_what(joint.what);
  to.set_at(joint.at.ToString());
  to.set_adhesive(joint.adhesive);
  to.set_potting(joint.potting);
  to.set_done(joint.done);
  Put(joint.from_m, kMm, [&](double mm) { to.set_from_mm(mm); });
  Put(joint.to_m, kMm, [&](double mm) { to.set_to_mm(mm); });
  Put(joint.area_m2, kCm2, [&](double cm2) { to.set_area_cm2(cm2); });
  Put(joint.gap_m, kMm, [&](double mm) { to.set_gap_mm(mm); });
  Put(joint.volume_m3, kMl, [&](double ml) { to.set_volume_ml(ml); });
  Put(joint.arbors_m3, kMl, [&](double ml) { to.set_arbors_ml(ml); });
  Put(joint.fillets_m3, kMl, [&](double ml) { to.set_fillets_ml(ml); });
  Put(joint.proposed_m3, kMl, [&](double ml) { to.set_proposed_arbors_ml(ml); });
  Put(joint.mass_kg, kGrams, [&](double g) { to.set_mass_g(g); });
  Put(std::optional<double>(joint.working_s), kMinutes, [&](double minutes) { to.set_working_minutes(minutes); });
  Put(joint.pot_life_s, kMinutes, [&](double minutes) { to.set_pot_life_minutes(minutes); });
}

void ReportBatch(const BondingAnswers& answers, const MixedBatch& batch, v1::MixedBatch& to) {
  to.set_adhesive(batch.adhesive);
  for (const int i : batch.joints) {
    const GluedJoint& joint = answers.joints[i];
    to.add_joints(joint.what);
    to.add_joint_at(joint.at.ToString());
    to.set_potting(joint.potting);  // a session of its own: all of them or none
  }
  Put(std::optional<double>(batch.need_m3), kMl, [&](double ml) { to.set_need_ml(ml); });
  Put(std::optional<double>(batch.mixed_m3), kMl, [&](double ml) { to.set_mix_ml(ml); });
  to.set_smallest_decides(batch.set_by_minimum);
  Put(batch.resin_m3, kMl, [&](double ml) { to.set_resin_ml(ml); });
  Put(batch.hardener_m3, kMl, [&](double ml) { to.set_hardener_ml(ml); });
  Put(batch.resin_kg, kGrams, [&](double g) { to.set_resin_g(g); });
  Put(batch.hardener_kg, kGrams, [&](double g) { to.set_hardener_g(g); });
  Put(std::optional<double>(batch.working_s), kMinutes, [&](double minutes) { to.set_working_minutes(minutes); });
  Put(batch.pot_life_s, kMinutes, [&](double minutes) { to.set_pot_life_minutes(minutes); });
  Put(std::optional<double>(batch.at_c), kAsIs, [&](double celsius) { to.set_at_celsius(celsius); });
  Put(batch.set_s, kMinutes, [&](double minutes) { to.set_set_minutes(minutes); });
}

void ReportTotals(const BondingAnswers& answers, v1::BondingReport& report) {
  for (const AdhesiveUse& use : answers.totals) {
    v1::AdhesiveTotal& to = *report.add_totals();
    to.set_adhesive(use.adhesive);
    Put(std::optional<double>(use.mixed_m3), kMl, [&](double ml) { to.set_mix_ml(ml); });
    Put(use.mixed_kg, kGrams, [&](double g) { to.set_mix_g(g); });
  }
}

}  // namespace

void ReportBonding(const BondingAnswers& answers, v1::BondingReport& report) {
  for (const GluedJoint& joint : answers.joints) ReportJoint(joint, *report.add_joints());
  for (const MixedBatch& batch : answers.batches) ReportBatch(answers, batch, *report.add_batches());
  ReportTotals(answers, report);
}

}  // namespace withy
