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

namespace {

// What a list of unknowns says without capital and full stop, as the help of a finding says it.
std::string Sentence(std::string text) {
  if (text.empty()) return text;
  if (text.front() >= 'a' && text.front() <= 'z') text.front() = static_cast<char>(text.front() - 'a' + 'A');
  if (text.back() != '.') text += '.';
  return text;
}

}  // namespace

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
  Finding finding = MakeFinding(code, std::move(at), std::move(message), {}, Sentence(std::move(measure)));
  finding.severity = Severity::kCannotTell;
  return finding;
}

}  // namespace withy
