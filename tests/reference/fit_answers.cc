#include "reference/fit_answers.h"

#include <optional>
#include <vector>

#include "reference/fields.h"
#include "withy/fit/cut_for_length.h"
#include "withy/fit/length_verdict.h"
#include "withy/fit/staged_cuts.h"
#include "withy/fit/tape_arbor.h"
#include "withy/numerics/insertion.h"

namespace withy::reference {
namespace {

const char* WordOf(Insertion::Touch touch) {
  switch (touch) {
    case Insertion::Touch::kStop:
      return "stop";
    case Insertion::Touch::kStep:
      return "step";
    case Insertion::Touch::kTaper:
      return "taper";
  }
  return "";
}

const char* WordOf(LengthOutcome::Kind kind) {
  switch (kind) {
    case LengthOutcome::Kind::kReached:
      return "reached";
    case LengthOutcome::Kind::kLongerThanUncut:
      return "longer_than_uncut";
    case LengthOutcome::Kind::kJump:
      return "jump";
    case LengthOutcome::Kind::kBeyondLimit:
      return "beyond_cut_limit";
  }
  return "";
}

const char* WordOf(LengthVerdict verdict) {
  switch (verdict) {
    case LengthVerdict::kMeets:
      return "meets";
    case LengthVerdict::kMisses:
      return "misses";
    case LengthVerdict::kCannotTell:
      return "cannot_tell";
  }
  return "";
}

Value AtCut(const Insertion& insertion, double cut, Allocator& allocator) {
  const Insertion::State state = insertion.At(cut);
  Value contacts(rapidjson::kArrayType);
  for (const Insertion::Contact& contact : state.contacts) {
    contacts.PushBack(Fields(allocator)
                          .Put("kind", WordOf(contact.touch))
                          .Put("z_lo_m", contact.z_lo)
                          .Put("z_hi_m", contact.z_hi)
                          .Put("s_lo_m", contact.s_lo)
                          .Put("s_hi_m", contact.s_hi)
                          .Take(),
                      allocator);
  }
  return Fields(allocator)
      .Put("cut_m", cut)
      .Put("e_m", state.rest)
      .Put("length_m", state.length)
      .Put("insertion_depth_m", state.depth)
      .Put("enters", state.enters)
      .Put("contacts", std::move(contacts))
      .Put("n_contacts", static_cast<int>(state.contacts.size()))
      .Put("dlength_dc_left", state.slope_before)
      .Put("dlength_dc_right", state.slope_after)
      .Put("jump_at_cut_m", state.jump)
      .Take();
}

Value PlanOf(const Insertion& insertion, double cut, const Value& in, Allocator& allocator) {
  const CutStages stages{Get(in, "kerf_m"), Get(in, "cut_max_m"), Get(in, "cut_last_max_m")};
  const auto removed = StagedCuts(cut, stages);
  if (!removed) return Fields(allocator).Put("feasible", false).Put("n_cuts", Value()).Take();
  std::vector<double> offcut, total, length;
  for (double piece : *removed) {
    offcut.push_back(piece - stages.kerf_m);
    total.push_back(piece + (total.empty() ? 0 : total.back()));
    length.push_back(insertion.LengthAt(total.back()));
  }
  return Fields(allocator)
      .Put("feasible", true)
      .Put("n_cuts", static_cast<int>(removed->size()))
      .Put("removed_m", *removed)
      .Put("offcut_m", offcut)
      .Put("total_cut_after_m", total)
      .Put("length_after_m", length)
      .Take();
}

Value Target(const Insertion& insertion, double cut_limit, const Value& in, Allocator& allocator) {
  using Kind = LengthOutcome::Kind;
  const double target = Get(in, "target_length_m");
  const LengthOutcome outcome = CutForLength(insertion, target, cut_limit);
  const auto length_of = [](const std::optional<LengthOutcome::Nearest>& nearest) {
    return nearest ? std::optional(nearest->length_m) : std::nullopt;
  };
  Fields fields(allocator);
  fields.Put("target_length_m", target)
      .Put("status", WordOf(outcome.kind))
      .Put("least_cut_m", outcome.kind == Kind::kReached ? outcome.cut_m : std::nullopt)
      .Put("cut_at_jump_m", outcome.kind == Kind::kJump ? outcome.cut_m : std::nullopt)
      .Put("nearest_below_m", length_of(outcome.below))
      .Put("nearest_above_m", length_of(outcome.above))
      .Put("nearest_above_attained", outcome.above ? std::optional(outcome.above->attained) : std::nullopt);
  if (outcome.kind == Kind::kReached) fields.Put("plan", PlanOf(insertion, *outcome.cut_m, in, allocator));
  return fields.Take();
}

Value Tolerance(const Insertion& insertion, const Value& in, Allocator& allocator) {
  const double cut = Get(in, "cut_m");
  const LengthBand band = LengthBandAt(insertion, cut, {Get(in, "u_D_m"), Get(in, "u_B_m"), Get(in, "u_L_m")});
  return Fields(allocator)
      .Put("cut_m", cut)
      .Put("length_m", band.length_m)
      .Put("dlength_dD_minus", band.per_diameter.thinner)
      .Put("dlength_dD_plus", band.per_diameter.thicker)
      .Put("dlength_dB_minus", -band.per_diameter.thicker)
      .Put("dlength_dB_plus", -band.per_diameter.thinner)
      .Put("u_length_m", band.u_m)
      .Put("verdict", WordOf(JudgeLength(band, Get(in, "target_length_m"), Get(in, "tol_m"))))
      .Put("length_at_minus_2u_m", band.with_thinner_m)
      .Put("length_at_plus_2u_m", band.with_thicker_m)
      .Put("jump_within_2u", band.jump)
      .Take();
}

Value Tape(const Insertion& insertion, const Value& in, Allocator& allocator) {
  const auto station = StationAt(insertion, Get(in, "cut_m"), Get(in, "station_z_m"));
  if (!station) return Fields(allocator).Put("station_s_m", Value()).Put("turns", Value()).Take();
  const TapeArbor arbor =
      TapeArborOf({station->shaft_m, station->bore_m, Get(in, "tape_thickness_m"), Get(in, "glue_gap_m")});
  return Fields(allocator)
      .Put("station_s_m", station->shaft_s_m)
      .Put("blank_diameter_m", station->shaft_m)
      .Put("bore_diameter_m", station->bore_m)
      .Put("turns", arbor.turns)
      .Put("built_diameter_m", arbor.built_m)
      .Put("radial_gap_left_m", arbor.gap_left_m)
      .Put("gap_respected", arbor.gap_kept)
      .Put("tape_length_m", arbor.tape_length_m)
      .Put("tape_length_concentric_m", arbor.concentric_m)
      .Take();
}

}  // namespace

Value AnswerFit(const Value& entry, Allocator& allocator) {
  const Value& in = entry["input"];
  const Insertion insertion({.bore = ProfileOf(in["bore_knots_m"]),
                             .shaft = ProfileOf(in["blank_knots_m"]),
                             .clearance = Get(in, "glue_clearance_m"),
                             .stop = Get(in, "stop_m")});
  return Fields(allocator)
      .Put("at_cut", ForEach(in, "cuts_m", allocator,
                             [&](const Value& cut) { return AtCut(insertion, cut.GetDouble(), allocator); }))
      .Put("targets",
           ForEach(in, "targets", allocator,
                   [&](const Value& target) { return Target(insertion, Get(in, "cut_limit_m"), target, allocator); }))
      .Put("tolerances",
           ForEach(in, "tolerances", allocator, [&](const Value& one) { return Tolerance(insertion, one, allocator); }))
      .Put("tape", ForEach(in, "tape", allocator, [&](const Value& one) { return Tape(insertion, one, allocator); }))
      .Take();
}

}  // namespace withy::reference
