// Severities as a plugin writes them. 'cannot tell' is not among them: ctx:need gives it.
#ifndef WITHY_PLUGIN_HOST_SEVERITY_NAMES_H_
#define WITHY_PLUGIN_HOST_SEVERITY_NAMES_H_

#include <optional>
#include <string_view>

#include "withy/findings/finding.h"

namespace withy::plugin {

inline constexpr char kSeverityChoice[] = "\"error\", \"warning\" or \"advice\"";

inline std::optional<Severity> SeverityNamed(std::string_view name) {
  for (Severity severity : {Severity::kError, Severity::kWarning, Severity::kAdvice}) {
    if (SeverityName(severity) == name) return severity;
  }
  return std::nullopt;
}

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_SEVERITY_NAMES_H_
