// Contacts and derivatives at one cut.
#include <algorithm>
#include <cmath>
#include <tuple>

#include "insertion_pairs.h"
#include "withy/numerics/insertion.h"

namespace withy {
namespace {

using Contact = Insertion::Contact;
using Touch = Insertion::Touch;

bool SamePlace(double a, double b) {
  return std::abs(a - b) <= Insertion::kPositionTie;
}

// A shoulder of the bore at z that faces the mouth and that a face of this diameter does not pass; the mouth itself is
// one.
bool IsStep(const Profile& bore, double z, double diameter) {
  if (SamePlace(z, bore.end())) return true;
  if (SamePlace(z, bore.begin())) return false;  // there is nothing behind it
  const auto& knots = bore.knots();
  const auto before = [](const Profile::Knot& knot, double x) { return knot.x < x; };
  const auto first = std::lower_bound(knots.begin(), knots.end(), z - Insertion::kPositionTie, before);
  auto last = first;
  while (last != knots.end() && last->x <= z + Insertion::kPositionTie) ++last;
  if (first == last) return false;
  return diameter - first->y > Insertion::kDiameterTie && diameter - (last - 1)->y <= Insertion::kDiameterTie;
}

// Sorted; taper contacts that meet become one.
std::vector<Contact> Merged(std::vector<Contact> contacts) {
  const auto order = [](const Contact& a, const Contact& b) {
    return std::tie(a.z_lo, a.z_hi, a.touch) < std::tie(b.z_lo, b.z_hi, b.touch);
  };
  std::sort(contacts.begin(), contacts.end(), order);
  std::vector<Contact> merged;
  Contact* taper = nullptr;
  merged.reserve(contacts.size());  // `taper` points into it
  for (const Contact& contact : contacts) {
    if (contact.touch == Touch::kTaper && taper != nullptr && contact.z_lo <= taper->z_hi + Insertion::kPositionTie) {
      taper->z_hi = std::max(taper->z_hi, contact.z_hi);
      continue;
    }
    merged.push_back(contact);
    if (contact.touch == Touch::kTaper) taper = &merged.back();
  }
  std::sort(merged.begin(), merged.end(), order);
  return merged;
}

}  // namespace

std::vector<Contact> Insertion::ContactsAt(double cut, double rest, double reach) const {
  std::vector<Contact> contacts;
  bool step = false;
  const double tied = reach - kPositionTie;
  if (rest - (cut + reach) <= kPositionTie) {
    ForEachPair(cut, 0, Count::kInterfering, tied, [&](const ContactPair& pair) {
      if (pair.Reach() < tied) return;
      const auto back = pair.BackFirst(), ahead = pair.AheadFirst();
      double z_lo = (back.Reach() < tied ? ahead : back).z, z_hi = (ahead.Reach() < tied ? back : ahead).z;
      if (SamePlace(z_lo, rest)) z_lo = rest;
      if (SamePlace(z_lo, z_hi)) z_hi = z_lo;
      if (z_lo == rest && z_hi == rest && IsStep(bore_, rest, pair.StartDiameter())) {
        step = true;
      } else {
        contacts.push_back({.touch = Touch::kTaper, .z_lo = z_lo, .z_hi = z_hi});
      }
    });
  }
  if (step) contacts.push_back({.touch = Touch::kStep, .z_lo = rest, .z_hi = rest});
  if (rest - stop_ <= kPositionTie) contacts.push_back({.touch = Touch::kStop, .z_lo = rest, .z_hi = rest});
  contacts = Merged(std::move(contacts));
  for (Contact& contact : contacts) {
    contact.s_lo = contact.z_lo - rest + cut;
    contact.s_hi = contact.z_hi - rest + cut;
  }
  return contacts;
}

// Of the branches that are equal at the cut the largest from there on: of the slopes the greatest.
double Insertion::SlopeAfter(double cut, double reach) const {
  const double tied = std::max(reach, stop_ - cut) - kPositionTie;
  double slope = stop_ - cut >= tied ? -1 : kNoReach;
  ForEachPair(cut, 0, Count::kInterfering, tied, [&](const ContactPair& pair) {
    if (pair.Reach() < tied) return;
    const auto back = pair.BackFirst(), ahead = pair.AheadFirst();
    const double farthest = std::max(back.Reach() < tied ? ahead.s : back.s, ahead.Reach() < tied ? back.s : ahead.s);
    slope = std::max(slope, farthest > cut + kPositionTie ? 0 : pair.SlopeAtStart());
  });
  return slope;
}

// Going back from the cut the largest is the one that falls most steeply. A shaft held ahead of the cut does not fall.
double Insertion::SlopeBefore(double cut, double reach) const {
  double top = std::max(reach, stop_ - cut);
  ForEachEdgeBelow(cut, [&](const ContactPair::Edge& edge) { top = std::max(top, edge.reach); });
  const double tied = top - kPositionTie;
  double slope = stop_ - cut >= tied ? -1 : 0;
  ForEachEdgeBelow(cut, [&](const ContactPair::Edge& edge) {
    if (edge.reach >= tied) slope = std::min(slope, edge.slope);
  });
  return slope;
}

Insertion::State Insertion::At(double cut) const {
  const double reach = ReachAt(cut);
  State state;
  state.rest = std::max(stop_, cut + reach);
  state.length = std::max(stop_ - cut, reach) + shaft_.end();
  state.depth = bore_.end() - state.rest;
  state.enters = state.depth > kPositionTie;
  state.contacts = ContactsAt(cut, state.rest, reach);
  state.slope_after = SlopeAfter(cut, reach);
  if (cut <= kPositionTie) return state;
  state.slope_before = SlopeBefore(cut, reach);
  const double fall = LengthBefore(cut) - state.length;
  state.jump = fall > kPositionTie ? fall : 0;
  return state;
}

Insertion::Sensitivity Insertion::SensitivityAt(double cut) const {
  Sensitivity sensitivity;
  const double held = std::max(ReachAt(cut, 0, Count::kTouching, stop_ - cut), stop_ - cut) - kPositionTie;
  ForEachPair(cut, 0, Count::kTouching, held, [&](const ContactPair& pair) {
    if (pair.Reach() >= held) sensitivity.thicker = std::max(sensitivity.thicker, pair.TowardsThicker());
  });
  const double tied = std::max(ReachAt(cut), stop_ - cut) - kPositionTie;
  if (stop_ - cut >= tied) return sensitivity;
  double thinner = std::numeric_limits<double>::infinity();
  ForEachPair(cut, 0, Count::kInterfering, tied, [&](const ContactPair& pair) {
    if (pair.Reach() >= tied) thinner = std::min(thinner, pair.TowardsThinner());
  });
  sensitivity.thinner = thinner;
  return sensitivity;
}

}  // namespace withy
