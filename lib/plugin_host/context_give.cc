#include "context_give.h"

#include <cmath>
#include <string>

#include "absl/strings/match.h"
#include "absl/strings/str_cat.h"
#include "context_paths.h"
#include "frames.h"
#include "ordered_tables.h"
#include "plain_text.h"
#include "safe_base.h"
#include "sandbox.h"
#include "severity_names.h"
#include "table_reader.h"

namespace withy::plugin {
namespace {

// The design's path of the thing that the proxy at `index` stands for. Things of rod and report stand for the design's
// thing with their id.
FieldPath DesignPath(lua_State* lua, const Context& context, int index) {
  const Proxy& proxy = *ProxyAt(lua, index);
  if (proxy.root == Root::kDesign) return PathOf(proxy);
  FieldPath path = PathOfId(context.subject->design, IdOf(*proxy.message));
  if (path.empty())
    luaL_error(lua, "'at' is %s, which is nowhere in the design: give a path", TextOf(lua, index).c_str());
  return path;
}

// `{ value, "field" }`
FieldPath FieldOf(lua_State* lua, const Context& context) {
  lua_rawgeti(lua, -1, 1);
  lua_rawgeti(lua, -2, 2);
  const Proxy* owner = ProxyAt(lua, -2);
  if (owner == nullptr || lua_type(lua, -1) != LUA_TSTRING || owner->kind != Proxy::Kind::kMessage) {
    luaL_error(lua, "'at' is a value read from the design, a path, or { value, \"field\" }");
  }
  FieldPath path = DesignPath(lua, context, lua_absindex(lua, -2)).Field(lua_tostring(lua, -1));
  lua_pop(lua, 2);
  ReadPath(lua, absl::StrCat("design.", path.ToString()), Root::kDesign);  // a misspelt field is an error
  return path;
}

// Where the finding is: the field `at` of a remark.
std::string ReadPlace(lua_State* lua, const Context& context, const TableReader& remark) {
  FieldPath path;
  const int type = remark.Push("at");
  if (type == LUA_TSTRING) {
    RootedPath rooted = ReadPath(lua, TextArgument(lua, lua_gettop(lua)), Root::kDesign);
    if (rooted.root != Root::kDesign) luaL_error(lua, "'at' is a path of the design");
    path = context.subject == nullptr ? rooted.path : WithIndices(lua, *context.subject, rooted.path);
  } else if (type == LUA_TUSERDATA) {
    path = DesignPath(lua, context, lua_gettop(lua));
  } else if (type == LUA_TTABLE) {
    path = FieldOf(lua, context);
  } else if (type != LUA_TNIL) {
    luaL_error(lua, "'at' is a %s: a plain value does not know where it was read; give { value, \"field\" } or a path",
               lua_typename(lua, type));
  }
  lua_pop(lua, 1);
  std::string text = path.ToString();
  if (!IsPlainLine(text, kLongestPath)) remark.Refuse("'at' is not a plain path");
  return text;
}

void ReadNumbers(lua_State* lua, const TableReader& remark, host::v1::Remark& out) {
  if (remark.Push("numbers") != LUA_TNIL) {
    for (const OrderedKey& key : SortedKeys(lua, -1)) {
      if (key.is_number || !IsIdentifier(key.text)) remark.Refuse("'numbers' are named with letters, digits and '_'");
      if (out.numbers_size() == kMostNumbers) remark.Refuse("too many numbers");
      lua_getfield(lua, -1, key.text.c_str());
      if (lua_type(lua, -1) != LUA_TNUMBER || !std::isfinite(lua_tonumber(lua, -1))) {
        remark.Refuse(absl::StrCat("numbers.", key.text, " is not a finite number"));
      }
      host::v1::Number& number = *out.add_numbers();
      number.set_name(key.text);
      number.set_value(lua_tonumber(lua, -1));
      lua_pop(lua, 1);
    }
  }
  lua_pop(lua, 1);
}

}  // namespace

Context& ContextArgument(lua_State* lua, const char* method) {
  if (!lua_istable(lua, 1)) luaL_error(lua, "write ctx:%s(...), with a colon", method);
  return Context::Of(lua);
}

std::string_view TextArgument(lua_State* lua, int index) {
  luaL_checktype(lua, index, LUA_TSTRING);
  std::size_t size = 0;
  const char* bytes = lua_tolstring(lua, index, &size);
  std::string_view text(bytes, size);
  if (!IsUtf8(text)) luaL_argerror(lua, index, "the text is not UTF-8");
  return text;
}

int Emit(lua_State* lua) {
  Context& context = ContextArgument(lua, "emit");
  TableReader remark(lua, 2, "ctx:emit", RemarkFields());
  if (context.remarks.size() == kMostRemarks) remark.Refuse("too many findings");
  host::v1::Remark out;
  out.set_message(remark.Text("message"));
  if (out.message().empty()) remark.Refuse("'message' is empty");
  out.set_help(remark.Text("help"));
  std::string severity = remark.Text("severity");
  std::optional<Severity> named = severity.empty() ? context.severity : SeverityNamed(severity);
  if (!named) remark.Refuse(absl::StrCat("'severity' is ", kSeverityChoice));
  out.set_severity(static_cast<std::uint32_t>(*named));
  out.set_at(ReadPlace(lua, context, remark));
  ReadNumbers(lua, remark, out);
  out.set_line(remark.Count("line"));
  out.set_column(remark.Count("column"));
  if (context.use != kInImporter && out.line() > 0) remark.Refuse("'line' is for importers: give 'at'");
  Sandbox::Of(lua).ChargeOutput(out.ByteSizeLong());
  context.remarks.push_back(std::move(out));
  return 0;
}

int Refuse(lua_State* lua) {
  Context& context = ContextArgument(lua, "refuse");
  std::string message(TextArgument(lua, 2));
  if (!IsPlainLine(message)) luaL_argerror(lua, 2, "must be one line without control characters");
  if (!lua_isnoneornil(lua, 3)) {
    TableReader place(lua, 3, "ctx:refuse", InputPlaceFields());
    if (context.use != kInImporter) place.Refuse("only an importer has an input with lines");
    std::uint64_t column = place.Count("column");
    message = absl::StrCat(std::string(context.input_name), ":", place.Count("line"), ":",
                           column == 0 ? "" : absl::StrCat(column, ":"), " ", message);
  }
  Sandbox::End(lua, Sandbox::Stop::kRefused, message);
}

int Write(lua_State* lua) {
  Context& context = ContextArgument(lua, "write");
  std::string name(TextArgument(lua, 2));
  std::size_t size = 0;
  luaL_checktype(lua, 3, LUA_TSTRING);
  const char* bytes = lua_tolstring(lua, 3, &size);
  if (!IsPlainFileName(name))
    return luaL_error(lua, "'%s' is not a plain file name: [A-Za-z0-9._ -], no leading dot", name.c_str());
  for (const host::v1::File& file : context.files) {
    if (absl::EqualsIgnoreCase(file.name(), name)) return luaL_error(lua, "'%s' was written already", name.c_str());
  }
  if (static_cast<int>(context.files.size()) == context.files_allowed) {
    Sandbox::End(lua, Sandbox::Stop::kOutput, absl::StrCat("writes more than ", context.files_allowed, " files"));
  }
  Sandbox::Of(lua).ChargeOutput(size + name.size());
  host::v1::File& file = context.files.emplace_back();
  file.set_name(name);
  file.set_bytes(bytes, size);
  return 0;
}

}  // namespace withy::plugin
