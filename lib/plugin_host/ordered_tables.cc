#include "ordered_tables.h"

#include <algorithm>
#include <numeric>
#include <optional>

namespace withy::plugin {
namespace {

OrderedKey KeyAt(lua_State* lua, int index) {
  OrderedKey key;
  if (lua_isinteger(lua, index)) {
    key.is_number = key.is_integer = true;
    key.integer = lua_tointeger(lua, index);
    key.number = static_cast<double>(key.integer);
  } else if (lua_type(lua, index) == LUA_TNUMBER) {
    key.is_number = true;
    key.number = lua_tonumber(lua, index);
  } else if (lua_type(lua, index) == LUA_TSTRING) {
    std::size_t size = 0;
    const char* text = lua_tolstring(lua, index, &size);
    key.text.assign(text, size);
  } else {
    luaL_error(lua, "a table with a %s as key cannot be gone through: it has no order", luaL_typename(lua, index));
  }
  return key;
}

// The iterator of `pairs`. Upvalues: the keys in order (a list), how many were given.
int NextPair(lua_State* lua) {
  lua_Integer given = lua_tointeger(lua, lua_upvalueindex(2));
  while (true) {
    lua_settop(lua, 1);
    if (lua_rawgeti(lua, lua_upvalueindex(1), ++given) == LUA_TNIL) return 1;
    lua_pushvalue(lua, -1);
    if (lua_rawget(lua, 1) != LUA_TNIL) break;  // a key may have gone since
  }
  lua_pushinteger(lua, given);
  lua_replace(lua, lua_upvalueindex(2));
  return 2;
}

// Merges order[begin, middle) and order[middle, end), both sorted. The elements stand in the table at index 3.
class Merger {
 public:
  explicit Merger(lua_State* lua) : lua_(lua), by_function_(!lua_isnoneornil(lua, 2)) {}

  void Merge(const std::vector<int>& from, std::vector<int>& to, std::size_t begin, std::size_t middle,
             std::size_t end) {
    std::size_t left = begin;
    std::size_t right = middle;
    for (std::size_t at = begin; at < end; ++at) {
      bool take_right = left == middle || (right < end && Less(from[right], from[left]));
      to[at] = take_right ? from[right++] : from[left++];
    }
  }

 private:
  bool Less(int a, int b) {
    if (by_function_) lua_pushvalue(lua_, 2);
    lua_rawgeti(lua_, 3, a);
    lua_rawgeti(lua_, 3, b);
    bool less = false;
    if (by_function_) {
      lua_call(lua_, 2, 1);
      less = lua_toboolean(lua_, -1) != 0;
      lua_pop(lua_, 1);
    } else {
      less = lua_compare(lua_, -2, -1, LUA_OPLT) != 0;
      lua_pop(lua_, 2);
    }
    return less;
  }

  lua_State* lua_;
  bool by_function_;
};

}  // namespace

bool OrderedKey::operator<(const OrderedKey& other) const {
  if (is_number != other.is_number) return is_number;
  if (!is_number) return text < other.text;
  return is_integer && other.is_integer ? integer < other.integer : number < other.number;
}

void OrderedKey::Push(lua_State* lua) const {
  if (!is_number) {
    lua_pushlstring(lua, text.data(), text.size());
  } else if (is_integer) {
    lua_pushinteger(lua, integer);
  } else {
    lua_pushnumber(lua, number);
  }
}

std::vector<OrderedKey> SortedKeys(lua_State* lua, int index) {
  index = lua_absindex(lua, index);
  luaL_checkstack(lua, 3, nullptr);
  std::vector<OrderedKey> keys;
  lua_pushnil(lua);
  while (lua_next(lua, index) != 0) {
    lua_pop(lua, 1);
    keys.push_back(KeyAt(lua, -1));
  }
  std::sort(keys.begin(), keys.end());
  return keys;
}

int OrderedPairs(lua_State* lua) {
  luaL_checkany(lua, 1);
  if (luaL_getmetafield(lua, 1, "__pairs") != LUA_TNIL) {
    lua_pushvalue(lua, 1);
    lua_call(lua, 1, 3);
    return 3;
  }
  luaL_checktype(lua, 1, LUA_TTABLE);
  std::vector<OrderedKey> keys = SortedKeys(lua, 1);
  lua_createtable(lua, static_cast<int>(keys.size()), 0);
  for (std::size_t i = 0; i < keys.size(); ++i) {
    keys[i].Push(lua);
    lua_rawseti(lua, -2, static_cast<lua_Integer>(i + 1));
  }
  lua_pushinteger(lua, 0);
  lua_pushcclosure(lua, NextPair, 2);
  lua_pushvalue(lua, 1);
  lua_pushnil(lua);
  return 3;
}

int OrderedNext(lua_State* lua) {
  luaL_checktype(lua, 1, LUA_TTABLE);
  lua_settop(lua, 2);
  std::optional<OrderedKey> after;
  if (!lua_isnil(lua, 2)) after = KeyAt(lua, 2);
  std::optional<OrderedKey> best;
  lua_pushnil(lua);
  while (lua_next(lua, 1) != 0) {
    lua_pop(lua, 1);
    OrderedKey key = KeyAt(lua, -1);
    if ((!after || *after < key) && (!best || key < *best)) best = std::move(key);
  }
  if (!best) {
    lua_pushnil(lua);
    return 1;
  }
  best->Push(lua);
  lua_pushvalue(lua, -1);
  lua_rawget(lua, 1);
  return 2;
}

int StableSort(lua_State* lua) {
  luaL_checktype(lua, 1, LUA_TTABLE);
  if (!lua_isnoneornil(lua, 2)) luaL_checktype(lua, 2, LUA_TFUNCTION);
  lua_settop(lua, 2);
  const auto size = static_cast<std::size_t>(lua_rawlen(lua, 1));
  lua_createtable(lua, static_cast<int>(std::min<std::size_t>(size, 1 << 20)), 0);
  for (std::size_t i = 1; i <= size; ++i) {
    lua_rawgeti(lua, 1, static_cast<lua_Integer>(i));
    lua_rawseti(lua, 3, static_cast<lua_Integer>(i));
  }
  std::vector<int> order(size);
  std::iota(order.begin(), order.end(), 1);
  std::vector<int> merged(size);
  Merger merger(lua);
  for (std::size_t width = 1; width < size; width *= 2) {
    for (std::size_t begin = 0; begin < size; begin += 2 * width) {
      merger.Merge(order, merged, begin, std::min(begin + width, size), std::min(begin + 2 * width, size));
    }
    order.swap(merged);
  }
  for (std::size_t i = 0; i < size; ++i) {
    lua_rawgeti(lua, 3, order[i]);
    lua_rawseti(lua, 1, static_cast<lua_Integer>(i + 1));
  }
  return 0;
}

}  // namespace withy::plugin
