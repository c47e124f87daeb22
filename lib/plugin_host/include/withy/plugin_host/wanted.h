// What an exporter wants of the report beyond a review (`wants` in its table): filled in only for the exporter that is
// run, since it takes long.
#ifndef WITHY_PLUGIN_HOST_WANTED_H_
#define WITHY_PLUGIN_HOST_WANTED_H_

#include "withy/document/document.h"
#include "withy/plugin_host/plugin_host.h"
#include "withy/review/review.h"
#include "withy/v1/report.pb.h"

namespace withy {

// Adds to the `report` of a review of `document` what `entry` wants. `options`: those of the review. Nothing for an
// entry that wants nothing.
void AddWanted(const PluginEntry& entry, const Document& document, const ReviewOptions& options, v1::Report& report);

}  // namespace withy

#endif  // WITHY_PLUGIN_HOST_WANTED_H_
