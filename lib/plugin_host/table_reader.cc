#include "table_reader.h"

#include <cmath>
#include <cstdlib>

#include "absl/strings/str_cat.h"
#include "ordered_tables.h"
#include "plain_text.h"
#include "schema_names.h"

namespace withy::plugin {
namespace {

bool HasType(lua_State* lua, std::string_view type) {
  if (type == "any") return true;
  if (type == "string") return lua_type(lua, -1) == LUA_TSTRING;
  if (type == "integer") return lua_type(lua, -1) == LUA_TNUMBER && lua_isinteger(lua, -1);
  if (type == "number") return lua_type(lua, -1) == LUA_TNUMBER;
  if (type == "boolean") return lua_isboolean(lua, -1);
  if (type == "function") return lua_isfunction(lua, -1);
  return lua_istable(lua, -1);
}

}  // namespace

TableReader::TableReader(lua_State* lua, int index, std::string what, const std::vector<ApiField>& fields)
    : lua_(lua), index_(lua_absindex(lua, index)), what_(std::move(what)) {
  luaL_checkstack(lua, 8, nullptr);
  if (!lua_istable(lua, index_)) Refuse("must be a table");
  std::vector<std::string_view> names;
  for (const ApiField& field : fields) names.push_back(field.name);
  for (const ApiField& field : fields) {
    int type = Push(field.name.data());
    std::string name(field.name);
    if (type == LUA_TNIL && field.required) Refuse(absl::StrCat("'", name, "' is missing"));
    if (type != LUA_TNIL && !HasType(lua, field.type)) {
      Refuse(absl::StrCat("'", name, "' must be a ", std::string(field.type), ", not a ", lua_typename(lua, type)));
    }
    lua_pop(lua, 1);
  }
  for (const OrderedKey& key : SortedKeys(lua, index_)) {
    if (key.is_number) Refuse("has an item without a name");
    if (std::find(names.begin(), names.end(), key.text) == names.end()) {
      Refuse(absl::StrCat("there is no '", key.text, "'", DidYouMean(key.text, names)));
    }
  }
}

std::string TableReader::Text(const char* name) const {
  std::string text;
  if (Push(name) == LUA_TSTRING) {
    std::size_t size = 0;
    const char* bytes = lua_tolstring(lua_, -1, &size);
    text.assign(bytes, size);
    if (!IsPlainLine(text)) Refuse(absl::StrCat("'", name, "' must be one line of UTF-8 without control characters"));
  }
  lua_pop(lua_, 1);
  return text;
}

std::optional<double> TableReader::Number(const char* name) const {
  std::optional<double> number;
  if (Push(name) == LUA_TNUMBER) number = lua_tonumber(lua_, -1);
  lua_pop(lua_, 1);
  if (number && !std::isfinite(*number)) Refuse(absl::StrCat("'", name, "' is not a finite number"));
  return number;
}

std::uint64_t TableReader::Count(const char* name) const {
  std::optional<double> number = Number(name);
  if (!number) return 0;
  if (*number < 1 || *number > 1e15) Refuse(absl::StrCat("'", name, "' counts from 1"));
  return static_cast<std::uint64_t>(*number);
}

int TableReader::Push(const char* name) const {
  lua_pushstring(lua_, name);
  return lua_rawget(lua_, index_);
}

int TableReader::PushList(const char* name) const {
  if (Push(name) == LUA_TNIL) return 0;
  int size = 0;
  for (const OrderedKey& key : SortedKeys(lua_, -1)) {
    if (!key.is_integer || key.integer != ++size)
      Refuse(absl::StrCat("'", name, "' counts from 1 and has no holes or names"));
  }
  return size;
}

void TableReader::Refuse(const std::string& why) const {
  luaL_error(lua_, "%s: %s", what_.c_str(), why.c_str());
  std::abort();  // not reached: luaL_error never returns
}

}  // namespace withy::plugin
