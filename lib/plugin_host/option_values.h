// Options as typed, matched with those that an exporter or importer declares.
#ifndef WITHY_PLUGIN_HOST_OPTION_VALUES_H_
#define WITHY_PLUGIN_HOST_OPTION_VALUES_H_

#include <vector>

#include "absl/status/status.h"
#include "context.h"
#include "exchange.pb.h"

namespace withy::plugin {

// Every declared option with the value typed in `task`, else its default. NotFound for one that is not declared, with
// the nearest; OutOfRange for a value that is not of the option's type.
absl::Status ReadOptionValues(const host::v1::Entry& entry, const host::v1::Task& task,
                              std::vector<OptionValue>& values);

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_OPTION_VALUES_H_
