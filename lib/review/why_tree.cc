#include "why_tree.h"

#include <algorithm>
#include <cmath>
#include <deque>
#include <functional>
#include <unordered_map>
#include <utility>

#include "declared_path.h"
#include "figure_select.h"
#include "figure_value.h"
#include "item_names.h"
#include "withy/document/path_cursor.h"
#include "withy/review/why.h"
#include "written_text.h"

namespace withy {
namespace {

// Of a list that goes into one figure as many as fit a screen; the rest is counted.
constexpr std::size_t kShown = 5;

// An input is named by the field it comes from and, in brackets, what of it is meant.
struct InputName {
  std::string at, aspect;
};
InputName NameOf(const std::string& name) {
  const std::size_t bracket = name.ends_with(')') ? name.rfind(" (") : std::string::npos;
  if (bracket == std::string::npos) return {name, ""};
  return {name.substr(0, bracket), name.substr(bracket + 2, name.size() - bracket - 3)};
}

const google::protobuf::Descriptor& ReportType() {
  return *v1::Report::descriptor();
}

// Whether the item that a figure stands in has no id of its own.
bool IsByNumber(const FieldPath& path) {
  for (auto step = path.steps().rbegin(); step != path.steps().rend(); ++step) {
    if (step->field.empty()) return step->id.empty();
  }
  return false;
}

bool IsFigurePath(std::string_view declared) {
  return FindFigure(Plain(declared, ReportType())) != nullptr;
}

bool IsInputOf(const v1::WhyStep& step, const std::string& path) {
  return std::any_of(step.inputs().begin(), step.inputs().end(),
                     [&path](const v1::WhyStep& input) { return input.path() == path; });
}

const v1::Assumption* AssumptionAt(const v1::Report& report, const std::string& path) {
  for (const v1::Assumption& assumption : report.assumptions()) {
    if (assumption.at() == path) return &assumption;
  }
  return nullptr;
}

}  // namespace

const Figure* FindFigure(std::string_view name) {
  static const auto* const by_name = [] {
    auto* map = new std::unordered_map<std::string_view, const Figure*>;
    for (const Figure& figure : Figures()) map->emplace(figure.name, &figure);
    return map;
  }();
  const auto found = by_name->find(name);
  return found == by_name->end() ? nullptr : found->second;
}

WhyTree::WhyTree(const Document& document, const v1::Report& report, const Trace& trace)
    : document_(document), report_(report), trace_(trace) {
  for (const v1::Unknown& unknown : report.unknown()) {
    unknown_.emplace(unknown.figure(), unknown.measure());
    const absl::StatusOr<FieldPath> figure = FieldPath::Parse(unknown.figure());
    if (figure.ok()) unknown_kinds_.emplace(DeclaredName(*figure, ReportType()), unknown.measure());
  }
}

v1::WhyStep WhyTree::Glance(const FieldPath& path) const {
  v1::WhyStep step;
  step.set_path(path.ToString());
  if (IsByNumber(path)) step.set_about(FigureContext(report_, path).Subject().ToString());
  FigureValue figure = FigureAt(report_, path);
  if (figure.value && !figure.plus_minus) figure.plus_minus = trace_.PlusMinus(path);
  if (figure.value && std::isfinite(*figure.value)) step.set_value(*figure.value);
  if (figure.plus_minus && std::isfinite(*figure.plus_minus)) step.set_plus_minus(*figure.plus_minus);
  if (figure.value) step.set_unit(figure.unit);
  if (figure.told) {
    step.set_text(ReadableFigure(figure));
  } else {
    step.set_measure(MeasureFor(path));
  }
  return step;
}

v1::WhyStep WhyTree::Open(const FieldPath& path, int depth) {
  v1::WhyStep step = Glance(path);
  FillShares(path, step);
  opened_.insert(step.path());
  AddInputs(path, depth, step);
  return step;
}

void WhyTree::FillShares(const FieldPath& path, v1::WhyStep& step) {
  const std::map<std::string, double> by_name = trace_.SharesOf(path);
  std::vector<std::pair<std::string, double>> sorted(by_name.begin(), by_name.end());
  std::stable_sort(sorted.begin(), sorted.end(), [](const auto& a, const auto& b) { return a.second > b.second; });
  for (const auto& [full, of_variance] : sorted) {
    const InputName name = NameOf(full);
    shares_[name.at] += of_variance;
    v1::WhyShare& share = *step.add_shares();
    share.set_at(name.at);
    share.set_aspect(name.aspect);
    share.set_of_variance(of_variance);
    const absl::StatusOr<FieldPath> at = FieldPath::Parse(name.at);
    const Written written = at.ok() ? WrittenAt(document_, *at) : Written();
    share.set_text(written.text);
    share.set_source(written.text.empty() ? "assumed" : written.source);
    share.set_line(static_cast<std::uint32_t>(written.line));
  }
}

void WhyTree::AddInputs(const FieldPath& path, int depth, v1::WhyStep& step) {
  const Figure* figure = FindFigure(DeclaredName(path, ReportType()));
  if (figure == nullptr) return;
  if (depth <= 0) {
    step.set_deeper(HasInputs(path));
    return;
  }
  step.set_formula(std::string(figure->formula));
  step.set_source(std::string(figure->source));
  for (const std::string_view declared : figure->from) AddDeclared(declared, path, depth, step);
}

// What a declaration names, figures or fields of the design.
WhyTree::Found WhyTree::Find(std::string_view declared, const FigureContext& context) const {
  Found found;
  for (const std::string_view alternative : AlternativesOf(declared)) {
    const bool figures = IsFigurePath(alternative);
    const google::protobuf::Message& root =
        figures ? static_cast<const google::protobuf::Message&>(report_) : document_.design;
    Selected selected = Select(alternative, root, context);
    if (!figures) KeepWhatCounts(selected.there);
    found.unset.insert(found.unset.end(), selected.unset.begin(), selected.unset.end());
    found.figures = figures;
    found.there = std::move(selected.there);
    if (!found.there.empty()) break;
  }
  return found;
}

bool WhyTree::HasInputs(const FieldPath& path) const {
  const Figure* figure = FindFigure(DeclaredName(path, ReportType()));
  const FigureContext context(report_, path);
  return std::any_of(figure->from.begin(), figure->from.end(),
                     [&](std::string_view declared) { return !Find(declared, context).there.empty(); });
}

void WhyTree::AddDeclared(std::string_view declared, const FieldPath& path, int depth, v1::WhyStep& step) {
  Found found = Find(declared, FigureContext(report_, path));
  // What keeps a figure from being told is shown; what was not needed for it is not.
  if (found.figures && step.text().empty() && found.there.empty()) found.there = found.unset;
  std::erase_if(found.there, [&step](const FieldPath& input) { return IsInputOf(step, input.ToString()); });
  const std::size_t all = found.there.size();
  for (const FieldPath& input : Weightiest(std::move(found.there), found.figures)) {
    if (found.figures) {
      AddFigure(input, depth - 1, step);
    } else {
      AddWritten(input, step);
    }
  }
  if (all > kShown) step.mutable_inputs(step.inputs_size() - 1)->set_more(static_cast<std::uint32_t>(all - kShown));
  for (const FieldPath& input : found.unset) AddAssumed(input, step);
}

void WhyTree::AddFigure(const FieldPath& path, int depth, v1::WhyStep& step) {
  v1::WhyStep& input = *step.add_inputs();
  input = Glance(path);
  if (opened_.contains(input.path())) {
    input.set_repeated_above(true);
    return;
  }
  if (depth > 0) opened_.insert(input.path());
  AddInputs(path, depth, input);
}

void WhyTree::AddWritten(const FieldPath& path, v1::WhyStep& step) const {
  const Written written = WrittenAt(document_, path);
  if (written.text.empty()) return;
  v1::WhyStep& input = *step.add_inputs();
  input.set_path(path.ToString());
  input.set_written(true);
  input.set_text(written.text);
  input.set_source(written.source);
  input.set_line(static_cast<std::uint32_t>(written.line));
  if (const double share = ShareOf(input.path()); share > 0) input.set_share(share);
}

void WhyTree::AddAssumed(const FieldPath& path, v1::WhyStep& step) const {
  const v1::Assumption* assumption = AssumptionAt(report_, path.ToString());
  if (assumption == nullptr || IsInputOf(step, assumption->at())) return;
  v1::WhyStep& input = *step.add_inputs();
  input.set_path(assumption->at());
  input.set_written(true);
  input.set_text(assumption->used());
  input.set_formula(assumption->why());
  input.set_source("assumed");
  if (const double share = ShareOf(input.path()); share > 0) input.set_share(share);
}

// Of the field itself and of all that it holds.
double WhyTree::ShareOf(const std::string& path) const {
  double sum = 0;
  for (auto share = shares_.lower_bound(path); share != shares_.end() && share->first.starts_with(path); ++share) {
    const bool inside =
        share->first.size() == path.size() || share->first[path.size()] == '.' || share->first[path.size()] == '[';
    if (inside) sum += share->second;
  }
  return sum;
}

// Of readings in the log, those that the figure asked for rests on: later ones have taken the place of the others. A
// weighing always has an uncertainty, so that one without a share was not used.
void WhyTree::KeepWhatCounts(std::vector<FieldPath>& paths) const {
  const auto counts = [this](const FieldPath& path) { return ShareOf(path.ToString()) > 0; };
  if (paths.empty() || shares_.empty() || paths.front().steps().front().field != "log") return;
  const bool weighings = paths.front().ToString().find("].weighed.") != std::string::npos;
  if (weighings || std::any_of(paths.begin(), paths.end(), counts)) std::erase_if(paths, std::not_fn(counts));
}

// Those with the largest share, else with the largest value, in their own order.
std::vector<FieldPath> WhyTree::Weightiest(std::vector<FieldPath> paths, bool figures) const {
  if (paths.size() <= kShown) return paths;
  std::vector<std::pair<double, std::size_t>> weights;
  for (std::size_t i = 0; i < paths.size(); ++i) {
    const double weight =
        figures ? std::abs(FigureAt(report_, paths[i]).value.value_or(0)) : ShareOf(paths[i].ToString());
    weights.emplace_back(-weight, i);
  }
  std::stable_sort(weights.begin(), weights.end());
  std::vector<FieldPath> shown;
  for (std::size_t i = 0; i < kShown; ++i) shown.push_back(paths[weights[i].second]);
  return shown;
}

// What the report says of it, else of the nearest figure it is worked out from.
std::string WhyTree::MeasureFor(const FieldPath& path) const {
  // Of it, or of what it is part of.
  for (std::string whole = path.ToString(); !whole.empty();) {
    if (const auto found = unknown_.find(whole); found != unknown_.end()) return found->second;
    const std::size_t dot = whole.rfind('.');
    whole.resize(dot == std::string::npos ? 0 : dot);
  }
  const std::string name = DeclaredName(path, ReportType());
  std::deque<std::string> next = {name};
  std::set<std::string> seen;
  while (!next.empty()) {
    const std::string here = next.front();
    next.pop_front();
    if (!seen.insert(here).second) continue;
    // An unknown of another item of the same list says nothing of this one.
    if (const auto found = unknown_kinds_.find(here); found != unknown_kinds_.end() && here != name)
      return found->second;
    const Figure* figure = FindFigure(here);
    if (figure == nullptr) continue;
    for (const std::string_view declared : figure->from) {
      for (const std::string_view from : AlternativesOf(declared)) next.push_back(Plain(from, ReportType()));
    }
  }
  return "";
}

}  // namespace withy
