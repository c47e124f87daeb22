// `ctx` as it is declared: properties and methods, with the methods that read.
#include "absl/strings/str_cat.h"
#include "api_table.h"
#include "context.h"
#include "context_give.h"
#include "context_paths.h"
#include "plain_text.h"
#include "quantity_units.h"
#include "sandbox.h"

namespace withy::plugin {
namespace {

// A value that says nothing: nil, or a quantity without a unit.
bool IsUnknown(lua_State* lua, int index) {
  if (lua_isnil(lua, index)) return true;
  const Proxy* proxy = ProxyAt(lua, index);
  return proxy != nullptr && proxy->kind == Proxy::Kind::kMessage && IsQuantity(*proxy->message->GetDescriptor()) &&
         UnitUsed(*proxy->message) == nullptr;
}

int Get(lua_State* lua) {
  Context& context = ContextArgument(lua, "get");
  RootedPath path = ReadPath(lua, TextArgument(lua, 2), Root::kReport);
  PushAtPath(lua, *context.subject, path);
  if (IsUnknown(lua, -1)) lua_pushnil(lua);
  return 1;
}

// What would settle a figure of the report, as the report itself says of it or of what it is part of.
std::string WhatToMeasure(const v1::Report& report, const RootedPath& path) {
  if (path.root != Root::kReport) return "";
  const std::string figure = path.path.ToString();
  for (const v1::Unknown& unknown : report.unknown()) {
    if (figure == unknown.figure() || figure.starts_with(unknown.figure() + ".")) return unknown.measure();
  }
  return "";
}

int Need(lua_State* lua) {
  Context& context = ContextArgument(lua, "need");
  std::string_view text = TextArgument(lua, 2);
  RootedPath path = ReadPath(lua, text, Root::kReport);
  std::string hint(lua_isnoneornil(lua, 3) ? "" : TextArgument(lua, 3));
  PushAtPath(lua, *context.subject, path);
  if (!IsUnknown(lua, -1)) return 1;
  if (hint.empty()) hint = WhatToMeasure(context.subject->report, path);
  if (hint.empty()) hint = absl::StrCat("Add ", path.path.ToString(), ".");
  std::string message = absl::StrCat("cannot tell: ", path.path.ToString(), " is not known");
  context.cannot_tell.set_message(message);
  context.cannot_tell.set_help(hint);
  if (path.root == Root::kDesign) context.cannot_tell.set_at(path.path.ToString());
  Sandbox::End(lua, Sandbox::Stop::kCannotTell, absl::StrCat(message, "; ", hint));
}

int Find(lua_State* lua) {
  Context& context = ContextArgument(lua, "find");
  FieldPath path = PathOfId(context.subject->design, TextArgument(lua, 2));
  if (path.empty()) {
    lua_pushnil(lua);
  } else {
    PushAtPath(lua, *context.subject, {Root::kDesign, path});
  }
  return 1;
}

}  // namespace

const std::vector<ApiField>& ContextProperties() {
  static const std::vector<ApiField> properties = {
      {"design", "Design", "The design as written.", true, kInCheck | kInExporter},
      {"rod", "Rod", "The resolved rod: places worked out, models and defaults filled in; mm, g, degrees.", true,
       kInCheck | kInExporter},
      {"report", "Report", "What was computed.", true, kInCheck | kInExporter},
      {"stem", "string", "The design's file name without folder and ending, as a plain file name.", true, kInExporter},
      {"options", "table", "Declared options by name, defaults filled in; one that was not declared is an error.", true,
       kInExporter | kInImporter},
      {"input", "string", "The bytes of the input.", true, kInImporter},
      {"input_name", "string", "Name of the input, for messages.", true, kInImporter},
  };
  return properties;
}

const std::vector<ApiFunction>& ContextMethods() {
  static const std::vector<ApiFunction> methods = {
      {"get", "(path: string): any",
       "The value at a path; nil where anything on the way is not known. A path begins with `design.`, `rod.` or "
       "`report.`; "
       "without one it is looked up in the report, then in the design. List items are named by id, or counted from 0 "
       "as in "
       "findings.",
       Bound<Get>, kInCheck | kInExporter},
      {"need", "(path: string, hint?: string): any",
       "As get, for what the plugin cannot do without: where there is no value, a check ends as 'cannot tell' and an "
       "exporter "
       "is refused. The hint says what to measure; without one the report is asked.",
       Bound<Need>, kInCheck | kInExporter},
      {"find", "(id: string): any", "The design's thing with that id, or nil.", Bound<Find>, kInCheck | kInExporter},
      {"emit", "(remark: Remark)", "Gives one finding.", Bound<Emit>, kInCheck | kInImporter},
      {"refuse", "(message: string, place?: InputPlace)",
       "Ends the run in an orderly way; nothing it gave is kept. An importer says where its input is wrong.",
       Bound<Refuse>, kEverywhere},
      {"write", "(name: string, bytes: string)",
       "Writes one file. The name is plain ([A-Za-z0-9._ -], no leading dot) and is used once.", Bound<Write>,
       kInExporter},
  };
  return methods;
}

}  // namespace withy::plugin
