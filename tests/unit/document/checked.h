// A design from a few lines of text, checked; and what a test expects of it. The text is read by Protocol Buffers' own
// reader, so that these tests do not lean on the project's.
#ifndef WITHY_TESTS_UNIT_DOCUMENT_CHECKED_H_
#define WITHY_TESTS_UNIT_DOCUMENT_CHECKED_H_

#include <gmock/gmock.h>
#include <google/protobuf/text_format.h>
#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <string>
#include <vector>

#include "withy/document/document.h"

namespace withy {

inline std::vector<Finding> CheckDesign(const v1::Design& design) {
  Document document;
  document.design = design;
  return CheckDocument(document);
}

inline v1::Design DesignOf(const std::string& text) {
  v1::Design design;
  EXPECT_TRUE(google::protobuf::TextFormat::ParseFromString("format: 'withy/1' " + text, &design)) << text;
  return design;
}

inline std::vector<Finding> CheckText(const std::string& text) {
  return CheckDesign(DesignOf(text));
}

struct Expectation {
  std::string code;
  std::string at;
  std::map<std::string, double> numbers = {};
};

inline bool Meets(const Finding& finding, const Expectation& expected) {
  if (finding.code != expected.code || finding.at.ToString() != expected.at) return false;
  if (finding.numbers.size() != expected.numbers.size()) return false;
  for (const Number& number : finding.numbers) {
    const auto it = expected.numbers.find(number.name);
    if (it == expected.numbers.end() || !(std::abs(number.value - it->second) <= 1e-9 * std::abs(it->second)))
      return false;
  }
  return true;
}

inline std::string Told(const std::vector<Finding>& findings) {
  std::string out;
  for (const Finding& finding : findings) {
    out += finding.code + " at " + finding.at.ToString() + ": " + finding.message;
    for (const Number& number : finding.numbers) out += " " + number.name + "=" + std::to_string(number.value);
    out += "\n";
  }
  return out;
}

// The findings on `text` are these and no others, in this order.
inline void ExpectFindings(const std::string& text, const std::vector<Expectation>& expected) {
  const std::vector<Finding> findings = CheckText(text);
  bool same = findings.size() == expected.size();
  for (std::size_t i = 0; same && i < expected.size(); ++i) same = Meets(findings[i], expected[i]);
  EXPECT_TRUE(same) << text << "\n" << Told(findings);
}

}  // namespace withy

#endif  // WITHY_TESTS_UNIT_DOCUMENT_CHECKED_H_
