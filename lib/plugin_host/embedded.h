// Text files compiled into the library: the host's Lua modules, the built-in plugins, the templates of `plugin new`.
#ifndef WITHY_PLUGIN_HOST_EMBEDDED_H_
#define WITHY_PLUGIN_HOST_EMBEDDED_H_

#include <string_view>
#include <vector>

namespace withy::plugin {

struct EmbeddedFile {
  std::string_view file;  // path within its folder: "text.lua", "cut-sheet/init.lua", "check/init.lua"
  std::string_view text;
};

const std::vector<EmbeddedFile>& EmbeddedModules();
const std::vector<EmbeddedFile>& EmbeddedPlugins();
const std::vector<EmbeddedFile>& EmbeddedTemplates();

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_EMBEDDED_H_
