// Guides with the figures of their model, and the tip-top.
#include <unordered_map>
#include <utility>

#include "absl/strings/str_format.h"
#include "read_quantity.h"
#include "resolver.h"

namespace withy {
namespace {

GuideForm FormOf(const std::string& word) {
  if (word == "single_foot") return GuideForm::kSingleFoot;
  if (word == "double_foot") return GuideForm::kDoubleFoot;
  if (word == "snake") return GuideForm::kSnake;
  if (word == "single_wire") return GuideForm::kSingleWire;
  if (word == "roller") return GuideForm::kRoller;
  return GuideForm::kOther;
}

void FillFromModel(const v1::GuideModel& model, const FieldPath& at, Guide& guide) {
  guide.model_found = true;
  guide.form = FormOf(model.form());
  guide.form_word = model.form();
  guide.ring_outer = ReadLength(model.ring_outer(), at, "ring_outer");
  guide.ring_inner = ReadLength(model.ring_inner(), at, "ring_inner");
  guide.ring_height = ReadLength(model.ring_height(), at, "ring_height");
  guide.foot_length = ReadLength(model.foot_length(), at, "foot_length");
  guide.foot_width = ReadLength(model.foot_width(), at, "foot_width");
  guide.foot_thickness = ReadLength(model.foot_thickness(), at, "foot_thickness");
  guide.mass = ReadMass(model.mass(), at, "mass");
}

// As the schema says: half a ring short of the outermost point, not below the tube's end.
void FillRingCenter(Resolver& r, TipTop& tip) {
  if (tip.ring_center_beyond_tube) return;
  const FieldPath at = tip.at.Field("ring_center_beyond_tube");
  if (tip.end_beyond_tube && tip.ring_outer) {
    const double center = tip.end_beyond_tube->value.meters() - tip.ring_outer->value.meters() / 2;
    tip.ring_center_beyond_tube =
        Known<Length>{Length::Meters(center > 0 ? center : 0), std::nullopt, Source::kComputed, at};
    return;
  }
  tip.ring_center_beyond_tube = Known<Length>{Length(), std::nullopt, Source::kAssumed, at};
  r.Assume(at, "0 mm",
           "without end_beyond_tube and ring_outer the ring's centre is taken at the end of the tube; guide positions "
           "count from it");
}

TipTop ReadTipTop(Resolver& r, const v1::TipTop& from) {
  TipTop tip;
  tip.id = from.id();
  tip.at = FieldPath().Field("tip_top");
  tip.tube_bore = ReadLength(from.tube_bore(), tip.at, "tube_bore");
  tip.tube_length = ReadLength(from.tube_length(), tip.at, "tube_length");
  tip.ring_outer = ReadLength(from.ring_outer(), tip.at, "ring_outer");
  tip.ring_inner = ReadLength(from.ring_inner(), tip.at, "ring_inner");
  tip.ring_height = ReadLength(from.ring_height(), tip.at, "ring_height");
  tip.end_beyond_tube = ReadLength(from.end_beyond_tube(), tip.at, "end_beyond_tube");
  tip.ring_center_beyond_tube = ReadLength(from.ring_center_beyond_tube(), tip.at, "ring_center_beyond_tube");
  tip.angle_deg = ReadAngle(from.angle(), tip.at, "angle");
  tip.mass = ReadMass(from.mass(), tip.at, "mass");
  tip.bond = from.bond();
  FillRingCenter(r, tip);
  return tip;
}

}  // namespace

void ResolveGuides(Resolver& r) {
  if (r.design.has_tip_top()) r.rod.tip_top = ReadTipTop(r, r.design.tip_top());
  if (!WithinLimit(r, FieldPath().Field("guides"), r.design.guides_size(), kMostGuides, "guides")) return;
  std::unordered_map<std::string, int> models;
  for (int i = 0; i < r.design.guide_models_size(); ++i) models.emplace(r.design.guide_models(i).id(), i);
  for (int i = 0; i < r.design.guides_size(); ++i) {
    const v1::Guide& from = r.design.guides(i);
    Guide guide;
    guide.id = from.id();
    guide.at = FieldPath().Field("guides").Item(from.id(), i);
    guide.model = from.model();
    guide.from_tip = ReadLength(from.from_tip(), guide.at, "from_tip");
    guide.angle_deg = ReadAngle(from.angle(), guide.at, "angle");
    guide.foot_towards = from.foot_towards() == v1::End::TIP ? End::kTip : End::kButt;
    guide.locked = from.locked();
    if (const auto found = models.find(guide.model); found != models.end() && !guide.model.empty()) {
      const v1::GuideModel& model = r.design.guide_models(found->second);
      FillFromModel(model, FieldPath().Field("guide_models").Item(model.id(), found->second), guide);
    }
    r.rod.guides.push_back(std::move(guide));
  }
}

}  // namespace withy
