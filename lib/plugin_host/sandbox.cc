#include "sandbox.h"

#include <cstdio>
#include <cstdlib>
#include <exception>
#include <new>

#include "absl/strings/str_cat.h"
#include "plain_text.h"
#include "safe_base.h"
#include "standard_library.h"

namespace withy::plugin {
namespace {

constexpr std::size_t kLongestError = 2000;

// The start of the text of a chunk's name that comes from the plugin's own files; the host's modules have '='.
constexpr char kOwnFile = '@';

}  // namespace

Sandbox::Sandbox(const PluginSource& source, const PluginLimits& limits) : source_(source), limits_(limits) {
  lua_State* lua = lua_newstate(&Sandbox::Allocate, this);
  if (lua == nullptr) {
    stop_ = Stop::kMemory;
    return;
  }
  *static_cast<Sandbox**>(lua_getextraspace(lua)) = this;
  state_ = lua;
  absl::Status opened = Run([](lua_State* inner) { OpenStandardLibrary(inner); });
  if (!opened.ok() && stop_ == Stop::kNone) stop_ = Stop::kMemory;
}

Sandbox::~Sandbox() {
  if (state_ != nullptr) lua_close(state_);
}

absl::Status Sandbox::Run(const std::function<void(lua_State*)>& body) {
  if (exhausted()) return Failure(nullptr);
  stop_ = Stop::kNone;
  stop_message_.clear();
  location_[0] = '\0';
  lua_settop(state_, 0);
  lua_pushcfunction(state_, &Sandbox::OnError);
  lua_pushcfunction(state_, &Sandbox::RunBody);
  lua_pushlightuserdata(state_, const_cast<void*>(static_cast<const void*>(&body)));
  int status = lua_pcall(state_, 1, 0, 1);
  if (status == LUA_OK) return absl::OkStatus();
  if (status == LUA_ERRMEM && stop_ == Stop::kNone) stop_ = Stop::kMemory;
  absl::Status failure;
  try {
    failure = Failure(state_);
  } catch (const std::bad_alloc&) {
    stop_ = Stop::kMemory;
    lua_settop(state_, 0);
    failure = Failure(nullptr);
  }
  lua_settop(state_, 0);
  return failure;
}

int Sandbox::RunBody(lua_State* lua) {
  const auto& body = *static_cast<const std::function<void(lua_State*)>*>(lua_touserdata(lua, 1));
  lua_settop(lua, 0);
  char what[256] = "";
  try {
    body(lua);
    CheckMetatables(lua);
    return 0;
  } catch (const std::bad_alloc&) {
    Of(lua).stop_ = Stop::kMemory;
  } catch (const std::exception& error) {
    std::string_view(error.what()).copy(what, sizeof what - 1);
  }
  return luaL_error(lua, "%s", what);
}

// Runs where the error was raised, while the stack still says where that was.
int Sandbox::OnError(lua_State* lua) {
  Sandbox& self = Of(lua);
  if (self.stop_ == Stop::kNone) self.Location(self.location_, sizeof self.location_);
  if (lua_type(lua, 1) == LUA_TSTRING || luaL_callmeta(lua, 1, "__tostring")) return 1;
  lua_pushfstring(lua, "the error is a %s", luaL_typename(lua, 1));
  return 1;
}

absl::Status Sandbox::Failure(lua_State* lua) const {
  std::string where = location_[0] == '\0' ? "" : absl::StrCat(location_, ": ");
  switch (stop_) {
    case Stop::kMemory:
      return absl::ResourceExhaustedError(
          absl::StrCat(where, "needs more than ", limits_.memory_bytes >> 20, " MiB of memory"));
    case Stop::kTime:
      return absl::ResourceExhaustedError(absl::StrCat(where, "ran for more than ", limits_.cpu.count(), " ms"));
    case Stop::kOutput:
      return absl::ResourceExhaustedError(absl::StrCat(where, stop_message_));
    case Stop::kRefused:
    case Stop::kCannotTell:
      return absl::FailedPreconditionError(stop_message_);
    case Stop::kNone:
      break;
  }
  std::size_t size = 0;
  const char* text = lua_type(lua, -1) == LUA_TSTRING ? lua_tolstring(lua, -1, &size) : "";
  std::string message = AsPlainLine(std::string_view(text, size), kLongestError);
  for (const auto& [file, unused] : source_.files) {
    std::string start = ShownName(source_, file) + ":";
    if (message.compare(0, start.size(), start) == 0) return absl::InvalidArgumentError(message);
  }
  return absl::InvalidArgumentError(absl::StrCat(where, message));
}

void Sandbox::End(lua_State* lua, Stop stop, std::string_view message) {
  Sandbox& self = Of(lua);
  if (self.stop_ == Stop::kNone) {
    self.stop_ = stop;
    self.stop_message_.assign(message);
    self.Location(self.location_, sizeof self.location_);
  }
  lua_pushnil(lua);
  lua_error(lua);
  std::abort();  // not reached: lua_error never returns
}

void Sandbox::ChargeOutput(std::size_t bytes) {
  output_ += bytes;
  if (output_ <= limits_.output_bytes) return;
  End(state_, Stop::kOutput, absl::StrCat("gives out more than ", limits_.output_bytes >> 10, " KiB"));
}

void Sandbox::RaiseAgainIfEnded(lua_State* lua, int status) {
  Sandbox& self = Of(lua);
  if (status == LUA_ERRMEM && self.stop_ == Stop::kNone) self.stop_ = Stop::kMemory;
  if (self.stop_ != Stop::kNone) lua_error(lua);
}

void Sandbox::InterruptSoon() {
  auto out_of_time = [](lua_State* lua, lua_Debug*) { End(lua, Stop::kTime, ""); };
  lua_sethook(state_, out_of_time, LUA_MASKCALL | LUA_MASKRET | LUA_MASKLINE | LUA_MASKCOUNT, 1);
}

void Sandbox::Location(char* text, std::size_t size) const {
  lua_Debug frame;
  for (int level = 0; lua_getstack(state_, level, &frame) != 0; ++level) {
    lua_getinfo(state_, "Sl", &frame);
    if (frame.source[0] != kOwnFile || frame.currentline <= 0) continue;
    std::snprintf(text, size, "%s:%d", frame.source + 1, frame.currentline);
    return;
  }
}

std::string Sandbox::ShownName(const PluginSource& source, const std::string& file) {
  const std::string& path = source.path;
  const bool one_file = path.size() > 4 && path.compare(path.size() - 4, 4, ".lua") == 0;
  return one_file && file == "init.lua" ? path.substr(path.rfind('/') + 1) : file;
}

void Sandbox::Load(lua_State* lua, std::string_view text, const std::string& chunk_name) {
  if (luaL_loadbufferx(lua, text.data(), text.size(), chunk_name.c_str(), "t") == LUA_OK) return;
  lua_error(lua);
}

void* Sandbox::Allocate(void* self_pointer, void* block, std::size_t old_size, std::size_t new_size) {
  Sandbox& self = *static_cast<Sandbox*>(self_pointer);
  if (block == nullptr) old_size = 0;  // Lua then passes the kind of the object
  if (new_size == 0) {
    std::free(block);
    self.used_ -= old_size;
    return nullptr;
  }
  if (new_size > old_size && self.used_ + (new_size - old_size) > self.limits_.memory_bytes) {
    if (self.state_ != nullptr) self.Location(self.location_, sizeof self.location_);
    return nullptr;
  }
  void* moved = std::realloc(block, new_size);
  if (moved != nullptr) self.used_ = self.used_ - old_size + new_size;
  return moved;
}

}  // namespace withy::plugin
