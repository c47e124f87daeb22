#include "message_from_table.h"

#include <cmath>
#include <limits>
#include <string>
#include <string_view>

#include "absl/strings/str_cat.h"
#include "google/protobuf/struct.pb.h"
#include "ordered_tables.h"
#include "plain_text.h"
#include "schema_names.h"
#include "withy/findings/field_path.h"

namespace withy::plugin {
namespace {

using google::protobuf::FieldDescriptor;
using google::protobuf::Message;
using google::protobuf::Reflection;

constexpr int kMaxDepth = 60;  // the readers of a design allow 64

class Filler {
 public:
  explicit Filler(lua_State* lua) : lua_(lua) {}

  // Fills `message` from the table on top of the stack, which stays there.
  void Fill(const FieldPath& path, Message& message) {
    if (!lua_istable(lua_, -1)) Refuse(path, absl::StrCat("a ", message.GetDescriptor()->name(), " is a table"));
    luaL_checkstack(lua_, 8, nullptr);
    if (++depth_ > kMaxDepth) Refuse(path, "tables are too deep within one another");
    for (const OrderedKey& key : SortedKeys(lua_, -1)) {
      if (key.is_number) Refuse(path, absl::StrCat("a ", message.GetDescriptor()->name(), " is not a list"));
      key.Push(lua_);
      lua_rawget(lua_, -2);
      FillField(path, key.text, message);
      lua_pop(lua_, 1);
    }
    --depth_;
  }

 private:
  [[noreturn]] void Refuse(const FieldPath& path, std::string_view why) {
    std::string where = path.empty() ? "the design" : path.ToString();
    luaL_error(lua_, "%s: %s", where.c_str(), std::string(why).c_str());
    std::abort();  // not reached: luaL_error never returns
  }

  void FillField(const FieldPath& owner, const std::string& name, Message& message) {
    const FieldDescriptor* field = message.GetDescriptor()->FindFieldByName(name);
    FieldPath path = owner.Field(name);
    if (field == nullptr) Refuse(path, NoSuchName(*message.GetDescriptor(), name));
    const Reflection& reflection = *message.GetReflection();
    const google::protobuf::OneofDescriptor* oneof = field->real_containing_oneof();
    if (oneof != nullptr && reflection.HasOneof(message, oneof)) {
      Refuse(path, absl::StrCat("only one of ", oneof->name(), " can be set; ",
                                reflection.GetOneofFieldDescriptor(message, oneof)->name(), " is too"));
    }
    if (field->is_map()) return FillExtensions(path, *field, message);
    if (field->is_repeated()) return FillList(path, *field, message);
    if (field->cpp_type() == FieldDescriptor::CPPTYPE_MESSAGE)
      return Fill(path, *reflection.MutableMessage(&message, field));
    SetScalar(path, *field, message);
  }

  void FillList(const FieldPath& path, const FieldDescriptor& field, Message& message) {
    if (!lua_istable(lua_, -1)) Refuse(path, "a list is a table");
    lua_Integer expected = 0;
    for (const OrderedKey& key : SortedKeys(lua_, -1)) {
      if (!key.is_integer || key.integer != ++expected) Refuse(path, "a list counts from 1 and has no holes or names");
      lua_rawgeti(lua_, -1, expected);
      FieldPath item = path.Item("", static_cast<int>(expected - 1));
      if (field.cpp_type() == FieldDescriptor::CPPTYPE_MESSAGE) {
        Fill(item, *message.GetReflection()->AddMessage(&message, &field));
      } else {
        SetScalar(item, field, message);
      }
      lua_pop(lua_, 1);
    }
  }

  void FillExtensions(const FieldPath& path, const FieldDescriptor& field, Message& message) {
    if (!lua_istable(lua_, -1)) Refuse(path, "extensions are a table of tables by plugin name");
    for (const OrderedKey& key : SortedKeys(lua_, -1)) {
      if (key.is_number) Refuse(path, "extensions are named after plugins");
      Message* entry = message.GetReflection()->AddMessage(&message, &field);
      entry->GetReflection()->SetString(entry, entry->GetDescriptor()->map_key(), key.text);
      key.Push(lua_);
      lua_rawget(lua_, -2);
      Message* value = entry->GetReflection()->MutableMessage(entry, entry->GetDescriptor()->map_value());
      FillStruct(path.Item(key.text, -1), *static_cast<google::protobuf::Struct*>(value));
      lua_pop(lua_, 1);
    }
  }

  void FillStruct(const FieldPath& path, google::protobuf::Struct& target) {
    if (!lua_istable(lua_, -1)) Refuse(path, "an extension is a table");
    for (const OrderedKey& key : SortedKeys(lua_, -1)) {
      if (key.is_number) Refuse(path, "a table of an extension has either names or numbers as keys, not both");
      if (!IsUtf8(key.text)) Refuse(path, "a name is not UTF-8");
      key.Push(lua_);
      lua_rawget(lua_, -2);
      FillValue(path.Field(key.text), (*target.mutable_fields())[key.text]);
      lua_pop(lua_, 1);
    }
  }

  void FillValue(const FieldPath& path, google::protobuf::Value& target) {
    luaL_checkstack(lua_, 8, nullptr);
    if (++depth_ > kMaxDepth) Refuse(path, "tables are too deep within one another");
    switch (lua_type(lua_, -1)) {
      case LUA_TNUMBER:
        target.set_number_value(Number(path));
        break;
      case LUA_TSTRING:
        target.set_string_value(Text(path));
        break;
      case LUA_TBOOLEAN:
        target.set_bool_value(lua_toboolean(lua_, -1) != 0);
        break;
      case LUA_TTABLE:
        if (lua_rawlen(lua_, -1) == 0) {
          FillStruct(path, *target.mutable_struct_value());
          break;
        }
        for (lua_Integer i = 1; i <= static_cast<lua_Integer>(lua_rawlen(lua_, -1)); ++i) {
          lua_rawgeti(lua_, -1, i);
          FillValue(path.Item("", static_cast<int>(i - 1)), *target.mutable_list_value()->add_values());
          lua_pop(lua_, 1);
        }
        break;
      default:
        Refuse(path, absl::StrCat("a ", luaL_typename(lua_, -1), " cannot be kept in a design"));
    }
    --depth_;
  }

  double Number(const FieldPath& path) {
    if (lua_type(lua_, -1) != LUA_TNUMBER)
      Refuse(path, absl::StrCat("must be a number, not a ", luaL_typename(lua_, -1)));
    double number = lua_tonumber(lua_, -1);
    if (!std::isfinite(number)) Refuse(path, "is not a finite number");
    return number;
  }

  lua_Integer Whole(const FieldPath& path, lua_Integer low, lua_Integer high) {
    int exact = 0;
    Number(path);
    lua_Integer number = lua_tointegerx(lua_, -1, &exact);
    if (exact == 0 || number < low || number > high)
      Refuse(path, absl::StrCat("must be a whole number from ", low, " to ", high));
    return number;
  }

  std::string Text(const FieldPath& path) {
    if (lua_type(lua_, -1) != LUA_TSTRING)
      Refuse(path, absl::StrCat("must be a text, not a ", luaL_typename(lua_, -1)));
    std::size_t size = 0;
    const char* bytes = lua_tolstring(lua_, -1, &size);
    std::string text(bytes, size);
    if (!IsUtf8(text)) Refuse(path, "is not UTF-8");
    return text;
  }

  void SetScalar(const FieldPath& path, const FieldDescriptor& field, Message& message) {
    const Reflection& reflection = *message.GetReflection();
    const bool add = field.is_repeated();
    switch (field.cpp_type()) {
      case FieldDescriptor::CPPTYPE_STRING:
        return add ? reflection.AddString(&message, &field, Text(path))
                   : reflection.SetString(&message, &field, Text(path));
      case FieldDescriptor::CPPTYPE_DOUBLE:
        return add ? reflection.AddDouble(&message, &field, Number(path))
                   : reflection.SetDouble(&message, &field, Number(path));
      case FieldDescriptor::CPPTYPE_UINT32: {
        auto number = static_cast<std::uint32_t>(Whole(path, 0, std::numeric_limits<std::uint32_t>::max()));
        return add ? reflection.AddUInt32(&message, &field, number) : reflection.SetUInt32(&message, &field, number);
      }
      case FieldDescriptor::CPPTYPE_INT32: {
        auto number = static_cast<std::int32_t>(
            Whole(path, std::numeric_limits<std::int32_t>::min(), std::numeric_limits<std::int32_t>::max()));
        return add ? reflection.AddInt32(&message, &field, number) : reflection.SetInt32(&message, &field, number);
      }
      case FieldDescriptor::CPPTYPE_BOOL:
        if (!lua_isboolean(lua_, -1)) Refuse(path, "must be true or false");
        return reflection.SetBool(&message, &field, lua_toboolean(lua_, -1) != 0);
      case FieldDescriptor::CPPTYPE_ENUM:
        return SetEnum(path, field, message);
      default:
        Refuse(path, "cannot be set by a plugin");
    }
  }

  void SetEnum(const FieldPath& path, const FieldDescriptor& field, Message& message) {
    std::string name = Text(path);
    const google::protobuf::EnumDescriptor& type = *field.enum_type();
    const google::protobuf::EnumValueDescriptor* value = type.FindValueByName(name);
    std::vector<std::string_view> known;
    for (int i = 0; i < type.value_count(); ++i) known.push_back(type.value(i)->name());
    if (value == nullptr) Refuse(path, absl::StrCat("there is no '", name, "'", DidYouMean(name, known)));
    message.GetReflection()->SetEnum(&message, &field, value);
  }

  lua_State* lua_;
  int depth_ = 0;
};

}  // namespace

void FillFromTable(lua_State* lua, int index, Message& message) {
  lua_pushvalue(lua, index);
  Filler(lua).Fill(FieldPath(), message);
  lua_pop(lua, 1);
}

}  // namespace withy::plugin
