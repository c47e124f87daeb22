// Each section as supplied, the taper that counts, and what is left of it after its cuts.
#include <algorithm>
#include <cmath>
#include <unordered_map>
#include <utility>

#include "absl/strings/str_format.h"
#include "codes.h"
#include "measurements.h"
#include "read_quantity.h"
#include "read_taper.h"
#include "resolver.h"

namespace withy {
namespace {

Shape ShapeOf(const std::string& word) {
  if (word.empty() || word == "tube") return Shape::kTube;
  if (word == "solid_round") return Shape::kSolidRound;
  if (word == "solid_hexagon") return Shape::kSolidHexagon;
  return Shape::kOther;
}

void DrawTaper(TaperTable table, Section& section) {
  section.taper = std::move(table);
  section.outer = OuterProfile(section.taper);
  section.wall = WallProfile(section.taper);
  section.wall_measured = WallIsMeasured(section.taper);
  section.wall_plus_minus_m = WallPlusMinus(section.taper);
}

// The bench beats the blank, where it was read.
void ApplyCalipered(Resolver& r, const Logged<v1::Calipered>& logged, Section& section) {
  const TaperTable later = ReadTaper(logged.entry->taper(), logged.at.Field("taper"), Source::kMeasured);
  if (later.stations.empty()) return;
  CompareTapers(r, section.taper, later);
  DrawTaper(LaidOver(section.taper, later), section);
}

Section ReadSection(Resolver& r, const v1::Section& from, int i) {
  Section section;
  section.id = from.id();
  section.at = FieldPath().Field("blank").Field("sections").Item(from.id(), i);
  section.index = i;
  section.shape = ShapeOf(from.shape());
  section.material = from.material();
  section.length = ReadLength(from.length(), section.at, "length");
  DrawTaper(ReadTaper(from.taper(), section.at.Field("taper")), section);
  section.modulus_pa = ReadModulus(from.modulus(), section.at, "modulus");
  section.density_kg_m3 = ReadDensity(from.density(), section.at, "density");
  section.spine_deg = ReadAngle(from.spine(), section.at, "spine");
  section.natural_bend_deg = ReadAngle(from.natural_bend(), section.at, "natural_bend");
  section.aligned_on = from.aligned_on().used();
  section.spare_for = from.spare_for();
  if (from.has_splice()) {
    const FieldPath at = section.at.Field("splice");
    section.splice_at = ReadLength(from.splice().at(), at, "at");
    section.splice_material = from.splice().material();
    section.splice_modulus_pa = ReadModulus(from.splice().modulus(), at, "modulus");
    section.splice_density_kg_m3 = ReadDensity(from.splice().density(), at, "density");
  }
  if (!section.length && !section.outer.empty() && section.outer.end() > 0) {
    section.length = Known<Length>{Length::Meters(section.outer.end()), std::nullopt, Source::kAssumed,
                                   section.at.Field("length")};
    r.Assume(section.at.Field("length"), absl::StrFormat("%.1f mm", section.outer.end() * 1000),
             "the last row of the taper table is taken as the tip end");
  }
  return section;
}

struct CutSums {
  double planned_m = 0, done_m = 0;
  double planned_plus_minus_m = 0, done_plus_minus_m = 0;
  FieldPath planned_at, done_at;
};

// Staged cuts of one end add up.
void AddCut(const v1::Length& amount, FieldPath at, double& sum, double& plus_minus, FieldPath& sum_at) {
  const auto length = LengthOf(amount);
  if (!length || length->meters() < 0) return;
  sum += length->meters();
  plus_minus = std::hypot(plus_minus, PlusMinusMeters(amount).value_or(0));
  sum_at = std::move(at);
}

using CutsByEnd = std::unordered_map<std::string, std::pair<CutSums, CutSums>>;  // section id: butt, tip

CutsByEnd CollectCuts(const Resolver& r) {
  CutsByEnd cuts;
  const auto end_of = [&cuts](const std::string& section, v1::End::Value end) -> CutSums& {
    auto& ends = cuts[section];
    return end == v1::End::TIP ? ends.second : ends.first;
  };
  for (int i = 0; i < r.design.blank().cuts_size(); ++i) {
    const v1::PlannedCut& cut = r.design.blank().cuts(i);
    CutSums& sums = end_of(cut.section(), cut.at_end());
    AddCut(cut.amount(), FieldPath().Field("blank").Field("cuts").Item("", i), sums.planned_m,
           sums.planned_plus_minus_m, sums.planned_at);
  }
  for (const auto& logged : r.log.cuts) {
    CutSums& sums = end_of(logged.entry->section(), logged.entry->at_end());
    AddCut(logged.entry->amount(), logged.at, sums.done_m, sums.done_plus_minus_m, sums.done_at);
  }
  return cuts;
}

void ReportPlanClosed(Resolver& r, const CutSums& sums) {
  Finding finding = MakeFinding(
      kPlanClosed, sums.planned_at,
      absl::StrFormat("%.1f mm are planned to come off the butt, and it was glued in with %.1f mm off", sums.planned_m * 1000,
                      sums.done_m * 1000),
      {{"planned_mm", sums.planned_m * 1000}, {"done_mm", sums.done_m * 1000}});
  if (!sums.done_at.empty()) finding.related.push_back(sums.done_at);
  r.rod.findings.push_back(std::move(finding));
}

// The larger of plan and log holds: a plan may not be done yet, and what is off stays off. Of an end that is `closed` what
// is done holds.
EndCut Decide(Resolver& r, const CutSums& sums, bool closed) {
  constexpr double kSame = 1e-9;  // metres
  const bool beyond = sums.planned_m > sums.done_m + kSame;
  if (closed && beyond) ReportPlanClosed(r, sums);
  const bool done = closed || !beyond;
  EndCut cut;
  cut.amount = Length::Meters(done ? sums.done_m : sums.planned_m);
  cut.done = Length::Meters(sums.done_m);
  cut.plus_minus_m = done ? sums.done_plus_minus_m : sums.planned_plus_minus_m;
  cut.at = done && !sums.done_at.empty() ? sums.done_at : sums.planned_at;
  if (sums.planned_m > 0 && sums.done_m > sums.planned_m + kSame) {
    Finding finding = MakeFinding(
        kCutBeyondPlan, sums.done_at,
        absl::StrFormat("%.1f mm were planned to come off, %.1f mm came off", sums.planned_m * 1000, sums.done_m * 1000),
        {{"planned_mm", sums.planned_m * 1000}, {"done_mm", sums.done_m * 1000}});
    finding.related.push_back(sums.planned_at);
    r.rod.findings.push_back(std::move(finding));
  }
  return cut;
}

void WorkOutWhatIsLeft(Resolver& r, Section& section) {
  const auto length = Positive(section.length);
  if (!length || !r.log.not_understood.empty()) return;
  const auto off = [&r](const EndCut& cut) {
    return r.rod.inputs.Add(cut.amount.meters(), cut.plus_minus_m.value_or(0), cut.at.ToString());
  };
  const Uncertain from = off(section.cut_butt);
  const Uncertain off_tip = off(section.cut_tip);
  const Uncertain to = r.Input(*section.length) - off_tip;
  if (from.value() < to.value()) {
    section.from_m = from;
    section.to_m = to;
    return;
  }
  const double cut_mm = (from + off_tip).value() * 1000, more_mm = cut_mm - length->mm();
  Finding finding = MakeFinding(
      kNothingLeft, section.at,
      absl::StrFormat("the cuts take %.1f mm off a section of %.1f mm: %.1f mm more than there is", cut_mm, length->mm(),
                      more_mm),
      {{"cut_mm", cut_mm}, {"length_mm", length->mm()}, {"more_mm", more_mm}});
  for (const EndCut* cut : {&section.cut_butt, &section.cut_tip}) {
    if (!cut->at.empty()) finding.related.push_back(cut->at);
  }
  r.rod.findings.push_back(std::move(finding));
}

void ReadBlankFigures(Resolver& r) {
  const v1::Blank& from = r.design.blank();
  Blank& blank = r.rod.blank;
  blank.at = FieldPath().Field("blank");
  blank.mass = ReadMass(from.mass(), blank.at, "mass");
  blank.rated_lift_n = ReadForce(from.rated_lift(), blank.at, "rated_lift");
  const auto newtons = [&](const v1::Force& force) -> std::optional<double> {
    const auto known = ReadForce(force, blank.at, "rated_line");
    return known ? std::optional<double>(known->value) : std::nullopt;
  };
  const auto mass = [&](const v1::Mass& m) -> std::optional<Mass> {
    const auto known = ReadMass(m, blank.at, "rated_lure");
    return known ? std::optional<Mass>(known->value) : std::nullopt;
  };
  blank.rated_line_min_n = newtons(from.rated_line().min());
  blank.rated_line_max_n = newtons(from.rated_line().max());
  blank.rated_lure_min = mass(from.rated_lure().min());
  blank.rated_lure_max = mass(from.rated_lure().max());
}

}  // namespace

void ResolveSections(Resolver& r) {
  ReadBlankFigures(r);
  Blank& blank = r.rod.blank;
  if (!WithinLimit(r, blank.at.Field("sections"), r.design.blank().sections_size(), kMostSections, "sections")) return;
  std::unordered_map<std::string, int> by_id;
  for (int i = 0; i < r.design.blank().sections_size(); ++i) {
    blank.sections.push_back(ReadSection(r, r.design.blank().sections(i), i));
    if (!blank.sections.back().id.empty()) by_id.emplace(blank.sections.back().id, i);
  }
  for (const auto& logged : r.log.calipered) {
    const auto found = by_id.find(logged.entry->section());
    if (found != by_id.end()) ApplyCalipered(r, logged, blank.sections[found->second]);
  }
  const CutsByEnd cuts = CollectCuts(r);
  for (Section& section : blank.sections) {
    if (const auto found = cuts.find(section.id); found != cuts.end() && !section.id.empty()) {
      const bool butt = section.assembled() && blank.assembled.empty();
      section.cut_butt = Decide(r, found->second.first, butt && r.host_glued);
      section.cut_tip = Decide(r, found->second.second, false);
    }
    WorkOutWhatIsLeft(r, section);
    if (section.assembled()) blank.assembled.push_back(section.index);
  }
}

}  // namespace withy
