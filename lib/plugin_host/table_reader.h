// Reads tables that a plugin wrote, strictly: unknown names and wrong types are errors that say where and what instead.
#ifndef WITHY_PLUGIN_HOST_TABLE_READER_H_
#define WITHY_PLUGIN_HOST_TABLE_READER_H_

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "api_table.h"
#include "lua.hpp"

namespace withy::plugin {

class TableReader {
 public:
  // The table at `index`, which must have the fields of `fields` and no others; raises an error that begins with
  // `what`.
  TableReader(lua_State* lua, int index, std::string what, const std::vector<ApiField>& fields);

  // The field as text; "" where it is not there.
  std::string Text(const char* name) const;
  std::optional<double> Number(const char* name) const;
  // A positive whole number; 0 where it is not there.
  std::uint64_t Count(const char* name) const;
  // Leaves the field on the stack and returns its type.
  int Push(const char* name) const;
  // How many items the list `name` has; leaves it on the stack (nil where it is not there).
  int PushList(const char* name) const;

  const std::string& what() const { return what_; }
  // Raises "what: why".
  [[noreturn]] void Refuse(const std::string& why) const;

 private:
  lua_State* lua_;
  int index_;
  std::string what_;
};

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_TABLE_READER_H_
