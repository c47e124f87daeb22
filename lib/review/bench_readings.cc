#include "withy/review/bench_readings.h"

#include <algorithm>
#include <cmath>
#include <string_view>

#include "absl/strings/str_cat.h"
#include "bench_cuts.h"
#include "bench_text.h"
#include "figure_text.h"
#include "static_test_readings.h"
#include "withy/findings/nearest_name.h"
#include "withy/review/trim_text.h"
#include "withy/units/format.h"
#include "withy/units/quantity.h"

namespace withy {
namespace {

constexpr double kLargestFactor = 1.5;  // beyond it a cut is taken for a typing error
constexpr double kLeastCut_mm = 0.05;   // a file takes no less
constexpr double kWorstReading_mm = 25.4;  // of a tape
constexpr double kReelNear = 0.25, kReelFar = 0.6;  // of the reel's mass: it was on, or off

const v1::ClosedFact* FindClosed(const v1::Report& report, std::string_view kind, const std::string& what) {
  for (const v1::ClosedFact& fact : report.closed()) {
    if (fact.kind() == kind && !what.empty() && fact.what() == what) return &fact;
  }
  return nullptr;
}

double DoneMm(const v1::Report& report, const std::string& section, std::string_view end) {
  double done = 0;
  for (const v1::ClosedFact& fact : report.closed()) {
    if (fact.kind() == "cut" && fact.what() == section && fact.at_end() == end) done = fact.amount_mm();
  }
  return done;
}

double PlannedButNotDone(const v1::Report& report) {
  double open = 0;
  for (const v1::SectionReport& section : report.sections().sections()) {
    open += section.cut_butt_mm() - DoneMm(report, section.id(), "butt");
    open += section.cut_tip_mm() - DoneMm(report, section.id(), "tip");
  }
  return open;
}

std::optional<double> LengthOfPart(const v1::Report& report, const std::string& id) {
  for (const v1::FittedPart& part : report.fit().parts()) {
    if (part.id() == id) return WITHY_FIGURE(part, length_mm);
  }
  return std::nullopt;
}

std::vector<std::string> PartsOf(const v1::Design& design) {
  std::vector<std::string> ids;
  for (const v1::Part& part : design.handle().parts()) ids.push_back(part.id());
  return ids;
}

std::vector<std::string> GuidesOf(const v1::Design& design) {
  std::vector<std::string> ids;
  for (const v1::Guide& guide : design.guides()) ids.push_back(guide.id());
  return ids;
}

// What can be missing on a rod that is weighed.
std::vector<std::string> ThingsOn(const v1::Design& design) {
  std::vector<std::string> ids = PartsOf(design);
  for (const v1::Part& part : design.handle().parts()) {
    for (const v1::Arbor& arbor : part.arbors()) ids.push_back(arbor.id());
  }
  for (const v1::Guide& guide : design.guides()) ids.push_back(guide.id());
  for (const v1::Wrap& wrap : design.wraps()) ids.push_back(wrap.id());
  for (const v1::Finish& finish : design.finishes()) ids.push_back(finish.id());
  ids.push_back(design.tip_top().id());
  return ids;
}

class Judge {
 public:
  Judge(const v1::Design& design, const v1::Report& report, const BenchReadings& readings, LengthUnits units)
      : design_(design), report_(report), readings_(readings), units_(units) {}

  std::vector<Refusal> Run() {
    Positive(readings_.cut_mm, "a cut");
    Positive(readings_.tip_cut_mm, "a cut");
    Positive(readings_.dry_fit_mm, "a dry fit");
    Positive(readings_.mass_g, "a mass");
    Positive(readings_.balance_mm, "a balance point");
    if (!refusals_.empty()) return refusals_;
    Accuracy();
    if (readings_.cut_mm) ButtCut(*readings_.cut_mm);
    if (readings_.tip_cut_mm) TipCut(*readings_.tip_cut_mm);
    if (readings_.dry_fit_mm) DryFit(*readings_.dry_fit_mm);
    if (readings_.mass_g) WholeMass(*readings_.mass_g);
    if (readings_.balance_mm) BalancePoint(*readings_.balance_mm);
    if (readings_.weights) Counterweights(*readings_.weights);
    if (readings_.potted) Potting();
    for (const std::string& id : readings_.missing) IsThere(id, ThingsOn(design_));
    for (Refusal& refusal : RefusalsOfStaticTest(design_, report_, readings_, units_)) refusals_.push_back(std::move(refusal));
    for (const std::string& id : readings_.touched) IsThere(id, GuidesOf(design_));
    if (!readings_.corrects.empty()) Correction();
    return refusals_;
  }

 private:
  void Refuse(std::string message, std::string help, bool may_be_forced = true) {
    refusals_.push_back({std::move(message), std::move(help), may_be_forced});
  }
  std::string Mm(double mm) const { return BenchText(mm, units_); }

  void Positive(std::optional<double> number, std::string_view what) {
    if (number && !(*number > 0 && std::isfinite(*number))) {
      Refuse(absl::StrCat(std::string(what), " is a number above zero"), "type what the tape or the scales said",
             /*may_be_forced=*/false);
    }
  }

  void IsThere(const std::string& id, const std::vector<std::string>& ids) {
    if (std::find(ids.begin(), ids.end(), id) != ids.end() && !id.empty()) return;
    const std::string_view nearest = NearestName(id, {ids.begin(), ids.end()});
    Refuse(absl::StrCat("the design has no such thing as '", id, "'"),
           nearest.empty() ? "name it as the design does" : absl::StrCat("is '", std::string(nearest), "' meant?"),
           /*may_be_forced=*/false);
  }

  void Glued(const std::string& id, std::string_view then) {
    if (const v1::ClosedFact* fact = FindClosed(report_, "glued", id)) {
      Refuse(
          absl::StrCat(id, " is glued (", EntryOf(fact->at()), "): ", std::string(then)),
          "where that entry is wrong, correct it first; where it was taken off again, the log says so with 'removed'");
    }
  }

  void Accuracy() {
    if (readings_.plus_minus_mm.value_or(0) <= kWorstReading_mm) return;
    Refuse(absl::StrCat("a length read to ", Mm(*readings_.plus_minus_mm), " decides nothing"),
           "measure again; a tape laid along the rod is good to 1 mm or 1/16 in");
  }

  void ButtCut(double cut_mm) {
    if (!report_.fit().cut_plan().host().empty()) {
      Glued(report_.fit().cut_plan().host(), "nothing more comes off the blank's butt");
    }
    AmountOfCut(cut_mm);
    const std::vector<BenchCut> cuts = BenchCuts(report_.fit().cut_plan(), units_, CutLimitsOf(design_));
    const std::string times = cuts.empty() ? "" : TimesOff(cut_mm, cuts.front().cut.take_mm(), 25.4);
    if (!times.empty()) {
      Refuse(absl::StrCat("a cut of ", Mm(cut_mm), " is ", times, " the ", Mm(cuts.front().cut.take_mm()), " planned"),
             "look at the unit and at the decimal point");
    }
  }

  void TipCut(double cut_mm) {
    Glued(design_.tip_top().id(), "nothing more comes off the blank's tip");
    AmountOfCut(cut_mm);
  }

  void AmountOfCut(double cut_mm) {
    if (cut_mm < kLeastCut_mm) {
      Refuse(absl::StrCat("a cut of ", FormatShortest(cut_mm), " mm is less than a saw or a file takes"),
             "look at the unit and at the decimal point", /*may_be_forced=*/false);
      return;
    }
    const std::optional<double> left = BlankLeftMm(report_);
    if (left && cut_mm >= *left) {
      Refuse(absl::StrCat("a cut of ", Mm(cut_mm), " is more than is left of the blank: ", Mm(*left)),
             "look at the unit; earlier cuts stand in the log", /*may_be_forced=*/false);
      return;
    }
    const double largest = CutLimitsOf(design_).largest_mm;
    if (cut_mm > kLargestFactor * largest * (1 + 1e-9)) {
      const bool far = cut_mm > 10 * largest;  // inches typed for mm, more likely than a cut like that
      Refuse(
          absl::StrCat("a cut of ", Mm(cut_mm), " is more than 1.5 times the largest single cut, ", Mm(largest)),
          far ? absl::StrCat("was ", Mm(cut_mm / 25.4), " meant?")
              : "cut in stages with a dry fit after each; where it was cut like this, record it with --force, or set "
                "shop.largest_single_cut");
    }
  }

  // Between the blank alone, right at the mouth, and blank and part end to end.
  void DryFit(double read_mm) {
    IsThere(readings_.part, PartsOf(design_));
    Glued(readings_.part, "its blank cannot be tried on dry");
    std::optional<double> shortest = BlankLeftMm(report_);
    const std::optional<double> part = LengthOfPart(report_, readings_.part);
    if (!shortest) return;
    *shortest -= readings_.cut_mm.value_or(0) + readings_.tip_cut_mm.value_or(0);
    std::optional<double> longest = part ? std::optional<double>(*shortest + *part) : std::nullopt;
    const double slack = 0.002 * *shortest;  // of a tape measure, and of what is known of the blank
    const auto fits = [&](double mm) { return mm >= *shortest - slack && (!longest || mm <= *longest + slack); };
    if (fits(read_mm)) return;
    std::string help = "measure from the part's own butt end (no cap) to the blank's tip end (no tip-top)";
    for (double factor : {25.4, 1 / 25.4, 10.0, 0.1}) {
      if (longest && fits(read_mm * factor)) help = absl::StrCat("was ", Mm(read_mm * factor), " meant? ", help);
    }
    if (read_mm < *shortest) {
      Refuse(absl::StrCat("a dry fit of ", Mm(read_mm), " is shorter than the blank that is left: ", Mm(*shortest)),
             help);
    } else {
      Refuse(absl::StrCat("a dry fit of ", Mm(read_mm), " is longer than blank and ", readings_.part,
                          " together: ", Mm(*longest)),
             help);
    }
  }

  void WholeMass(double mass_g) {
    const v1::BalanceReport& balance = report_.balance();
    const std::optional<double> expected =
        readings_.with_reel ? WITHY_FIGURE(balance, mass_with_reel_g) : WITHY_FIGURE(balance, mass_g);
    if (!expected || *expected <= 0) return;
    const std::optional<double> otherwise =
        readings_.with_reel ? WITHY_FIGURE(balance, mass_g) : WITHY_FIGURE(balance, mass_with_reel_g);
    if (otherwise && ReelForgotten(mass_g, *expected, *otherwise)) return;
    for (double factor : {kGramsPerOunce, 10.0}) {
      for (double times : {factor, 1 / factor}) {
        if (std::abs(mass_g * times / *expected - 1) > 0.15) continue;
        Refuse(absl::StrCat("the rod at ", FormatGrams(Mass::Grams(mass_g), 1), " is far from the ",
                            FormatGrams(Mass::Grams(*expected), 1), " that its parts come to; ",
                            FormatGrams(Mass::Grams(mass_g * times), 1), " would be near"),
               "look at the unit and at the decimal point");
        return;
      }
    }
  }

  // Near what the rod weighs the other way, and far from what it weighs this way.
  bool ReelForgotten(double mass_g, double expected_g, double otherwise_g) {
    const double reel_g = std::abs(otherwise_g - expected_g);
    if (std::abs(mass_g - otherwise_g) > kReelNear * reel_g || std::abs(mass_g - expected_g) < kReelFar * reel_g) {
      return false;
    }
    Refuse(absl::StrCat("the rod at ", FormatGrams(Mass::Grams(mass_g), 1), " is what it comes to ",
                        readings_.with_reel ? "without" : "with", " the reel, ",
                        FormatGrams(Mass::Grams(otherwise_g), 1), "; ", readings_.with_reel ? "with" : "without", " it, ",
                        FormatGrams(Mass::Grams(expected_g), 1)),
           readings_.with_reel ? "was the reel off? then leave out --with-reel" : "was the reel on? then add --with-reel");
    return true;
  }

  void BalancePoint(double balance_mm) {
    const std::optional<double> overall = WITHY_FIGURE(report_.fit(), overall_length_mm);
    if (overall && balance_mm > *overall) {
      Refuse(absl::StrCat("a balance point ", Mm(balance_mm), " from the butt end is off the rod, which is ",
                          Mm(*overall), " long"),
             "measure from the butt end to the edge it lies level on", /*may_be_forced=*/false);
    }
  }

  void Counterweights(std::uint32_t count) {
    const v1::CounterweightPlan& plan = report_.balance().counterweights();
    if (plan.has_fit() && count > plan.fit()) {
      Refuse(absl::StrCat(Counted(static_cast<int>(count), "counterweight"), ", and ", plan.fit(), " fit in ",
                          plan.part()),
             "count them again, or measure the cavity");
    }
  }

  void Potting() {
    if (const v1::ClosedFact* fact = FindClosed(report_, "potted", readings_.part)) {
      Refuse(absl::StrCat("counterweights are potted in ", readings_.part, " (", EntryOf(fact->at()), ")"),
             "where that entry is wrong, correct it; where more went in, record how many are in it now with --force");
    }
  }

  void Correction() {
    std::vector<std::string_view> ids;
    for (const v1::Entry& entry : design_.log()) {
      if (entry.has_correction() && entry.correction().entry() == readings_.corrects) {
        Refuse(absl::StrCat(readings_.corrects, " is corrected already, by ", entry.id()), "", /*may_be_forced=*/false);
        return;
      }
      if (!entry.id().empty()) ids.push_back(entry.id());
    }
    for (std::string_view id : ids) {
      if (id == readings_.corrects) return;
    }
    const std::string_view nearest = NearestName(readings_.corrects, ids);
    Refuse(
        absl::StrCat("the log has no entry ", readings_.corrects),
        nearest.empty() ? "entries with an id can be corrected" : absl::StrCat("is ", std::string(nearest), " meant?"),
        /*may_be_forced=*/false);
  }

  const v1::Design& design_;
  const v1::Report& report_;
  const BenchReadings& readings_;
  const LengthUnits units_;
  std::vector<Refusal> refusals_;
};

// Place in the log; -1 = none.
int PlaceInLog(const FieldPath& path) {
  const auto& steps = path.steps();
  return steps.size() >= 2 && steps[0].field == "log" ? steps[1].index : -1;
}

bool SpeaksOf(const Finding& finding, int first_new) {
  if (PlaceInLog(finding.at) >= first_new) return true;
  return std::any_of(finding.related.begin(), finding.related.end(),
                     [first_new](const FieldPath& path) { return PlaceInLog(path) >= first_new; });
}

// Of what was read or done, not of what is planned with it. The date is the clock's.
bool IsOfTheLog(const std::string& code) {
  return code.starts_with("rod/") || code == "balance/weighing-contradicts" || code == "line_load/static-test-differs" ||
         (code.starts_with("document/") && code != "document/log-order");
}

bool CutsOrTries(const v1::Design& design, int first_new) {
  for (int i = first_new; i < design.log_size(); ++i) {
    if (design.log(i).has_cut() || design.log(i).has_fit()) return true;
  }
  return false;
}

}  // namespace

std::optional<double> BlankLeftMm(const v1::Report& report) {
  if (!report.sections().has_blank_length_mm()) return std::nullopt;
  return report.sections().blank_length_mm() + PlannedButNotDone(report);
}

std::vector<Refusal> ContradictionsOf(const CheckedDesign& after, int first_new) {
  std::vector<Refusal> refusals;
  for (const Finding& finding : after.review.findings) {
    if (finding.severity < Severity::kWarning || !IsOfTheLog(finding.code)) continue;
    const bool of_new = SpeaksOf(finding, first_new);
    if (!of_new && !(finding.code == "rod/broken" && CutsOrTries(after.read.document->design, first_new))) continue;
    refusals.push_back({finding.message, finding.help, true});
  }
  return refusals;
}

std::vector<std::string> RemarksOn(const CheckedDesign& after, int first_new) {
  std::vector<std::string> remarks;
  for (const Finding& finding : after.review.findings) {
    if (finding.severity != Severity::kAdvice || !IsOfTheLog(finding.code) || PlaceInLog(finding.at) < first_new) continue;
    remarks.push_back(absl::StrCat(finding.message, ". ", finding.help));
  }
  return remarks;
}

std::vector<Refusal> RefusalsOf(const v1::Design& design, const v1::Report& report, const BenchReadings& readings,
                                LengthUnits units) {
  return Judge(design, report, readings, units).Run();
}

}  // namespace withy
