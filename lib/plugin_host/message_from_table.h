// A Lua table as a message: what an importer returns. Names are strict, as they are when read.
//
//   { blank = { name = "x", sections = { { id = "butt", length = { inch = 87, source = "MEASURED" } } } } }
//
// Lists count from 1 without holes; an enum is the name of its value; an extension is any table of text, numbers,
// booleans and tables. Raises an error that begins with the path: "blank.sections[0].lenght: Section has no field ...".
#ifndef WITHY_PLUGIN_HOST_MESSAGE_FROM_TABLE_H_
#define WITHY_PLUGIN_HOST_MESSAGE_FROM_TABLE_H_

#include "google/protobuf/message.h"
#include "lua.hpp"

namespace withy::plugin {

void FillFromTable(lua_State* lua, int index, google::protobuf::Message& message);

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_MESSAGE_FROM_TABLE_H_
