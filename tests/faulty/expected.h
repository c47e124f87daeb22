// What a faulty design must be told, kept beside it as `<slug>.expected.json`:
//
//   { "exit": 1,
//     "findings": [
//       { "code": "sections/taper-order", "severity": "error", "at": "blank.sections[b].taper.stations[2]",
//         "numbers": { "at_mm": 300, "previous_mm": 400 } } ] }
//
// The list is complete: a finding that is not in it fails the test. Wording is never compared. "limits" (max_bytes,
// max_depth, max_items) may lower a limit of reading, so that a file need not be huge to go over it. A finding may say
// "from_tip_mm": where on the rod it must be.
#ifndef WITHY_TESTS_FAULTY_EXPECTED_H_
#define WITHY_TESTS_FAULTY_EXPECTED_H_

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "withy/document/document.h"
#include "withy/findings/finding.h"

namespace withy::testing {

struct ExpectedFinding {
  std::string code;
  std::string severity;
  std::string at;
  std::map<std::string, double> numbers;
  std::optional<double> from_tip_mm;  // unset = not compared
};

struct Expected {
  ReadLimits limits;
  int exit_status = -1;
  std::vector<ExpectedFinding> findings;
};

// The file beside a design: ".../x.txtpb" -> ".../x.expected.json".
std::filesystem::path ExpectedPathOf(const std::filesystem::path& design);

// Reads it. `problem` says what is wrong with it, empty where nothing is.
Expected ReadExpected(const std::filesystem::path& path, std::string& problem);

// How `found` differs from `expected`, a line for each difference; empty where it does not. Order does not count.
// Numbers agree to 1e-6 relative, or 1e-9 where the expected number is zero.
std::string Differences(const Expected& expected, const std::vector<Finding>& found);

// A finding the way the expected file writes it, for messages.
std::string AsExpected(const Finding& finding);

}  // namespace withy::testing

#endif  // WITHY_TESTS_FAULTY_EXPECTED_H_
