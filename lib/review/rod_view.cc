// The resolved rod as plugins see it.
#include <algorithm>
#include <limits>
#include <vector>

#include "answers.h"
#include "figures.h"

namespace withy {
namespace {

template <typename AddRow>
void AddRows(const Profile& profile, double shift_m, AddRow add_row) {
  for (const Profile::Knot& knot : profile.knots()) {
    v1::ProfileRow& row = *add_row();
    row.set_at_mm((knot.x + shift_m) * kMm);
    row.set_diameter_mm(knot.y * kMm);
  }
}

// Rows where either profile has a knot: between two of them outer diameter and wall both run straight.
void AddInner(const Rod& rod, const Section& section, v1::RodSection& to) {
  if (!rod.blank_butt_m || !section.start_m || !section.from_m || section.outer.empty() || section.wall.empty()) return;
  const double from = section.from_m->value();
  const double till = section.to_m->value();
  std::vector<double> at = {from, till};
  for (const Profile* profile : {&section.outer, &section.wall}) {
    for (const Profile::Knot& knot : profile->knots()) {
      if (from < knot.x && knot.x < till) at.push_back(knot.x);
    }
  }
  std::sort(at.begin(), at.end());
  at.erase(std::unique(at.begin(), at.end()), at.end());
  const double shift = (*rod.blank_butt_m + *section.start_m).value() - from;
  const auto inner_at = [&section](double x, Profile::Limit limit) {
    return std::max(0.0, section.outer.At(x, limit) - 2 * section.wall.At(x, limit));
  };
  const auto add = [&](double x, double diameter) {
    v1::ProfileRow& row = *to.add_inner();
    row.set_at_mm((x + shift) * kMm);
    row.set_diameter_mm(diameter * kMm);
  };
  for (const double x : at) {
    const double left = inner_at(x, Profile::Limit::kLeft);
    const double right = inner_at(x, Profile::Limit::kRight);
    if (x > from) add(x, left);
    if (x < till && (x == from || left != right)) add(x, right);
  }
}

void AddSection(const Rod& rod, const Section& section, v1::RodSection& to) {
  to.set_id(section.id);
  if (rod.blank_butt_m && section.start_m) to.set_start_mm((*rod.blank_butt_m + *section.start_m).value() * kMm);
  if (section.from_m) to.set_length_mm((*section.to_m - *section.from_m).value() * kMm);
  to.set_cut_butt_mm(section.cut_butt.amount.mm());
  to.set_cut_tip_mm(section.cut_tip.amount.mm());
  AddInner(rod, section, to);
}

const char* Word(BoreKnown known) {
  switch (known) {
    case BoreKnown::kProfile:
      return "profile";
    case BoreKnown::kPlugs:
      return "plugs";
    case BoreKnown::kMouth:
      return "mouth";
    case BoreKnown::kUnknown:
      return "";
  }
  return "";
}

const char* Word(FitKind kind) {
  switch (kind) {
    case FitKind::kRigid:
      return "rigid";
    case FitKind::kStretched:
      return "stretched";
    case FitKind::kShrunk:
      return "shrunk";
  }
  return "";
}

void AddCavity(const Part& part, v1::RodPart& to) {
  if (part.cavity) {
    v1::RodCavity& cavity = *to.mutable_cavity();
    if (part.start.from_butt_m && part.cavity->own_at) {
      cavity.set_start_mm((part.start.from_butt_m->value() + SiOf(*part.cavity->own_at)) * kMm);
    }
    Put(part.cavity->length, kMm, [&](double mm) { cavity.set_length_mm(mm); });
    Put(part.cavity->diameter, kMm, [&](double mm) { cavity.set_diameter_mm(mm); });
  }
  if (part.weights) {
    v1::RodWeights& weights = *to.mutable_weights();
    if (part.weights->count) weights.set_count(*part.weights->count);
    Put(part.weights->unit_mass, kGrams, [&](double g) { weights.set_unit_mass_g(g); });
    Put(part.weights->unit_length, kMm, [&](double mm) { weights.set_unit_length_mm(mm); });
    Put(part.weights->unit_diameter, kMm, [&](double mm) { weights.set_unit_diameter_mm(mm); });
    Put(part.weights->cover, kMm, [&](double mm) { weights.set_cover_mm(mm); });
  }
}

void AddPart(const Part& part, v1::RodPart& to) {
  to.set_id(part.id);
  to.set_kind(part.kind);
  Put(part.start.from_butt_m, kMm, [&](double mm) { to.set_start_mm(mm); });
  Put(part.length, kMm, [&](double mm) { to.set_length_mm(mm); });
  if (part.start.from_butt_m) {
    AddRows(part.outer, part.start.from_butt_m->value(), [&] { return to.add_outer(); });
    AddRows(part.bore, part.start.from_butt_m->value(), [&] { return to.add_bore(); });
  }
  Put(part.mass, kGrams, [&](double g) { to.set_mass_g(g); });
  to.set_on(part.on);
  to.set_loose(part.loose);
  to.set_bore_known(Word(part.bore_known));
  to.set_fitting(Word(part.fitting));
  AddCavity(part, to);
}

void AddGuide(const Guide& guide, v1::RodGuide& to) {
  to.set_id(guide.id);
  to.set_model(guide.model);
  to.set_form(guide.form_word);
  Put(guide.ring.from_butt_m, kMm, [&](double mm) { to.set_from_butt_mm(mm); });
  Put(guide.from_tip, kMm, [&](double mm) { to.set_from_tip_mm(mm); });
  Put(guide.angle_deg, kAsIs, [&](double deg) { to.set_angle_deg(deg); });
  Put(guide.ring_outer, kMm, [&](double mm) { to.set_ring_outer_mm(mm); });
  Put(guide.ring_inner, kMm, [&](double mm) { to.set_ring_inner_mm(mm); });
  Put(guide.ring_height, kMm, [&](double mm) { to.set_ring_height_mm(mm); });
  Put(guide.foot_length, kMm, [&](double mm) { to.set_foot_length_mm(mm); });
  Put(guide.mass, kGrams, [&](double g) { to.set_mass_g(g); });
  to.set_locked(guide.locked);
}

void AddWrap(const Wrap& wrap, v1::RodWrap& to) {
  to.set_id(wrap.id);
  to.set_kind(wrap.kind);
  to.set_on(wrap.on);
  to.set_thread(wrap.thread);
  Put(wrap.start.from_butt_m, kMm, [&](double mm) { to.set_start_mm(mm); });
  Put(wrap.length, kMm, [&](double mm) { to.set_length_mm(mm); });
  to.set_layers(wrap.layers);
}

void AddTipTop(const TipTop& tip, v1::RodTipTop& to) {
  to.set_id(tip.id);
  Put(tip.tube_bore, kMm, [&](double mm) { to.set_tube_bore_mm(mm); });
  Put(tip.tube_length, kMm, [&](double mm) { to.set_tube_length_mm(mm); });
  Put(tip.mass, kGrams, [&](double g) { to.set_mass_g(g); });
}

// Butt first; what has no place comes last, in the order of the design.
template <typename T>
std::vector<const T*> ButtFirst(const std::vector<T>& things, const Along T::*place) {
  const auto key = [place](const T* thing) {
    const Along& at = thing->*place;
    return at.from_butt_m ? at.from_butt_m->value() : std::numeric_limits<double>::infinity();
  };
  std::vector<const T*> sorted;
  for (const T& thing : things) sorted.push_back(&thing);
  std::stable_sort(sorted.begin(), sorted.end(), [&](const T* a, const T* b) { return key(a) < key(b); });
  return sorted;
}

}  // namespace

v1::Rod MakeRodView(const Rod& rod) {
  v1::Rod view;
  view.set_technique(rod.order.technique);
  Put(rod.overall_m, kMm, [&](double mm) { view.set_overall_length_mm(mm); });
  Put(rod.blank_butt_m, kMm, [&](double mm) { view.set_blank_butt_mm(mm); });
  Put(rod.blank_tip_m, kMm, [&](double mm) { view.set_blank_tip_mm(mm); });
  Put(rod.tip_ring_m, kMm, [&](double mm) { view.set_tip_ring_mm(mm); });
  Put(rod.order.reel_foot_m, kMm, [&](double mm) { view.set_reel_foot_mm(mm); });
  if (rod.blank_butt_m) AddRows(rod.blank.outer, rod.blank_butt_m->value(), [&] { return view.add_blank(); });
  for (const int i : rod.blank.assembled) AddSection(rod, rod.blank.sections[i], *view.add_sections());
  for (const Part* part : ButtFirst(rod.handle.parts, &Part::start)) AddPart(*part, *view.add_parts());
  for (const Guide* guide : ButtFirst(rod.guides, &Guide::ring)) AddGuide(*guide, *view.add_guides());
  for (const Wrap* wrap : ButtFirst(rod.wraps, &Wrap::start)) AddWrap(*wrap, *view.add_wraps());
  if (rod.tip_top) AddTipTop(*rod.tip_top, *view.mutable_tip_top());
  return view;
}

}  // namespace withy
