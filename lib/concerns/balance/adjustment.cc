#include "adjustment.h"

namespace withy {

Adjustment::Adjustment(const std::vector<Constraint>& constraints) {
  for (const Constraint& constraint : constraints) {
    const double variance = Covariance(constraint.reckoned, constraint.reckoned);
    if (!(variance > 0)) continue;
    if (used_.empty()) {
      used_.push_back(constraint);
      var0_ = variance;
      continue;
    }
    const double covariance = Covariance(used_[0].reckoned, constraint.reckoned);
    if (!(var0_ * variance - covariance * covariance > 1e-9 * var0_ * variance)) continue;
    used_.push_back(constraint);
    var1_ = variance;
    cov_ = covariance;
    return;
  }
}

Uncertain Adjustment::Adjusted(const Uncertain& value) const {
  if (used_.empty()) return value;
  const double with0 = Covariance(value, used_[0].reckoned);
  if (used_.size() == 1) return value + used_[0].misfit * Uncertain(with0 / var0_);
  const double with1 = Covariance(value, used_[1].reckoned);
  const double determinant = var0_ * var1_ - cov_ * cov_;
  return value + used_[0].misfit * Uncertain((with0 * var1_ - with1 * cov_) / determinant) +
         used_[1].misfit * Uncertain((with1 * var0_ - with0 * cov_) / determinant);
}

void GiveWay(const Adjustment& adjustment, Counted& counted) {
  if (!(counted.shown.mass_kg->plus_minus() > 0)) return;
  const Uncertain mass = adjustment.Adjusted(*counted.shown.mass_kg);
  if (!(mass.value() > 0)) return;  // the finding about the sum speaks of it
  if (counted.shown.mass_kg->value() > 0) counted.own_inertia_kg_m2 *= mass.value() / counted.shown.mass_kg->value();
  counted.shown.mass_kg = mass;
  if (!counted.moment_kg_m) return;
  counted.moment_kg_m = adjustment.Adjusted(*counted.moment_kg_m);
  counted.shown.center_m = *counted.moment_kg_m / mass;
}

}  // namespace withy
