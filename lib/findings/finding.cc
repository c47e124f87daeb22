#include "withy/findings/finding.h"

#include <utility>

namespace withy {

std::string_view SeverityName(Severity severity) {
  switch (severity) {
    case Severity::kAdvice:
      return "advice";
    case Severity::kCannotTell:
      return "cannot tell";
    case Severity::kWarning:
      return "warning";
    case Severity::kError:
      return "error";
  }
  return "";
}

Finding MakeFinding(const Code& code, FieldPath at, std::string message, std::vector<Number> numbers,
                    std::string help) {
  Finding finding;
  finding.code = code.name;
  finding.severity = code.severity;
  finding.at = std::move(at);
  finding.numbers = std::move(numbers);
  finding.message = std::move(message);
  finding.help = help.empty() ? std::string(code.action) : std::move(help);
  return finding;
}

Finding CannotTell(const Code& code, FieldPath at, std::string message, std::string measure) {
  Finding finding = MakeFinding(code, std::move(at), std::move(message), {}, std::move(measure));
  finding.severity = Severity::kCannotTell;
  return finding;
}

}  // namespace withy
