// What the tests of reading share: findings cut down to what is stable, and the designs in data/.
//
// data/ holds two invented designs of the workshop of Ines Averill, written by hand for the schema.
#ifndef WITHY_TESTS_UNIT_DOCUMENT_READING_H_
#define WITHY_TESTS_UNIT_DOCUMENT_READING_H_

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <ostream>
#include <string>
#include <vector>

#include "withy/document/document.h"

namespace withy {

// Code, place and path of a finding; its wording may change.
struct Fault {
  std::string code;
  int line = 0;
  int column = 0;
  std::string path;
  bool operator==(const Fault&) const = default;
  friend std::ostream& operator<<(std::ostream& out, const Fault& fault) {
    return out << fault.line << ':' << fault.column << ' ' << fault.code << " at '" << fault.path << "'";
  }
};

inline std::vector<Fault> FaultsOf(const ReadResult& result) {
  std::vector<Fault> faults;
  for (const Finding& finding : result.findings) {
    const Position place = finding.position.value_or(Position{0, -1, -1});
    faults.push_back({finding.code, place.line, place.column, finding.at.ToString()});
  }
  return faults;
}

// A case of a table: bytes, and all that must be found in them.
struct BadInput {
  std::string name;
  std::string bytes;
  std::vector<Fault> faults;
  bool readable = false;
  friend std::ostream& operator<<(std::ostream& out, const BadInput& input) { return out << input.name; }
};

inline std::string NameOfCase(const ::testing::TestParamInfo<BadInput>& info) {
  return info.param.name;
}

inline void ExpectFaults(const BadInput& input) {
  const ReadResult result = ReadDesign("test", input.bytes);
  EXPECT_EQ(FaultsOf(result), input.faults) << input.bytes;
  EXPECT_EQ(result.document.has_value(), input.readable);
  for (const Finding& finding : result.findings) {
    EXPECT_FALSE(finding.message.empty());
    EXPECT_FALSE(finding.help.empty()) << finding.message;
    if (finding.position) {
      EXPECT_LE(finding.position->offset, input.bytes.size());
    }
  }
}

inline std::string DataFile(const std::string& name) {
  std::ifstream file(WITHY_SOURCE_DIR "/tests/unit/document/data/" + name, std::ios::binary);
  EXPECT_TRUE(file) << name;
  return {std::istreambuf_iterator<char>(file), {}};
}

}  // namespace withy

#endif  // WITHY_TESTS_UNIT_DOCUMENT_READING_H_
