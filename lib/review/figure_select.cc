#include "figure_select.h"

#include <algorithm>
#include <iterator>
#include <optional>
#include <utility>

#include "absl/status/statusor.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_split.h"
#include "google/protobuf/descriptor.h"
#include "withy/document/path_cursor.h"

namespace withy {
namespace {

using google::protobuf::Descriptor;
using google::protobuf::FieldDescriptor;
using google::protobuf::Message;

// Begins a path within what the item's `at` names, with the message that has to stand there: "@Part.mass".
constexpr char kSubject = '@';

// One name of a declared path, with what stands in its brackets.
struct Segment {
  std::string name;
  std::optional<std::string> selector;
};

std::vector<Segment> SegmentsOf(std::string_view declared) {
  std::vector<Segment> segments;
  while (!declared.empty()) {
    const std::size_t name_end = std::min(declared.find_first_of(".["), declared.size());
    Segment segment{std::string(declared.substr(0, name_end)), std::nullopt};
    declared.remove_prefix(name_end);
    if (declared.starts_with("[")) {
      const std::size_t close = std::min(declared.find(']'), declared.size() - 1);
      segment.selector = std::string(declared.substr(1, close - 1));
      declared.remove_prefix(close + 1);
    }
    if (declared.starts_with(".")) declared.remove_prefix(1);
    segments.push_back(std::move(segment));
  }
  return segments;
}

// As a value: where the field says nothing.
constexpr std::string_view kNone = "none";

// "section=", "at_end!=TIP", "id=.thread", "at+.bond=.at", "=".
struct Condition {
  std::string field, ending, value;
  bool equal = true;
};

std::vector<Condition> ConditionsOf(const std::string& selector) {
  std::vector<Condition> conditions;
  if (selector.empty()) return conditions;
  const std::vector<std::string> parts = absl::StrSplit(selector, '&');
  for (const std::string& part : parts) {
    const std::size_t sign = std::min(part.find('='), part.size());
    Condition condition;
    condition.equal = sign == 0 || part[sign - 1] != '!';
    condition.field = part.substr(0, condition.equal ? sign : sign - 1);
    condition.value = part.substr(std::min(sign + 1, part.size()));
    if (const std::size_t plus = condition.field.find('+'); plus != std::string::npos) {
      condition.ending = condition.field.substr(plus + 1);
      condition.field.resize(plus);
    }
    conditions.push_back(std::move(condition));
  }
  return conditions;
}

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

bool Meets(const Message& item, const Condition& condition, const FigureContext& context) {
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

class Selection {
 public:
  Selection(std::vector<Segment> segments, const FigureContext& context)
      : segments_(std::move(segments)), context_(context) {}

  void Walk(const Message& message, std::size_t i, const FieldPath& path) {
    const Segment& segment = segments_[i];
    const FieldDescriptor* field = message.GetDescriptor()->FindFieldByName(segment.name);
    if (field == nullptr) return;
    const auto& reflection = *message.GetReflection();
    const FieldPath here = path.Field(segment.name);
    const bool last = i + 1 == segments_.size();
    if (last && !(field->is_repeated() && segment.selector)) {
      const bool there =
          field->is_repeated() ? reflection.FieldSize(message, field) > 0 : reflection.HasField(message, field);
      (there ? found.there : found.unset).push_back(here);
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
    for (const Condition& condition : ConditionsOf(selector)) {
      if (!Meets(item, condition, context_)) return false;
    }
    return true;
  }

  std::vector<Segment> segments_;
  const FigureContext& context_;
};

// Whether `dotted` names a field of text or words.
bool HasTexts(const Descriptor& type, const std::string& dotted) {
  const Descriptor* at = &type;
  const FieldDescriptor* field = nullptr;
  const std::vector<std::string> names = absl::StrSplit(dotted, '.');
  for (const std::string& name : names) {
    field = at == nullptr ? nullptr : at->FindFieldByName(name);
    if (field == nullptr) return false;
    at = field->message_type();
  }
  return field->cpp_type() == FieldDescriptor::CPPTYPE_STRING || field->cpp_type() == FieldDescriptor::CPPTYPE_ENUM;
}

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

std::string ItemNames::NameOf(const Message& item) {
  std::string id = IdOf(item);
  return !id.empty() && seen_.insert(id).second ? id : "";
}

std::vector<std::string_view> AlternativesOf(std::string_view declared) {
  std::vector<std::string_view> alternatives;
  for (std::size_t bar = declared.find('|'); bar != std::string_view::npos; bar = declared.find('|')) {
    alternatives.push_back(declared.substr(0, bar));
    declared.remove_prefix(bar + 1);
  }
  alternatives.push_back(declared);
  return alternatives;
}

Selected Select(std::string_view declared, const Message& root, const FigureContext& context) {
  const bool of_subject = declared.starts_with(kSubject);
  const std::size_t start = of_subject ? declared.find('.') + 1 : 0;
  std::vector<Segment> segments = SegmentsOf(declared.substr(start));
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

FieldPath Unambiguous(const FieldPath& path, const Message& root) {
  PathCursor cursor(root);
  FieldPath named;
  for (const FieldPath::Step& step : path.steps()) {
    PathCursor list = cursor;
    const bool there = cursor.Advance(step);
    if (!step.field.empty()) {
      named = std::move(named).Field(step.field);
    } else if (!there || cursor.message() == nullptr) {
      named = std::move(named).Item(step.id, step.index);
    } else {
      const std::string id = IdOf(*cursor.message());
      const bool first = !id.empty() && list.Advance({"", id, -1}) && list.index() == cursor.index();
      named = std::move(named).Item(first ? id : "", cursor.index());
    }
  }
  return named;
}

std::string ByNumber(const FieldPath& path) {
  FieldPath numbers;
  for (const FieldPath::Step& step : path.steps()) {
    numbers = step.field.empty() ? std::move(numbers).Item("", step.index) : std::move(numbers).Field(step.field);
  }
  return numbers.ToString();
}

std::string DeclaredName(const FieldPath& path, const Descriptor& root) {
  std::string name;
  const Descriptor* type = &root;
  for (const FieldPath::Step& step : path.steps()) {
    if (step.field.empty()) {
      if (type != nullptr) name += "[]";
      continue;
    }
    absl::StrAppend(&name, name.empty() ? "" : ".", step.field);
    const FieldDescriptor* field = type == nullptr ? nullptr : type->FindFieldByName(step.field);
    type = field == nullptr ? nullptr : field->message_type();
  }
  return name;
}

bool CanExist(std::string_view declared, const Descriptor& root) {
  if (declared.starts_with(kSubject)) {
    const std::size_t dot = std::min(declared.find('.'), declared.size() - 1);
    const std::string type = absl::StrCat(root.file()->package(), ".", std::string(declared.substr(1, dot - 1)));
    const Descriptor* subject = root.file()->pool()->FindMessageTypeByName(type);
    return subject != nullptr && CanExist(declared.substr(dot + 1), *subject);
  }
  const Descriptor* type = &root;
  bool open_list = false;  // a list without brackets: nothing can come behind it
  for (const Segment& segment : SegmentsOf(declared)) {
    const FieldDescriptor* field = type == nullptr ? nullptr : type->FindFieldByName(segment.name);
    if (field == nullptr || open_list) return false;
    open_list = field->is_repeated() && !segment.selector;
    type = field->message_type();
    if (!segment.selector) continue;
    if (type == nullptr || (!field->is_repeated() && segment.selector->empty())) return false;
    for (const Condition& condition : ConditionsOf(*segment.selector)) {
      if (!condition.field.empty() && !HasTexts(*type, condition.field)) return false;
    }
  }
  return true;
}

std::string Plain(std::string_view declared, const Descriptor& root) {
  std::string plain;
  const Descriptor* type = &root;
  for (const Segment& segment : SegmentsOf(declared)) {
    const FieldDescriptor* field = type == nullptr ? nullptr : type->FindFieldByName(segment.name);
    absl::StrAppend(&plain, plain.empty() ? "" : ".", segment.name);
    if (segment.selector && field != nullptr && field->is_repeated()) plain += "[]";
    type = field == nullptr ? nullptr : field->message_type();
  }
  return plain;
}

}  // namespace withy
