#include "contact_pair.h"

#include <algorithm>
#include <cmath>

namespace withy {
namespace {

double Snapped(double interference) {
  return std::abs(interference) <= Insertion::kDiameterTie ? 0 : interference;
}

double ValueOn(const Insertion::Piece& piece, double x) {
  return std::lerp(piece.at_lo, piece.at_hi, (x - piece.lo) / (piece.hi - piece.lo));
}

}  // namespace

ContactPair::ContactPair(const Insertion::Piece& shaft, const Insertion::Piece& bore, double clearance)
    : shaft_(shaft), bore_(bore), clearance_(clearance) {
  worst_ = Snapped(std::max(shaft.at_lo, shaft.at_hi) + clearance - std::min(bore.at_lo, bore.at_hi));
  if (worst_ < 0) return;
  lacking_ = -Snapped(shaft.at_lo + clearance - bore.at_hi);
  by_s_ = std::max(0.0, shaft.Slope());
  by_z_ = std::max(0.0, bore.Slope());
  back_first_ = MakeUp(true);
  ahead_first_ = MakeUp(false);
}

ContactPair::Point ContactPair::MakeUp(bool back_first) const {
  double back = 0, ahead = 0, lacking = lacking_;
  const auto take = [&lacking](double per_length, double room, double& length) {
    if (lacking <= 0 || per_length <= 0) return;
    length = std::min(room, lacking / per_length);
    lacking = Snapped(lacking - per_length * length);
  };
  const double room_back = bore_.hi - bore_.lo, room_ahead = shaft_.hi - shaft_.lo;
  if (back_first) take(by_z_, room_back, back);
  take(by_s_, room_ahead, ahead);
  if (!back_first) take(by_z_, room_back, back);
  return {shaft_.lo + ahead, bore_.hi - back};
}

double ContactPair::Reach() const {
  return std::max(back_first_.Reach(), ahead_first_.Reach());
}

double ContactPair::TouchingReach() const {
  const bool narrows = Snapped(bore_.at_hi - bore_.at_lo) > 0, thickens = Snapped(shaft_.at_hi - shaft_.at_lo) > 0;
  return (narrows ? bore_.lo : bore_.hi) - (thickens ? shaft_.hi : shaft_.lo);
}

double ContactPair::LackingBeyondSteeper() const {
  const double gain = by_z_ >= by_s_ ? bore_.at_hi - bore_.at_lo : shaft_.at_hi - shaft_.at_lo;
  return Snapped(lacking_ - gain);
}

double ContactPair::Cost(bool beyond_steeper) const {
  const double flatter = std::min(by_s_, by_z_);
  return 1 / (beyond_steeper && flatter > 0 ? flatter : std::max(by_s_, by_z_));
}

double ContactPair::TowardsThicker() const {
  return lacking_ <= 0 ? 0 : Cost(LackingBeyondSteeper() > 0);
}

double ContactPair::TowardsThinner() const {
  return lacking_ < 0 ? 0 : Cost(LackingBeyondSteeper() >= 0);
}

double ContactPair::SlopeAtStart() const {
  const bool on_front_edge = lacking_ < 0 || (lacking_ == 0 && shaft_.Slope() >= 0);
  return (on_front_edge ? 0 : shaft_.Slope() / by_z_) - 1;
}

std::optional<ContactPair::Edge> ContactPair::AtEnd() const {
  const double lacking = -Snapped(shaft_.at_hi + clearance_ - bore_.at_hi);
  if (lacking <= 0) {
    const bool on_front_edge = lacking < 0 || shaft_.Slope() <= 0;
    return Edge{bore_.hi - shaft_.hi, (on_front_edge ? 0 : shaft_.Slope() / by_z_) - 1};
  }
  if (Snapped(shaft_.at_hi + clearance_ - bore_.at_lo) < 0) return std::nullopt;
  const double back = std::min(bore_.hi - bore_.lo, lacking / by_z_);
  return Edge{bore_.hi - back - shaft_.hi, shaft_.Slope() / by_z_ - 1};
}

double ContactPair::InterferenceAt(double s, double z) const {
  return Snapped(ValueOn(shaft_, s) + clearance_ - ValueOn(bore_, z));
}

std::optional<double> ContactPair::FarthestAbove(double reach) const {
  if (!(Reach() > reach)) return std::nullopt;
  const double last = std::min(shaft_.hi, bore_.hi - reach);
  const double bend = std::clamp(bore_.lo - reach, shaft_.lo, last);
  // At each s the worst z of those with z - s >= reach; linear in s on either side of the bend.
  const auto worst_at = [&](double s) {
    const double z = bore_.at_hi < bore_.at_lo ? bore_.hi : std::clamp(s + reach, bore_.lo, bore_.hi);
    return InterferenceAt(s, z);
  };
  const double s[] = {last, bend, shaft_.lo};
  const double worst[] = {worst_at(s[0]), worst_at(s[1]), worst_at(s[2])};
  if (std::max({worst[0], worst[1], worst[2]}) <= 0) return std::nullopt;
  if (worst[0] >= 0) return s[0];
  const int i = worst[1] > 0 ? 0 : 1;
  if (i == 1 && worst[1] == 0) return s[1];
  return std::lerp(s[i], s[i + 1], worst[i] / (worst[i] - worst[i + 1]));
}

}  // namespace withy
