// Going through tables in an order that is the same in every run. See standard_library.h.
#ifndef WITHY_PLUGIN_HOST_ORDERED_TABLES_H_
#define WITHY_PLUGIN_HOST_ORDERED_TABLES_H_

#include <string>
#include <vector>

#include "lua.hpp"

namespace withy::plugin {

// A key that has a place in the order: a number, or a string.
struct OrderedKey {
  bool is_number = false;
  bool is_integer = false;
  lua_Integer integer = 0;
  double number = 0;
  std::string text;
  bool operator<(const OrderedKey& other) const;
  void Push(lua_State* lua) const;
};

// The keys of the table at `index`, in order. Raises an error on a key that is neither number nor string.
std::vector<OrderedKey> SortedKeys(lua_State* lua, int index);

// `pairs` (an iterator over a snapshot of the keys: O(n log n) for the whole table) and `next` (O(n) each time).
int OrderedPairs(lua_State* lua);
int OrderedNext(lua_State* lua);

// table.sort: a stable merge sort.
int StableSort(lua_State* lua);

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_ORDERED_TABLES_H_
