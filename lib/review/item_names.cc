#include "item_names.h"

#include <utility>

#include "withy/document/path_cursor.h"

namespace withy {

using google::protobuf::Message;

std::string ItemNames::NameOf(const Message& item) {
  std::string id = IdOf(item);
  return !id.empty() && seen_.insert(id).second ? id : "";
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

}  // namespace withy
