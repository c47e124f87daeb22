#include "withy/review/placement.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "answers.h"
#include "bench_cuts.h"
#include "figures.h"
#include "report_parts.h"
#include "report_placement.h"
#include "withy/findings/nearest_name.h"
#include "withy/guides/train_stock.h"
#include "withy/review/length_units.h"
#include "withy/rod/resolve.h"

namespace withy {
namespace {

constexpr double kEighthMm = 25.4 / 8,
                 kTwoMm = 2;  // what guides are rounded to at the bench (common practice, no source)
constexpr double kLeastGridMm = 0.1, kMostGridMm = 50;

std::string WrongStock(const StockOfModel& stock, const v1::Design& design) {
  std::vector<std::string_view> models;
  for (const v1::GuideModel& model : design.guide_models()) models.push_back(model.id());
  if (std::find(models.begin(), models.end(), stock.model) == models.end()) {
    const std::string nearest(NearestName(stock.model, models));
    return absl::StrCat("the design has no guide model '", stock.model, "'",
                        nearest.empty() ? "" : absl::StrCat(", did you mean '", nearest, "'?"));
  }
  return stock.count > 0 ? "" : absl::StrCat("of '", stock.model, "' there are none: leave it out");
}

std::string TooMany(int guides) {
  return absl::StrFormat("%d guides: at most %d are placed", guides, kMostPlaced);
}

int GuidesWanted(const PlacementOptions& options, const v1::Design& design) {
  return options.count > 0 ? options.count : design.guides_size();
}

// One guide of each model, resolved.
std::vector<StockModel> StockOf(const Document& document, const std::vector<StockOfModel>& stock) {
  Document models = document;
  models.design.clear_guides();
  for (const StockOfModel& of : stock) models.design.add_guides()->set_model(of.model);
  const Rod rod = Resolve(models);
  std::vector<StockModel> resolved;
  for (std::size_t i = 0; i < rod.guides.size(); ++i) resolved.push_back({rod.guides[i], stock[i].count});
  return resolved;
}

// The last guides before the tip-top left out, or the last one again so many times, without places of their own.
void TakeCount(int count, Rod& rod) {
  const Guide last = rod.guides.empty() ? Guide() : rod.guides.back();
  const auto had = static_cast<int>(rod.guides.size());
  rod.guides.resize(static_cast<std::size_t>(count), last);
  for (int i = had; i < count; ++i) {
    rod.guides[i].id = absl::StrCat("new-", i - had + 1);
    rod.guides[i].from_tip.reset();
    rod.guides[i].ring = Along();
    rod.guides[i].locked = false;
  }
}

// Guides, models and places of `rod` in the design, for what a whole review says of it.
Document WithTrainOf(const Document& document, const Rod& rod, const TrainPlan& plan, const Layout& layout) {
  Document with = document;
  for (std::size_t k = 0; k < plan.guides.size(); ++k) {
    const Guide& guide = rod.guides[plan.guides[k]];
    for (v1::Guide& to : *with.design.mutable_guides()) {
      if (to.id() != guide.id) continue;
      to.set_model(guide.model);
      to.mutable_from_tip()->set_mm(FromTip(plan, layout.s_m[k]) * kMm);
    }
  }
  return with;
}

class Work {
 public:
  Work(const Document& document, const PlacementOptions& options)
      : document_(document), options_(options), grid_m_(PlacementGridMm(document.design, options) / kMm) {
    train_.as_designed = Resolve(document);
    train_.rod = train_.as_designed;
    answers_ = ComputeAnswers(train_.as_designed, options.practices);
    wishes_ = {.gaps_never_grow = !options.gaps_may_grow, .practice = answers_.guides.practice};
  }

  v1::PlacementReport Run() {
    if (!train_.rod.not_understood.empty()) {
      return CannotTell(
          absl::StrCat("an entry of the log is not understood: ", train_.rod.not_understood.front().ToString()));
    }
    if (const int wanted = GuidesWanted(options_, document_.design); wanted > kMostPlaced) {
      return CannotTell(TooMany(wanted));
    }
    if (const int written = document_.design.load_cases_size(); written > 0 && train_.rod.load_cases.empty()) {
      return CannotTell(absl::StrFormat("%d load cases are too many to be read: correct load_cases", written));
    }
    if (options_.count > 0) TakeCount(options_.count, train_.rod);
    absl::StatusOr<TrainPlan> plan = PlanTrain(train_.rod, answers_.bending, wishes_);
    std::string choice;
    if (plan.ok() && !options_.stock.empty()) {
      const absl::StatusOr<StockChoice> chosen =
          ChooseFromStock(train_.rod, *plan, wishes_.practice, StockOf(document_, options_.stock));
      if (!chosen.ok()) return CannotTell(std::string(chosen.status().message()));
      train_.rod.guides = chosen->guides;
      choice = chosen->note;
      plan = PlanTrain(train_.rod, answers_.bending, wishes_);
    }
    if (!plan.ok()) return CannotTell(std::string(plan.status().message()));
    train_.proposal = ProposeTrain(train_.rod, *plan, {.grid_m = grid_m_});
    JudgeNow();
    NoteCuts();
    if (!choice.empty()) Note(choice);
    if (!choice.empty() && train_.proposal.proposed) NoteFrequency();
    if (train_.rod.guides.size() > train_.as_designed.guides.size()) {
      Note("New guides are taken like the last one before the tip-top.");
    }
    v1::PlacementReport report;
    ReportPlacement(train_, grid_m_, report);
    Draw(report);
    return report;
  }

 private:
  v1::PlacementReport CannotTell(std::string why) const {
    v1::PlacementReport report;
    report.set_state("cannot tell");
    report.set_why(std::move(why));
    report.set_gaps_never_grow(wishes_.gaps_never_grow);
    report.set_grid_mm(grid_m_ * kMm);
    return report;
  }

  void Note(std::string note) { train_.proposal.plan.notes.push_back(std::move(note)); }

  // The design's own train under the same loads.
  void JudgeNow() {
    absl::StatusOr<TrainPlan> plan = PlanTrain(train_.as_designed, answers_.bending, wishes_);
    if (!plan.ok()) return;
    train_.plan_as_designed = *std::move(plan);
    train_.plan_as_designed.problem.cases = train_.proposal.plan.problem.cases;
    train_.now = JudgeAsItIs(train_.as_designed, train_.plan_as_designed);
  }

  void NoteCuts() {
    v1::FitReport fit;
    ReportCutPlan(train_.as_designed, answers_.fit, fit);
    if (!CutsAreToCome(fit.cut_plan())) return;
    Note("Cuts of the blank are to come: the places are for the rod before them. Ask again after the last dry fit.");
  }

  void NoteFrequency() {
    const TrainProposal& proposal = train_.proposal;
    const Rod rod = Resolve(WithTrainOf(document_, train_.rod, proposal.plan, proposal.proposed->layout));
    const Answers after = ComputeAnswers(rod, options_.practices);
    const auto hz = [](const Answers& answers) {
      const auto& finished = answers.bending.finished;
      return finished && finished->first_frequency_hz ? std::optional(finished->first_frequency_hz->value())
                                                      : std::nullopt;
    };
    if (hz(answers_) && hz(after)) {
      Note(absl::StrFormat("First frequency of the finished rod: %.3f Hz with the train chosen, %.3f Hz as it is.",
                           *hz(after), *hz(answers_)));
    } else {
      Note("The first frequency of the finished rod cannot be told: the train was chosen by its masses alone.");
    }
  }

  // Rod and line under each load, as it is and as proposed: of the rod with the plan's loads, held as the plan holds
  // it.
  void Draw(v1::PlacementReport& report) const {
    const auto& proposed = train_.proposal.proposed;
    if (train_.now) DrawLayout(train_.as_designed, train_.plan_as_designed, train_.now->layout, *report.mutable_now());
    if (proposed) DrawLayout(train_.rod, train_.proposal.plan, proposed->layout, *report.mutable_proposed());
  }

  void DrawLayout(Rod rod, const TrainPlan& plan, const Layout& layout, v1::GuideLayout& to) const {
    rod.load_cases.clear();
    rod.static_tests.clear();
    for (const TrainLoad& load : plan.loads) {
      rod.load_cases.push_back(load.as_load_case);
      rod.load_cases.back().clamp =
          Known<Length>{Length::Meters(plan.clamp_m), std::nullopt, Source::kComputed, load.as_load_case.at};
    }
    for (std::size_t k = 0; k < plan.guides.size(); ++k) {
      Guide& guide = rod.guides[plan.guides[k]];
      guide.from_tip =
          Known<Length>{Length::Meters(FromTip(plan, layout.s_m[k])), std::nullopt, Source::kComputed, guide.at};
      guide.ring.from_butt_m = Uncertain(plan.clamp_m + layout.s_m[k]);
    }
    Inputs inputs = answers_.inputs;
    v1::LineLoadReport drawn;
    ReportLineLoad(rod, ComputeLineLoad(rod, answers_.bending, inputs), drawn);
    to.mutable_cases()->Swap(drawn.mutable_cases());
  }

  const Document& document_;
  const PlacementOptions& options_;
  const double grid_m_;
  PlacedTrain train_;
  Answers answers_;
  TrainWishes wishes_;
};

}  // namespace

double PlacementGridMm(const v1::Design& design, const PlacementOptions& options) {
  if (options.grid_mm) return *options.grid_mm;
  return UnitsOf(design) == LengthUnits::kInch ? kEighthMm : kTwoMm;
}

std::string WhatIsWrongWith(const PlacementOptions& options, const v1::Design& design) {
  const double grid_mm = PlacementGridMm(design, options);
  if (!(grid_mm >= kLeastGridMm && grid_mm <= kMostGridMm)) {
    return absl::StrFormat("a grid of %g mm: from %g to %g mm", grid_mm, kLeastGridMm, kMostGridMm);
  }
  if (options.count > kMostPlaced) return TooMany(options.count);
  const int wanted = GuidesWanted(options, design);
  int in_stock = 0;
  std::set<std::string> named;
  for (const StockOfModel& stock : options.stock) {
    if (!named.insert(stock.model).second) return absl::StrCat("'", stock.model, "' is named twice: add its counts");
    if (const std::string wrong = WrongStock(stock, design); !wrong.empty()) return wrong;
    in_stock += stock.count;
  }
  int staying = 0;
  for (const v1::Guide& guide : design.guides()) staying += guide.locked();
  if (!options.stock.empty() && in_stock + staying < wanted) {
    return absl::StrFormat("%d guides in stock are too few for %d places", in_stock, wanted - staying);
  }
  return "";
}

v1::PlacementReport PlacementOf(const Document& document, const PlacementOptions& options) {
  return Work(document, options).Run();
}

void AddPlacement(const Document& document, const PlacementOptions& options, v1::Report& report) {
  *report.mutable_placement() = PlacementOf(document, options);
}

}  // namespace withy
