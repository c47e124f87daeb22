#include <cmath>
#include <set>

#include "absl/strings/str_format.h"
#include "adhesive.h"
#include "rules.h"

namespace withy::bonding {
namespace {

constexpr Code kPotLifeShort = {
    .name = "bonding/pot-life-short",
    .severity = Severity::kError,
    .summary = "A joint takes longer to close than its adhesive can be worked",
    .why = "The adhesive gels with the part half on, where it can neither be pushed home nor pulled off.",
    .action =
        "Take a slower adhesive, work in a cooler room, or make ready what saves time and say so in "
        "`shop.gluing_time`. "
        "Never change the ratio for it.",
};

void JudgePotLifeShort(const View& view, std::vector<Finding>& findings) {
  const double at_c = TemperatureOf(view.rod.shop);
  std::set<int> told;
  for (const GluedJoint& joint : view.answers.joints) {
    if (joint.done || joint.adhesive_index < 0 || told.count(joint.adhesive_index) > 0) continue;
    const Adhesive& adhesive = view.rod.adhesives[joint.adhesive_index];
    const std::optional<double>& pot = joint.pot_life_s;
    if (!pot || joint.working_s <= *pot * (1 + 1e-9)) continue;
    told.insert(joint.adhesive_index);
    findings.push_back(MakeFinding(
        kPotLifeShort, adhesive.at.Field("mix").Field("pot_life"),
        absl::StrFormat("at %.0f C '%s' can be worked for %.1f minutes, and a joint takes %.1f", at_c, adhesive.id,
                        *pot / 60, joint.working_s / 60),
        {{"pot_life_minutes", *pot / 60}, {"working_minutes", joint.working_s / 60}, {"at_celsius", at_c}}));
    findings.back().related.push_back(joint.at);
  }
}

constexpr Code kBatchHot = {
    .name = "bonding/batch-hot",
    .severity = Severity::kAdvice,
    .summary = "A batch is larger than the one that the pot life is printed for",
    .why =
        "Epoxy heats itself, a large cup of it more than a small one: it gels sooner than printed, and a cup of 240 ml "
        "can smoke, melt and burn.",
    .action =
        "Mix it in several cups one after the other, or spread it out flat as soon as it is mixed. Never in a foam "
        "cup.",
};

// Where the data sheet does not say: pot life is quoted for 100 g (three makers).
constexpr double kPrintedFor_kg = 0.1;

void JudgeBatchHot(const View& view, std::vector<Finding>& findings) {
  for (const MixedBatch& batch : view.answers.batches) {
    const Adhesive& adhesive = view.rod.adhesives[batch.adhesive_index];
    const Maybe<Mass>& printed = adhesive.pot_life_mass;
    const double most = printed && printed->value.kilograms() > 0 ? printed->value.kilograms() : kPrintedFor_kg;
    if (!IsEpoxy(adhesive) || !batch.mixed_kg || *batch.mixed_kg <= most * (1 + 1e-9)) continue;
    const double batch_g = *batch.mixed_kg * 1000;
    if (!std::isfinite(batch_g)) continue;
    findings.push_back(MakeFinding(
        kBatchHot, adhesive.at,
        absl::StrFormat("a batch of %.0f g of '%s', whose pot life is for %.0f g", batch_g, adhesive.id, most * 1000),
        {{"batch_g", batch_g}, {"printed_for_g", most * 1000}}));
  }
}

constexpr Code kTemperature = {
    .name = "bonding/temperature",
    .severity = Severity::kAdvice,
    .summary = "The shop is much colder or warmer than the data sheet's temperature",
    .why =
        "Every 10 C halve or double pot life and cure, as a rule of thumb; in the cold some epoxies do not cure "
        "through at all.",
    .action = "Bring room, parts and adhesive to the printed temperature before mixing, and keep it until it has set.",
};

// A factor of two by the rule of thumb.
constexpr double kFar_c = 10;

void JudgeTemperature(const View& view, std::vector<Finding>& findings) {
  if (!view.rod.shop.temperature_c) return;
  const double shop_c = *view.rod.shop.temperature_c;
  for (const Adhesive& adhesive : view.rod.adhesives) {
    const std::optional<double>& printed = adhesive.pot_life_at_c ? adhesive.pot_life_at_c : adhesive.cure_at_c;
    if (!IsMixed(adhesive) || !printed || std::abs(shop_c - *printed) < kFar_c - 1e-9) continue;
    findings.push_back(MakeFinding(
        kTemperature, FieldPath().Field("shop").Field("temperature"),
        absl::StrFormat("the shop is at %.0f C, and '%s' is described for %.0f C", shop_c, adhesive.id, *printed),
        {{"shop_celsius", shop_c}, {"printed_celsius", *printed}}));
    findings.back().related.push_back(adhesive.at.Field("mix"));
  }
}

}  // namespace

std::vector<Rule<View>> BatchRules() {
  return {{&kPotLifeShort, JudgePotLifeShort}, {&kBatchHot, JudgeBatchHot}, {&kTemperature, JudgeTemperature}};
}

}  // namespace withy::bonding
