// withy.units: lengths and masses as people write and read them.
#ifndef WITHY_PLUGIN_HOST_MODULE_UNITS_H_
#define WITHY_PLUGIN_HOST_MODULE_UNITS_H_

#include "api_table.h"

namespace withy::plugin {

ApiModule UnitsModule();

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_MODULE_UNITS_H_
