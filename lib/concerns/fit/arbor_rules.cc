#include <algorithm>
#include <cmath>

#include "absl/strings/str_format.h"
#include "rules.h"
#include "withy/numerics/circle_packing.h"
#include "withy/rod/weights_cover.h"

namespace withy::fit {
namespace {

constexpr Code kArborOutsidePart = {
    .name = "fit/arbor-outside-part",
    .severity = Severity::kError,
    .summary = "An arbor reaches out of the part it is in",
    .why = "It keeps the part from coming home against its neighbour, or shows.",
    .action = "Correct its place (from the part's own butt end) or its length.",
};

void JudgeArborOutsidePart(const View& view, std::vector<Finding>& findings) {
  for (const Part& part : view.rod.handle.parts) {
    for (const Arbor& arbor : part.arbors) {
      if (!part.length || !arbor.own_at) continue;
      const double start = arbor.own_at->value.mm(), end = start + (arbor.length ? arbor.length->value.mm() : 0);
      if (start >= -kTouch_m * 1000 && end <= part.length->value.mm() + kTouch_m * 1000) continue;
      findings.push_back(MakeFinding(kArborOutsidePart, arbor.at,
                                     absl::StrFormat("reaches from %.1f to %.1f mm in '%s', which is %.1f mm long",
                                                     start, end, part.id, part.length->value.mm()),
                                     {{"start_mm", start}, {"end_mm", end}, {"part_mm", part.length->value.mm()}}));
    }
  }
}

constexpr Code kArborOffBlank = {
    .name = "fit/arbor-off-blank",
    .severity = Severity::kWarning,
    .summary = "An arbor lies where there is no blank",
    .why = "It has nothing to be built on, and centres nothing.",
    .action = "Move it to where the blank is inside the part, or leave it out.",
};

// More is to come off than log and design have: the blank will be elsewhere. Less than 1/16 in is the same cut.
bool MoreIsToComeOff(const std::optional<CutPlan>& cut) {
  constexpr double kSameCut_m = 0.0254 / 16;
  return cut && !cut->stages.empty() && cut->stages.back().total_m - cut->planned_m > kSameCut_m;
}

void JudgeArborOffBlank(const View& view, std::vector<Finding>& findings) {
  const Rod& rod = view.rod;
  if (!rod.blank_butt_m || !rod.blank_tip_m || MoreIsToComeOff(view.answers.cut)) return;
  const double open_m = rod.blank_butt_m->plus_minus() + kTouch_m;
  const double butt_m = rod.blank_butt_m->value(), tip_m = rod.blank_tip_m->value();
  for (std::size_t i = 0; i < view.answers.parts.size(); ++i) {
    const Part& part = rod.handle.parts[i];
    for (std::size_t k = 0; k < view.answers.parts[i].arbors.size(); ++k) {
      const ArborFit& fit = view.answers.parts[i].arbors[k];
      if (!part.on.empty() || !fit.start_m || !fit.length_m) continue;
      const double off_m = std::max(butt_m - *fit.start_m, *fit.start_m + *fit.length_m - tip_m);
      if (off_m <= open_m) continue;
      const double bare_mm = std::min(off_m, *fit.length_m) * 1000;
      findings.push_back(MakeFinding(
          kArborOffBlank, part.arbors[k].at,
          absl::StrFormat("of its %.1f mm in '%s' %.1f mm have no blank in them; the blank begins at %.1f mm",
                          *fit.length_m * 1000, part.id, bare_mm, butt_m * 1000),
          {{"bare_mm", bare_mm}, {"blank_butt_mm", butt_m * 1000}}));
    }
  }
}

constexpr Code kArborTooThick = {
    .name = "fit/arbor-too-thick",
    .severity = Severity::kError,
    .summary = "An arbor is thicker than the bore around it",
    .why = "The part does not go over it.",
    .action = "Turn or sand the arbor down to the bore less the glue line.",
};

void JudgeArborTooThick(const View& view, std::vector<Finding>& findings) {
  for (std::size_t i = 0; i < view.answers.parts.size(); ++i) {
    const Part& part = view.rod.handle.parts[i];
    for (std::size_t k = 0; k < view.answers.parts[i].arbors.size(); ++k) {
      const Arbor& arbor = part.arbors[k];
      const std::optional<double>& bore_m = view.answers.parts[i].arbors[k].bore_m;
      if (!arbor.outer || !bore_m || arbor.outer->value.meters() <= *bore_m + 1e-8) continue;
      findings.push_back(MakeFinding(
          kArborTooThick, arbor.outer->at,
          absl::StrFormat("%.2f mm does not go into a bore of %.2f mm", arbor.outer->value.mm(), *bore_m * 1000),
          {{"outer_mm", arbor.outer->value.mm()}, {"bore_mm", *bore_m * 1000}}));
    }
  }
}

constexpr Code kArborTooThin = {
    .name = "fit/arbor-too-thin",
    .severity = Severity::kError,
    .summary = "An arbor is no thicker than the blank under it",
    .why = "What goes around the blank is wider than the blank; a diameter was misread or is of another place.",
    .action = "Enter the arbor's outer diameter, over the blank.",
};

void JudgeArborTooThin(const View& view, std::vector<Finding>& findings) {
  for (std::size_t i = 0; i < view.answers.parts.size(); ++i) {
    const Part& part = view.rod.handle.parts[i];
    for (std::size_t k = 0; k < view.answers.parts[i].arbors.size(); ++k) {
      const Arbor& arbor = part.arbors[k];
      const std::optional<double>& blank_m = view.answers.parts[i].arbors[k].blank_m;
      if (!arbor.outer || !blank_m || arbor.outer->value.meters() > *blank_m + 1e-8) continue;
      findings.push_back(
          MakeFinding(kArborTooThin, arbor.outer->at,
                      absl::StrFormat("%.2f mm outside, on %.2f mm of blank", arbor.outer->value.mm(), *blank_m * 1000),
                      {{"outer_mm", arbor.outer->value.mm()}, {"blank_mm", *blank_m * 1000}}));
    }
  }
}

constexpr Code kArborRoom = {
    .name = "fit/arbor-room",
    .severity = Severity::kWarning,
    .summary = "There is no room for one turn of an arbor's tape",
    .why = "The tape would have to be cut away again at the glue-up.",
    .action = "Leave the arbor out; the glue line fills so little room.",
};

void JudgeArborRoom(const View& view, std::vector<Finding>& findings) {
  for (std::size_t i = 0; i < view.answers.parts.size(); ++i) {
    const Part& part = view.rod.handle.parts[i];
    for (std::size_t k = 0; k < view.answers.parts[i].arbors.size(); ++k) {
      const Arbor& arbor = part.arbors[k];
      const ArborFit& fit = view.answers.parts[i].arbors[k];
      if (!arbor.tape_thickness || !fit.bore_m || !fit.blank_m) continue;
      const double room_mm = (*fit.bore_m - *fit.blank_m) / 2 * 1000, tape_mm = arbor.tape_thickness->value.mm();
      // a bore that is tighter than the blank is told as such
      if (room_mm < 0 || room_mm >= tape_mm - 1e-5) continue;
      findings.push_back(
          MakeFinding(kArborRoom, arbor.at,
                      absl::StrFormat("%.2f mm all round, and one turn of tape takes %.2f mm", room_mm, tape_mm),
                      {{"room_mm", room_mm}, {"tape_mm", tape_mm}}));
    }
  }
}

constexpr Code kCavityOutside = {
    .name = "fit/cavity-outside",
    .severity = Severity::kError,
    .summary = "A cavity reaches out of its part",
    .why = "The counterweights in it would stand out, or their number is counted wrong.",
    .action = "Measure the cavity from the part's own butt end.",
};

void JudgeCavityOutside(const View& view, std::vector<Finding>& findings) {
  for (const Part& part : view.rod.handle.parts) {
    if (!part.cavity || !part.cavity->own_at || !part.cavity->length || !part.length) continue;
    const double end = (part.cavity->own_at->value + part.cavity->length->value).mm();
    if (part.cavity->own_at->value.mm() >= 0 && end <= part.length->value.mm() + kTouch_m * 1000) continue;
    findings.push_back(MakeFinding(
        kCavityOutside, part.cavity->at,
        absl::StrFormat("ends at %.1f mm in '%s', which is %.1f mm long", end, part.id, part.length->value.mm()),
        {{"end_mm", end}, {"part_mm", part.length->value.mm()}}));
  }
}

constexpr Code kCavityUnderBlank = {
    .name = "fit/cavity-under-blank",
    .severity = Severity::kError,
    .summary = "The blank comes to rest where the cavity for counterweights is",
    .why = "Weights that are potted first keep the blank from coming home, and the rod comes out too long.",
    .action = "Count the cavity only to the blank's butt face, or cut the blank shorter.",
};

void JudgeCavityUnderBlank(const View& view, std::vector<Finding>& findings) {
  if (!view.rod.blank_butt_m) return;
  const double blank_mm = view.rod.blank_butt_m->value() * 1000;
  for (const Part& part : view.rod.handle.parts) {
    if (!part.cavity || !part.cavity->own_at || !part.cavity->length || !part.start.from_butt_m) continue;
    const double end_mm =
        part.start.from_butt_m->value() * 1000 + (part.cavity->own_at->value + part.cavity->length->value).mm();
    if (end_mm <= blank_mm + kTouch_m * 1000) continue;
    findings.push_back(
        MakeFinding(kCavityUnderBlank, part.cavity->at,
                    absl::StrFormat("reaches to %.1f mm, and the blank begins at %.1f mm", end_mm, blank_mm),
                    {{"end_mm", end_mm}, {"blank_butt_mm", blank_mm}}));
  }
}

constexpr Code kWeightsDoNotFit = {
    .name = "fit/weights-do-not-fit",
    .severity = Severity::kError,
    .summary = "The counterweights and their cover do not fit into their cavity",
    .why = "What does not go in does not balance the rod.",
    .action = "Take fewer, or shorter or heavier ones, a thinner cover, or a cavity that is larger.",
};

constexpr double kTie_mm = 1e-6;  // a tie fits

void JudgeWeightsDoNotFit(const View& view, std::vector<Finding>& findings) {
  for (const Part& part : view.rod.handle.parts) {
    if (!part.weights || !part.cavity || !part.weights->count || !part.weights->unit_length ||
        !part.weights->unit_diameter || !part.cavity->length || !part.cavity->diameter) {
      continue;
    }
    const double unit_mm = part.weights->unit_length->value.mm();
    if (!(unit_mm > 0) || !(part.weights->unit_diameter->value.mm() > 0)) continue;
    const double cover_mm = CoverOf(*part.weights).mm();
    const double free_mm = part.cavity->length->value.mm() - cover_mm;
    const double layers = std::floor(std::max(0.0, free_mm + kTie_mm) / unit_mm);
    const double room = layers * SideBySide(part.cavity->diameter->value.mm(), part.weights->unit_diameter->value.mm(), kTie_mm);
    if (*part.weights->count <= room) continue;
    findings.push_back(MakeFinding(
        kWeightsDoNotFit, part.weights->at,
        absl::StrFormat("%d counterweights, and the cavity of '%s' holds %.0f under %.1f mm of cover", *part.weights->count,
                        part.id, room, cover_mm),
        {{"count", double(*part.weights->count)}, {"room", room}, {"cover_mm", cover_mm}}));
  }
}

}  // namespace

std::vector<Rule<View>> ArborRules() {
  return {{&kArborOutsidePart, JudgeArborOutsidePart}, {&kArborOffBlank, JudgeArborOffBlank}, {&kArborTooThick, JudgeArborTooThick},
          {&kArborTooThin, JudgeArborTooThin},         {&kArborRoom, JudgeArborRoom},
          {&kCavityOutside, JudgeCavityOutside},       {&kCavityUnderBlank, JudgeCavityUnderBlank},
          {&kWeightsDoNotFit, JudgeWeightsDoNotFit}};
}

}  // namespace withy::fit
