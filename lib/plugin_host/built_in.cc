// The plugins compiled into the library.
#include <string>

#include "embedded.h"
#include "withy/plugin_host/plugin_host.h"

namespace withy {

using namespace plugin;

const std::vector<PluginSource>& BuiltInPlugins() {
  static const std::vector<PluginSource> plugins = [] {
    std::map<std::string, PluginSource> by_name;
    for (const EmbeddedFile& embedded : EmbeddedPlugins()) {
      std::string path(embedded.file);
      std::size_t slash = path.find('/');
      PluginSource& plugin = by_name[path.substr(0, slash)];
      plugin.path = "built-in";
      plugin.built_in = true;
      plugin.files[path.substr(slash + 1)] = std::string(embedded.text);
    }
    std::vector<PluginSource> sorted;
    for (auto& [name, plugin] : by_name) sorted.push_back(std::move(plugin));
    return sorted;
  }();
  return plugins;
}

}  // namespace withy
