// One interpreter for one plugin: bounded memory, the allow-listed library, and ends that the plugin cannot catch.
//
//   Sandbox sandbox(source, limits);
//   absl::Status status = sandbox.Run([&](lua_State* lua) { ... lua_call(lua, 1, 0); });
//
// Everything that touches the state happens inside `Run`, where a Lua error (a C++ exception in this build of Lua, so
// destructors run) becomes a Status that names file and line of the plugin. There are no coroutines, so the main state
// is always the one that runs.
#ifndef WITHY_PLUGIN_HOST_SANDBOX_H_
#define WITHY_PLUGIN_HOST_SANDBOX_H_

#include <cstddef>
#include <functional>
#include <string>
#include <string_view>

#include "absl/status/status.h"
#include "lua.hpp"
#include "withy/plugin_host/plugin_host.h"

namespace withy::plugin {

class Sandbox {
 public:
  // Why a run ended for good.
  enum class Stop { kNone, kMemory, kTime, kOutput, kRefused, kCannotTell };

  // `source` must outlive the sandbox.
  Sandbox(const PluginSource& source, const PluginLimits& limits);
  ~Sandbox();
  Sandbox(const Sandbox&) = delete;
  Sandbox& operator=(const Sandbox&) = delete;

  static Sandbox& Of(lua_State* lua) { return **static_cast<Sandbox**>(lua_getextraspace(lua)); }
  const PluginSource& source() const { return source_; }
  const PluginLimits& limits() const { return limits_; }

  // Runs `body` with errors caught. InvalidArgument for an error in the plugin, ResourceExhausted for a limit,
  // FailedPrecondition where the plugin refused (or needed what is not known); with file and line. Starts with no stop
  // set, except that nothing runs any more once memory or time are used up.
  absl::Status Run(const std::function<void(lua_State*)>& body);
  Stop stop() const { return stop_; }
  bool exhausted() const { return stop_ == Stop::kMemory || stop_ == Stop::kTime || stop_ == Stop::kOutput; }

  // Ends the run: raises an error that every pcall of the plugin raises again. For use by bindings.
  [[noreturn]] static void End(lua_State* lua, Stop stop, std::string_view message);

  // Counts bytes that the plugin gave out; ends the run when they are too many.
  void ChargeOutput(std::size_t bytes);

  // To be called when pcall has caught `status`: raises it again where the run has ended.
  static void RaiseAgainIfEnded(lua_State* lua, int status);

  // Makes the plugin stop at its next instruction. Safe in a signal handler.
  void InterruptSoon();

  // "init.lua:12", the innermost line of the plugin's own files that is running; "" = none. Writes at most `size` bytes
  // with the final 0, allocates nothing, and may be asked in a signal handler while a C function runs.
  void Location(char* text, std::size_t size) const;

  // What messages call one of the plugin's files: as it is named, but a plugin that is one file by that file's name.
  static std::string ShownName(const PluginSource& source, const std::string& file);

  // Compiles text, never bytecode, and leaves the function on the stack; raises an error where it does not compile.
  static void Load(lua_State* lua, std::string_view text, const std::string& chunk_name);

 private:
  static void* Allocate(void* self, void* block, std::size_t old_size, std::size_t new_size);
  static int RunBody(lua_State* lua);
  static int OnError(lua_State* lua);
  absl::Status Failure(lua_State* lua) const;

  const PluginSource& source_;
  const PluginLimits limits_;
  std::size_t used_ = 0;
  std::size_t output_ = 0;
  Stop stop_ = Stop::kNone;
  std::string stop_message_;
  char location_[128] = "";  // of the last error, or of the last allocation that was refused
  lua_State* state_ = nullptr;
};

// A C function for Lua made of one that may throw C++ exceptions: Lua would swallow them without a word.
template <int (*Function)(lua_State*)>
int Bound(lua_State* lua) {
  char what[256] = "";
  bool out_of_memory = false;
  try {
    return Function(lua);
  } catch (const std::bad_alloc&) {
    out_of_memory = true;
  } catch (const std::exception& error) {
    std::string_view(error.what()).copy(what, sizeof what - 1);
  }
  if (out_of_memory) Sandbox::End(lua, Sandbox::Stop::kMemory, "out of memory");
  return luaL_error(lua, "%s", what);
}

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_SANDBOX_H_
