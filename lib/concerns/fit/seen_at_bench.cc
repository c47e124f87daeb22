// What the bench shows of the law: where blank and handle touch, and what the dry fits said.
#include <cmath>

#include "plan_basis.h"

namespace withy::fit {
namespace {

BlankContact::Kind KindOf(Insertion::Touch touch) {
  switch (touch) {
    case Insertion::Touch::kStop:
      return BlankContact::Kind::kStop;
    case Insertion::Touch::kStep:
      return BlankContact::Kind::kStep;
    case Insertion::Touch::kTaper:
      break;
  }
  return BlankContact::Kind::kTaper;
}

// Whether the edge of the butt face is what touches.
bool EdgeTouches(const Insertion& insertion, double cut_m) {
  for (const Insertion::Contact& contact : insertion.At(cut_m).contacts) {
    if (contact.touch == Insertion::Touch::kTaper && contact.s_lo <= cut_m + 1e-9) return true;
  }
  return false;
}

std::vector<BlankContact> ContactsAt(const PlanBasis& basis, double cut_m) {
  const Insertion* insertion = basis.law.insertion();
  std::vector<BlankContact> contacts;
  if (insertion == nullptr) return contacts;
  for (const Insertion::Contact& touch : insertion->At(cut_m).contacts) {
    BlankContact contact;
    contact.kind = KindOf(touch.touch);
    contact.on_blank_m = touch.s_lo;
    if (basis.host_start_m) contact.from_m = *basis.host_start_m + touch.z_lo;
    if (basis.host_start_m && touch.z_hi > touch.z_lo) contact.to_m = *basis.host_start_m + touch.z_hi;
    contact.bore_m = insertion->bore().At(touch.z_lo);
    contacts.push_back(contact);
  }
  return contacts;
}

// By the law alone.
Resting RestingAt(const PlanBasis& basis, double cut_m) {
  Resting resting;
  if (!basis.Told(cut_m)) return resting;
  resting.shorter_per = basis.law.ShorterPer(cut_m);
  if (basis.host_start_m) resting.butt_m = *basis.host_start_m + basis.law.RestAt(cut_m);
  if (basis.host != nullptr && basis.host->length) {
    resting.depth_m = basis.host->length->value.meters() - basis.law.RestAt(cut_m);
  }
  resting.contacts = ContactsAt(basis, cut_m);
  return resting;
}

// To what the place of a butt face is read (common practice, no source).
constexpr double kSamePlace_m = 0.001;

}  // namespace

Resting RestingNow(const PlanBasis& basis) {
  return basis.planned_m > basis.done_m ? RestingAt(basis, basis.done_m) : RestingAsPlanned(basis);
}

Resting RestingAsPlanned(const PlanBasis& basis) {
  Resting resting = RestingAt(basis, basis.planned_m);
  const std::optional<Uncertain>& butt = basis.rod.blank_butt_m;
  if (!butt) return resting;
  if (basis.law.Contradicted()) resting.shorter_per.reset();
  if (!resting.butt_m || std::abs(*resting.butt_m - butt->value()) > kSamePlace_m) resting.contacts.clear();
  resting.butt_m = butt->value();
  if (basis.host != nullptr && basis.host->length && basis.host_start_m) {
    resting.depth_m = *basis.host_start_m + basis.host->length->value.meters() - butt->value();
  }
  return resting;
}

std::vector<DryFitSeen> DryFitsOf(const PlanBasis& basis) {
  std::vector<DryFitSeen> list;
  const double room_m = basis.host != nullptr ? GlueClearanceOf(*basis.host) : 0;
  for (const RestLaw::Seen& seen : basis.law.seen()) {
    DryFitSeen fit;
    fit.cut_m = seen.cut_m;
    const DryFit& logged = basis.rod.dry_fits[seen.dry_fit];
    fit.at = logged.at;
    fit.read_m = logged.overall->value.meters();
    const double off_since_m = fit.read_m - seen.length_m;  // elsewhere than the butt
    if (seen.expected_m) fit.expected_m = *seen.expected_m + off_since_m;
    fit.tighter_m = seen.tighter_m;
    fit.rest_m = seen.length_m - (basis.law.blank_m() - seen.cut_m);
    const Insertion* insertion = basis.law.as_read();
    // a bore that is not known tells nothing else than that the edge stopped in it
    const bool edge = insertion == nullptr || EdgeTouches(insertion->Thicker(seen.tighter_m.value_or(0)), seen.cut_m);
    if (edge && !basis.butt.outer.empty()) {
      fit.bore_m = basis.butt.outer.At(seen.cut_m) + room_m;
    }
    list.push_back(std::move(fit));
  }
  return list;
}

}  // namespace withy::fit
