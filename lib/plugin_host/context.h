// `ctx`: what one run of a check, exporter or importer sees and gives.
//
// The host makes a Context, pushes it, calls the plugin's function with it, and finds what the function gave in
// `remarks` and `files`. Methods of `ctx` are declared in context_api.cc.
#ifndef WITHY_PLUGIN_HOST_CONTEXT_H_
#define WITHY_PLUGIN_HOST_CONTEXT_H_

#include <string>
#include <string_view>
#include <vector>

#include "api_table.h"
#include "exchange.pb.h"
#include "lua.hpp"
#include "proxy.h"
#include "withy/plugin_host/plugin_host.h"

namespace withy::plugin {

// A declared option with the value that was typed for it, or its default.
struct OptionValue {
  std::string name, type, value;
  bool is_set = false;
};

struct Context {
  unsigned use = kInCheck;                 // one of kInCheck, kInExporter, kInImporter
  const PluginSubject* subject = nullptr;  // null for importers
  Severity severity = Severity::kAdvice;   // of a finding that does not say
  std::string stem;
  std::string_view input_name, input;
  std::vector<OptionValue> options;
  int files_allowed = 0;

  std::vector<host::v1::Remark> remarks;
  std::vector<host::v1::File> files;
  // Set by ctx:need where there was no value: what the check ends with.
  host::v1::Remark cannot_tell;

  static Context& Of(lua_State* lua);
};

// Leaves `ctx` on the stack and makes it the one that methods speak to. The context must outlive the run.
void PushContext(lua_State* lua, Context& context);

// Leaves ctx.design, ctx.rod or ctx.report on the stack: the same object in every run of one state.
void PushRootOnce(lua_State* lua, const PluginSubject& subject, Root root);

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_CONTEXT_H_
