#include "figure_select.h"

#include <algorithm>
#include <utility>

#include "absl/status/statusor.h"
#include "absl/strings/str_split.h"
#include "declared_path.h"
#include "google/protobuf/descriptor.h"
#include "item_names.h"
#include "withy/document/path_cursor.h"

namespace withy {
namespace {

using google::protobuf::FieldDescriptor;
using google::protobuf::Message;

void AddTexts(const Message& message, const FieldDescriptor& field, std::vector<std::string>& texts) {
  const auto& reflection = *message.GetReflection();
  if (field.cpp_type() == FieldDescriptor::CPPTYPE_ENUM && !field.is_repeated()) {
    texts.push_back(reflection.GetEnum(message, &field)->name());
  }
  if (field.cpp_type() != FieldDescriptor::CPPTYPE_STRING) return;
  if (!field.is_repeated()) {
    texts.push_back(reflection.GetString(message, &field));
    return;
  }
  for (int i = 0; i < reflection.FieldSize(message, &field); ++i) {
    texts.push_back(reflection.GetRepeatedString(message, &field, i));
  }
}

// Of a dotted name; empty where a message on the way is not set.
std::vector<std::string> TextsAt(const Message& message, const std::string& dotted) {
  std::vector<std::string> texts;
  const Message* at = &message;
  const std::vector<std::string> names = absl::StrSplit(dotted, '.');
  for (std::size_t i = 0; i < names.size(); ++i) {
    const FieldDescriptor* field = at->GetDescriptor()->FindFieldByName(names[i]);
    if (field == nullptr) return {};
    if (i + 1 == names.size()) {
      AddTexts(*at, *field, texts);
    } else {
      if (field->is_repeated() || field->message_type() == nullptr || !at->GetReflection()->HasField(*at, field))
        return {};
      at = &at->GetReflection()->GetMessage(*at, field);
    }
  }
  return texts;
}

bool Meets(const Message& item, const ItemCondition& condition, const FigureContext& context) {
  if (condition.field.empty()) return context.StandsIn(item) || context.IsAbout(IdOf(item));
  std::vector<std::string> texts = TextsAt(item, condition.field);
  if (condition.value == kNone) {
    const bool none = std::all_of(texts.begin(), texts.end(), [](const std::string& text) { return text.empty(); });
    return none == condition.equal;
  }
  if (texts.empty()) return false;
  for (std::string& text : texts) text += condition.ending;
  const auto any = [&texts](const auto& matches) { return std::any_of(texts.begin(), texts.end(), matches); };
  bool found = false;
  if (condition.value.empty()) {
    found = any([&](const std::string& text) { return context.IsAbout(text); });
  } else if (condition.value.front() == '.') {
    const std::vector<std::string> wanted = context.TextsOf(condition.value.substr(1));
    found = any([&](const std::string& text) {
      return !text.empty() && std::find(wanted.begin(), wanted.end(), text) != wanted.end();
    });
  } else {
    found = any([&](const std::string& text) { return text == condition.value; });
  }
  return found == condition.equal;
}

// A number or a yes that cannot be left out is there, also where it is 0 or no.
bool IsThere(const Message& message, const FieldDescriptor& field) {
  const auto& reflection = *message.GetReflection();
  if (field.is_repeated()) return reflection.FieldSize(message, &field) > 0;
  const bool number =
      field.cpp_type() == FieldDescriptor::CPPTYPE_DOUBLE || field.cpp_type() == FieldDescriptor::CPPTYPE_BOOL;
  return reflection.HasField(message, &field) || (number && !field.has_presence());
}

class Selection {
 public:
  Selection(std::vector<DeclaredSegment> segments, const FigureContext& context)
      : segments_(std::move(segments)), context_(context) {}

  void Walk(const Message& message, std::size_t i, const FieldPath& path) {
    const DeclaredSegment& segment = segments_[i];
    const FieldDescriptor* field = message.GetDescriptor()->FindFieldByName(segment.name);
    if (field == nullptr) return;
    const auto& reflection = *message.GetReflection();
    const FieldPath here = path.Field(segment.name);
    const bool last = i + 1 == segments_.size();
    if (last && !(field->is_repeated() && segment.selector)) {
      (IsThere(message, *field) ? found.there : found.unset).push_back(here);
      return;
    }
    if (field->message_type() == nullptr) return;
    if (!field->is_repeated()) {
      if (!reflection.HasField(message, field)) return;
      const Message& inner = reflection.GetMessage(message, field);
      if (!segment.selector || Chosen(inner, *segment.selector)) Walk(inner, i + 1, here);
      return;
    }
    ItemNames names;
    for (int item = 0; item < reflection.FieldSize(message, field); ++item) {
      const Message& inner = reflection.GetRepeatedMessage(message, field, item);
      const std::string name = names.NameOf(inner);
      if (!Chosen(inner, segment.selector.value_or(""))) continue;
      const FieldPath at = here.Item(name, item);
      last ? found.there.push_back(at) : Walk(inner, i + 1, at);
    }
  }

  Selected found;

 private:
  bool Chosen(const Message& item, const std::string& selector) const {
    for (const ItemCondition& condition : ConditionsOf(selector)) {
      if (!Meets(item, condition, context_)) return false;
    }
    return true;
  }

  std::vector<DeclaredSegment> segments_;
  const FigureContext& context_;
};

}  // namespace

FigureContext::FigureContext(const Message& report, const FieldPath& figure) : report_(report) {
  PathCursor cursor(report);
  for (const FieldPath::Step& step : figure.steps()) {
    if (!cursor.Advance(step)) break;
    if (cursor.message() != nullptr) around_.push_back(cursor.message());
  }
  for (const Message* message : around_) {
    for (const char* name : {"id", "what", "part", "host"}) {
      const FieldDescriptor* field = message->GetDescriptor()->FindFieldByName(name);
      if (field != nullptr) AddTexts(*message, *field, ids_);
    }
  }
  ids_.erase(std::remove(ids_.begin(), ids_.end(), ""), ids_.end());
}

FieldPath FigureContext::Subject() const {
  const std::vector<std::string> at = TextsOf("at");
  const absl::StatusOr<FieldPath> path = FieldPath::Parse(at.empty() ? "" : at.front());
  return path.ok() ? *path : FieldPath();
}

bool FigureContext::StandsIn(const Message& message) const {
  return std::find(around_.begin(), around_.end(), &message) != around_.end();
}

bool FigureContext::IsAbout(const std::string& id) const {
  return !id.empty() && std::find(ids_.begin(), ids_.end(), id) != ids_.end();
}

std::vector<std::string> FigureContext::TextsOf(const std::string& name) const {
  if (name.find('.') != std::string::npos) return TextsAt(report_, name);
  std::vector<std::string> texts;
  for (auto message = around_.rbegin(); message != around_.rend() && texts.empty(); ++message) {
    const FieldDescriptor* field = (*message)->GetDescriptor()->FindFieldByName(name);
    if (field != nullptr) AddTexts(**message, *field, texts);
  }
  return texts;
}

Selected Select(std::string_view declared, const Message& root, const FigureContext& context) {
  const bool of_subject = declared.starts_with(kSubject);
  const std::size_t start = of_subject ? declared.find('.') + 1 : 0;
  std::vector<DeclaredSegment> segments = SegmentsOf(declared.substr(start));
  const FieldPath subject = of_subject ? Unambiguous(context.Subject(), root) : FieldPath();
  PathCursor cursor(root);
  for (const FieldPath::Step& step : subject.steps()) {
    if (!cursor.Advance(step)) return {};
  }
  if (segments.empty() || cursor.message() == nullptr) return {};
  if (of_subject && cursor.message()->GetDescriptor()->name() != declared.substr(1, start - 2)) return {};
  Selection selection(std::move(segments), context);
  selection.Walk(*cursor.message(), 0, subject);
  return std::move(selection.found);
}

}  // namespace withy
