#include "declared_path.h"

#include <algorithm>
#include <utility>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_split.h"

namespace withy {
namespace {

using google::protobuf::Descriptor;
using google::protobuf::FieldDescriptor;

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

std::vector<DeclaredSegment> SegmentsOf(std::string_view declared) {
  std::vector<DeclaredSegment> segments;
  while (!declared.empty()) {
    const std::size_t name_end = std::min(declared.find_first_of(".["), declared.size());
    DeclaredSegment segment{std::string(declared.substr(0, name_end)), std::nullopt};
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

std::vector<ItemCondition> ConditionsOf(const std::string& selector) {
  std::vector<ItemCondition> conditions;
  if (selector.empty()) return conditions;
  const std::vector<std::string> parts = absl::StrSplit(selector, '&');
  for (const std::string& part : parts) {
    const std::size_t sign = std::min(part.find('='), part.size());
    ItemCondition condition;
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

std::vector<std::string_view> AlternativesOf(std::string_view declared) {
  std::vector<std::string_view> alternatives;
  for (std::size_t bar = declared.find('|'); bar != std::string_view::npos; bar = declared.find('|')) {
    alternatives.push_back(declared.substr(0, bar));
    declared.remove_prefix(bar + 1);
  }
  alternatives.push_back(declared);
  return alternatives;
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
  for (const DeclaredSegment& segment : SegmentsOf(declared)) {
    const FieldDescriptor* field = type == nullptr ? nullptr : type->FindFieldByName(segment.name);
    if (field == nullptr || open_list) return false;
    open_list = field->is_repeated() && !segment.selector;
    type = field->message_type();
    if (!segment.selector) continue;
    if (type == nullptr || (!field->is_repeated() && segment.selector->empty())) return false;
    for (const ItemCondition& condition : ConditionsOf(*segment.selector)) {
      if (!condition.field.empty() && !HasTexts(*type, condition.field)) return false;
    }
  }
  return true;
}

std::string Plain(std::string_view declared, const Descriptor& root) {
  std::string plain;
  const Descriptor* type = &root;
  for (const DeclaredSegment& segment : SegmentsOf(declared)) {
    const FieldDescriptor* field = type == nullptr ? nullptr : type->FindFieldByName(segment.name);
    absl::StrAppend(&plain, plain.empty() ? "" : ".", segment.name);
    if (segment.selector && field != nullptr && field->is_repeated()) plain += "[]";
    type = field == nullptr ? nullptr : field->message_type();
  }
  return plain;
}

}  // namespace withy
