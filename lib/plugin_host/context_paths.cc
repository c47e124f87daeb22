#include "context_paths.h"

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "absl/strings/str_cat.h"
#include "context.h"
#include "schema_names.h"

namespace withy::plugin {
namespace {

using google::protobuf::FieldDescriptor;
using google::protobuf::Message;
using google::protobuf::Reflection;

const google::protobuf::Descriptor& TypeOf(Root root) {
  switch (root) {
    case Root::kDesign:
      return *v1::Design::descriptor();
    case Root::kRod:
      return *v1::Rod::descriptor();
    case Root::kReport:
      break;
  }
  return *v1::Report::descriptor();
}

// Replaces the list on top of the stack by its item; nil where there is none.
void StepToItem(lua_State* lua, const FieldPath::Step& step) {
  const Proxy* list = ProxyAt(lua, -1);
  if (list->kind == Proxy::Kind::kMap || list->kind == Proxy::Kind::kStruct) {
    lua_getfield(lua, -1, step.id.c_str());
  } else if (step.index >= 0) {
    lua_geti(lua, -1, step.index + 1);
  } else {
    lua_pushnil(lua);
    int size = static_cast<int>(luaL_len(lua, -2));
    for (int i = 1; i <= size; ++i) {
      lua_pop(lua, 1);
      lua_geti(lua, -1, i);
      const Proxy* item = ProxyAt(lua, -1);
      if (item != nullptr && IdOf(*item->message) == step.id) break;
      if (i == size) {
        lua_pop(lua, 1);
        lua_pushnil(lua);
      }
    }
  }
  lua_remove(lua, -2);
}

bool FindId(const Message& message, std::string_view id, FieldPath& path) {
  const Reflection& reflection = *message.GetReflection();
  std::vector<const FieldDescriptor*> fields;
  reflection.ListFields(message, &fields);
  for (const FieldDescriptor* field : fields) {
    if (field->cpp_type() != FieldDescriptor::CPPTYPE_MESSAGE || field->is_map()) continue;
    const int size = field->is_repeated() ? reflection.FieldSize(message, field) : 1;
    for (int i = 0; i < size; ++i) {
      const Message& child = field->is_repeated() ? reflection.GetRepeatedMessage(message, field, i)
                                                  : reflection.GetMessage(message, field);
      FieldPath below = path.Field(field->name());
      if (field->is_repeated()) below = std::move(below).Item(IdOf(child), i);
      if (IdOf(child) == id || FindId(child, id, below)) {
        path = std::move(below);
        return true;
      }
    }
  }
  return false;
}

// The path without the root that its first step names; unset where that names none.
std::optional<RootedPath> WithNamedRoot(const FieldPath& path) {
  static constexpr std::pair<std::string_view, Root> kRoots[] = {
      {"design", Root::kDesign}, {"rod", Root::kRod}, {"report", Root::kReport}};
  for (auto [name, root] : kRoots) {
    if (path.empty() || path.steps().front().field != name) continue;
    RootedPath rooted = {root, {}};
    for (std::size_t i = 1; i < path.steps().size(); ++i) {
      const FieldPath::Step& step = path.steps()[i];
      rooted.path = step.field.empty() ? std::move(rooted.path).Item(step.id, step.index)
                                       : std::move(rooted.path).Field(step.field);
    }
    return rooted;
  }
  return std::nullopt;
}

}  // namespace

RootedPath ReadPath(lua_State* lua, std::string_view text, Root first) {
  absl::StatusOr<FieldPath> parsed = FieldPath::Parse(text);
  if (!parsed.ok()) luaL_error(lua, "%s", std::string(parsed.status().message()).c_str());
  const Root second = first == Root::kReport ? Root::kDesign : Root::kReport;
  std::optional<RootedPath> named = WithNamedRoot(*parsed);
  RootedPath path = named ? *named : RootedPath{first, *parsed};
  absl::Status wrong = CheckPath(TypeOf(path.root), path.path);
  if (!wrong.ok() && !named) {
    absl::Status wrong_in_second = CheckPath(TypeOf(second), path.path);
    // The first name decides which of the two was meant.
    const std::string& start = path.path.steps().front().field;
    if (wrong_in_second.ok() || !HasName(TypeOf(first), start)) wrong = wrong_in_second;
    if (wrong.ok()) path.root = second;
  }
  if (!wrong.ok()) luaL_error(lua, "'%s': %s", std::string(text).c_str(), std::string(wrong.message()).c_str());
  return path;
}

void PushAtPath(lua_State* lua, const PluginSubject& subject, const RootedPath& path) {
  PushRootOnce(lua, subject, path.root);
  for (const FieldPath::Step& step : path.path.steps()) {
    if (lua_isnil(lua, -1)) return;
    if (ProxyAt(lua, -1) == nullptr) {
      luaL_error(lua, "'%s' goes on below a plain value", path.path.ToString().c_str());
    }
    if (step.field.empty()) {
      StepToItem(lua, step);
    } else {
      lua_getfield(lua, -1, step.field.c_str());
      lua_remove(lua, -2);
    }
  }
}

FieldPath PathOfId(const Message& design, std::string_view id) {
  FieldPath path;
  return !id.empty() && FindId(design, id, path) ? path : FieldPath();
}

FieldPath WithIndices(lua_State* lua, const PluginSubject& subject, const FieldPath& path) {
  FieldPath done;
  for (const FieldPath::Step& step : path.steps()) {
    done = step.field.empty() ? std::move(done).Item(step.id, step.index) : std::move(done).Field(step.field);
    PushAtPath(lua, subject, RootedPath{Root::kDesign, done});
    const Proxy* there = ProxyAt(lua, -1);
    if (there != nullptr) done = PathOf(*there);
    lua_pop(lua, 1);
  }
  return done;
}

}  // namespace withy::plugin
