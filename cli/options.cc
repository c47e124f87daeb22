#include "absl/strings/numbers.h"
#include "command.h"

namespace withy {

std::string Options::Value(std::string_view option, std::string_view otherwise) const {
  auto found = values_.find(std::string(option));
  return found == values_.end() ? std::string(otherwise) : found->second.back();
}

std::vector<std::string> Options::Values(std::string_view option) const {
  auto found = values_.find(std::string(option));
  return found == values_.end() ? std::vector<std::string>() : found->second;
}

long Options::Number(std::string_view option, long otherwise) const {
  long number = otherwise;
  if (Has(option) && !absl::SimpleAtoi(Value(option), &number)) return otherwise;
  return number;
}

}  // namespace withy
