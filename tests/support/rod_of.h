// A rod from a few lines of a design in the text form.
//
//   Rod rod = RodOf(R"(blank { sections { id: "b" length { mm: 2000 } } })");
//
// `format` is added. A design that cannot be read fails the test.
#ifndef WITHY_TESTS_SUPPORT_ROD_OF_H_
#define WITHY_TESTS_SUPPORT_ROD_OF_H_

#include <string>

#include "gtest/gtest.h"
#include "withy/document/document.h"
#include "withy/rod/resolve.h"

namespace withy::testing {

inline ReadResult ReadText(const std::string& text) {
  ReadResult read = ReadDesign("test", "format: \"withy/1\"\n" + text);
  if (!read.document) ADD_FAILURE() << (read.findings.empty() ? "unreadable" : read.findings[0].message);
  return read;
}

inline Rod RodOf(const std::string& text) {
  const ReadResult read = ReadText(text);
  return read.document ? Resolve(*read.document) : Rod();
}

// Codes of a list of findings, in order.
inline std::vector<std::string> CodesIn(const std::vector<Finding>& findings) {
  std::vector<std::string> codes;
  for (const Finding& finding : findings) codes.push_back(finding.code);
  return codes;
}

}  // namespace withy::testing

#endif  // WITHY_TESTS_SUPPORT_ROD_OF_H_
