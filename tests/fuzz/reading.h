// What must hold for whatever bytes a reader is given; a violation ends the program, which is how libFuzzer is told.
#ifndef WITHY_TESTS_FUZZ_READING_H_
#define WITHY_TESTS_FUZZ_READING_H_

#include <cstdlib>
#include <string>

#include "withy/document/document.h"

namespace withy {

inline void Require(bool holds) {
  if (!holds) std::abort();
}

// Every finding has its place, an unreadable file says why, and what was read without a finding means the same after it
// was written in any form and read again.
inline void RequireSoundReading(const std::string& bytes) {
  const ReadResult result = ReadDesign("fuzz", bytes);
  Require(result.document || !result.findings.empty());
  for (const Finding& finding : result.findings) {
    Require(finding.position && finding.position->offset <= bytes.size());
    Require(!finding.message.empty() && !finding.help.empty());
  }
  if (!result.document || !result.findings.empty()) return;
  const std::string digest = DesignDigest(result.document->design);
  for (const Form form : {Form::kText, Form::kJson, Form::kBinary}) {
    const ReadResult again = ReadDesign("again", WriteDesign(result.document->design, form));
    Require(again.document && again.findings.empty());
    Require(DesignDigest(again.document->design) == digest);
  }
}

}  // namespace withy

#endif  // WITHY_TESTS_FUZZ_READING_H_
