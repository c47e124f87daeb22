#include "withy/plugin_host/wanted.h"

#include "withy/review/placement.h"

namespace withy {

void AddWanted(const PluginEntry& entry, const Document& document, const ReviewOptions& options, v1::Report& report) {
  for (const std::string& want : entry.wants) {
    if (want != "placement") continue;
    PlacementOptions placement;
    placement.practices = options.practices;
    AddPlacement(document, placement, report);
  }
}

}  // namespace withy
