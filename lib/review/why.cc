#include "withy/review/why.h"

#include <algorithm>
#include <string>
#include <utility>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "answers.h"
#include "declared_path.h"
#include "figure_select.h"
#include "figure_value.h"
#include "item_names.h"
#include "trace.h"
#include "why_tree.h"
#include "withy/document/path_cursor.h"
#include "withy/findings/nearest_name.h"
#include "withy/rod/resolve.h"

namespace withy {
namespace {

using google::protobuf::FieldDescriptor;
using google::protobuf::Message;

// What has figures in it, and every figure.
std::vector<std::string> KnownNames() {
  std::vector<std::string> names;
  for (const Figure& figure : Figures()) {
    names.emplace_back(figure.name);
    for (std::size_t dot = figure.name.find('.'); dot != std::string_view::npos; dot = figure.name.find('.', dot + 1)) {
      std::string around(figure.name.substr(0, dot));
      if (around.ends_with("[]")) around.resize(around.size() - 2);
      if (std::find(names.begin(), names.end(), around) == names.end()) names.push_back(std::move(around));
    }
  }
  return names;
}

absl::Status NoSuchFigure(std::string_view typed, std::string_view declared) {
  const std::vector<std::string> names = KnownNames();
  const std::string_view nearest = NearestName(declared, std::vector<std::string_view>(names.begin(), names.end()));
  return absl::NotFoundError(
      absl::StrCat("the report has no figure '", std::string(typed), "'",
                   nearest.empty() ? "" : absl::StrCat(", did you mean '", std::string(nearest), "'?")));
}

// What an item without an id is about; empty = it does not say.
std::string SubjectOf(const Message& item) {
  for (const char* name : {"what", "part", "adhesive"}) {
    const FieldDescriptor* field = item.GetDescriptor()->FindFieldByName(name);
    if (field != nullptr && field->cpp_type() == FieldDescriptor::CPPTYPE_STRING) {
      return item.GetReflection()->GetString(item, field);
    }
  }
  return "";
}

std::string NameOf(const Message& item) {
  const std::string id = IdOf(item);
  return id.empty() ? SubjectOf(item) : id;
}

// The list at `list` has no item that `wanted` names last.
absl::Status NoSuchItem(const v1::Report& report, const FieldPath& list, const FieldPath& wanted) {
  constexpr int kShown = 12;
  PathCursor cursor(report);
  for (const FieldPath::Step& step : list.steps()) {
    if (!cursor.Advance(step)) break;
  }
  std::vector<std::string> ids;
  int items = 0;
  for (PathCursor item = cursor; item.Advance({"", "", items}) && item.message() != nullptr; item = cursor) {
    const std::string id = NameOf(*item.message());
    if (!id.empty() && std::find(ids.begin(), ids.end(), id) == ids.end()) ids.push_back(id);
    ++items;
  }
  std::string message = absl::StrCat("this report has no ", wanted.ToString(), "; ");
  const std::string_view nearest =
      NearestName(wanted.steps().back().id, std::vector<std::string_view>(ids.begin(), ids.end()));
  if (!nearest.empty()) return absl::NotFoundError(absl::StrCat(message, "did you mean '", std::string(nearest), "'?"));
  if (items == 0) return absl::NotFoundError(absl::StrCat(message, "the list is empty"));
  if (ids.empty()) return absl::NotFoundError(absl::StrCat(message, "it has items 0 to ", items - 1));
  const std::size_t more = ids.size() > kShown ? ids.size() - kShown : 0;
  ids.resize(ids.size() - more);
  return absl::NotFoundError(absl::StrCat(message, "there are ", absl::StrJoin(ids, ", "),
                                          more > 0 ? absl::StrCat(" and ", more, " more") : ""));
}

// All figures in a message, those of lists item by item.
void ListFigures(const Message& message, const FieldPath& path, std::vector<FieldPath>& figures) {
  const auto& type = *message.GetDescriptor();
  for (int i = 0; i < type.field_count(); ++i) {
    const FieldDescriptor& field = *type.field(i);
    const FieldPath here = path.Field(field.name());
    if (field.message_type() == nullptr) {
      if (FindFigure(DeclaredName(here, *v1::Report::descriptor())) != nullptr) figures.push_back(here);
    } else if (!field.is_repeated()) {
      if (message.GetReflection()->HasField(message, &field)) {
        ListFigures(message.GetReflection()->GetMessage(message, &field), here, figures);
      }
    } else {
      ItemNames names;
      for (int item = 0; item < message.GetReflection()->FieldSize(message, &field); ++item) {
        const Message& inner = message.GetReflection()->GetRepeatedMessage(message, &field, item);
        ListFigures(inner, here.Item(names.NameOf(inner), item), figures);
      }
    }
  }
}

// The figures in what stands at a path that is none itself.
std::vector<FieldPath> FiguresIn(const v1::Report& report, const FieldPath& path) {
  std::vector<FieldPath> all;
  ListFigures(report, FieldPath(), all);
  std::erase_if(all, [&path](const FieldPath& figure) { return !figure.IsWithin(path); });
  return all;
}

// An uncertainty is opened as the figure it belongs to.
FieldPath FigureOf(const FieldPath& path) {
  FieldPath plain;
  for (const FieldPath::Step& step : path.steps()) {
    plain = step.field.empty() ? std::move(plain).Item(step.id, step.index)
                               : std::move(plain).Field(WithoutPlusMinus(step.field));
  }
  return plain;
}

// Items of some lists have no id of their own: they go by what they are about, too, `bonding.joints[module]`.
FieldPath ByWhatItIsAbout(const FieldPath& path, const v1::Report& report) {
  PathCursor cursor(report);
  FieldPath found;
  for (const FieldPath::Step& step : path.steps()) {
    const PathCursor list = cursor;
    FieldPath::Step known = step;
    for (int i = 0; !cursor.Advance(known) && step.field.empty(); ++i) {
      PathCursor item = list;
      if (!item.Advance({"", "", i}) || item.message() == nullptr) break;
      if (!step.id.empty() && SubjectOf(*item.message()) == step.id) known = {"", "", i};
    }
    found = known.field.empty() ? std::move(found).Item(known.id, known.index) : std::move(found).Field(known.field);
  }
  return found;
}

// Whether each name of the path is there; if one is not, why.
absl::Status CheckThere(const v1::Report& report, const FieldPath& path, std::string_view typed) {
  PathCursor cursor(report);
  FieldPath so_far;
  const std::string declared = DeclaredName(path, *v1::Report::descriptor());
  for (const FieldPath::Step& step : path.steps()) {
    const bool item = step.field.empty();
    const FieldPath next = item ? so_far.Item(step.id, step.index) : so_far.Field(step.field);
    if (!cursor.Advance(step)) {
      const bool list = item && cursor.field() != nullptr && cursor.field()->is_repeated();
      const bool open_list = !item && cursor.field() != nullptr && cursor.field()->is_repeated() && cursor.index() < 0;
      if (open_list && FindFigure(declared) == nullptr && cursor.field()->message_type() != nullptr) {
        return absl::NotFoundError(absl::StrCat("'", std::string(typed), "': ", so_far.ToString(),
                                                " is a list; name an item: ", so_far.ToString(), "[0]"));
      }
      return list ? NoSuchItem(report, so_far, next) : NoSuchFigure(typed, declared);
    }
    so_far = next;
  }
  return absl::OkStatus();
}

}  // namespace

absl::StatusOr<v1::WhyReport> Why(const Document& document, const v1::Report& report, std::string_view figure,
                                  const WhyOptions& options) {
  const absl::StatusOr<FieldPath> parsed = FieldPath::Parse(figure);
  if (!parsed.ok()) return parsed.status();
  if (parsed->empty()) return absl::InvalidArgumentError("name a figure of the report, like fit.overall_length_mm");
  const FieldPath typed = ByWhatItIsAbout(FigureOf(*parsed), report);
  if (absl::Status there = CheckThere(report, typed, figure); !there.ok()) return there;
  const FieldPath path = Unambiguous(typed, report);

  v1::WhyReport why;
  why.set_format("withy-why/1");
  why.set_design_digest(report.design_digest());
  const Rod rod = Resolve(document);
  const Answers answers = ComputeAnswers(rod);
  const Trace trace(rod, answers);
  WhyTree tree(document, report, trace);
  if (FindFigure(DeclaredName(path, *v1::Report::descriptor())) != nullptr) {
    *why.add_figures() = tree.Open(path, options.depth);
    return why;
  }
  for (const FieldPath& inside : FiguresIn(report, path)) *why.add_figures() = tree.Glance(inside);
  if (why.figures_size() == 0) return NoSuchFigure(figure, DeclaredName(path, *v1::Report::descriptor()));
  return why;
}

}  // namespace withy
