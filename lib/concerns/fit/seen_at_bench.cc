// What the bench shows of the law: where blank and handle touch, and what the dry fits said.
#include "arbors.h"
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

}  // namespace

std::vector<BlankContact> ContactsOf(const PlanBasis& basis) {
  const Insertion* insertion = basis.law.insertion();
  std::vector<BlankContact> contacts;
  if (insertion == nullptr || !basis.Told(basis.done_m)) return contacts;
  for (const Insertion::Contact& touch : insertion->At(basis.done_m).contacts) {
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

std::vector<DryFitSeen> DryFitsOf(const PlanBasis& basis) {
  std::vector<DryFitSeen> list;
  const double room_m = basis.host != nullptr ? GlueClearanceOf(*basis.host) : 0;
  for (const RestLaw::Seen& seen : basis.law.seen()) {
    DryFitSeen fit;
    fit.cut_m = seen.cut_m;
    fit.read_m = seen.length_m;
    fit.expected_m = seen.expected_m;
    fit.tighter_m = seen.tighter_m;
    if (seen.dry_fit >= 0 && seen.dry_fit < static_cast<int>(basis.rod.dry_fits.size())) {
      fit.at = basis.rod.dry_fits[seen.dry_fit].at;
    }
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
