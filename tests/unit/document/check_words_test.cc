#include "checked.h"

namespace withy {
namespace {

TEST(CheckWords, UnknownOnesAreAskedAbout) {
  ExpectFindings("intent { technique: 'castign' }", {{"document/unknown-word", "intent.technique"}});
  const auto findings = CheckText("intent { technique: 'castign' }");
  EXPECT_EQ(findings[0].severity, Severity::kWarning);
  EXPECT_NE(findings[0].message.find("did you mean `casting`"), std::string::npos) << findings[0].message;
  EXPECT_NE(findings[0].help.find("spinning"), std::string::npos) << findings[0].help;
}

TEST(CheckWords, KnownAndDeliberateOnesAreNot) {
  ExpectFindings("intent { technique: 'casting' hand: 'left' }", {});
  ExpectFindings("intent { technique: 'other: ice jigging' }", {});
  ExpectFindings("intent { technique: 'other:' }", {{"document/unknown-word", "intent.technique"}});
}

TEST(CheckTexts, Dates) {
  // ISO 8601; leap years by the Gregorian rule: 2024 and 2000 have one, 2026 and 1900 have none.
  for (const char* date : {"2026-03-14", "2024-02-29", "2000-02-29", "2026-03-14T18:30", "2026-03-14T23:59:59"}) {
    ExpectFindings(std::string("log { done { step: 'sanded' } date: '") + date + "' }", {});
  }
  for (const char* date : {"2026-3-14", "14.03.2026", "2026-02-29", "1900-02-29", "2026-13-01", "2026-00-10",
                           "2026-01-00", "2026-01-32", "2026-03-14 18:30", "2026-03-14T24:00", "2026-03-14T18:60",
                           "2026-03-14T18", "yesterday", "2026-03-14T18:30Z"}) {
    ExpectFindings(std::string("log { done { step: 'sanded' } date: '") + date + "' }",
                   {{"document/bad-date", "log[0].date"}});
  }
}

TEST(CheckTexts, Identity) {
  const std::string digest = "sha256:" + std::string(64, 'a');
  ExpectFindings(
      "identity { uuid: '123e4567-e89b-12d3-a456-426614174000' license: 'CC-BY-4.0' parent_digest: '" + digest + "' }",
      {});
  ExpectFindings(
      "identity { uuid: '123E4567-e89b-12d3-a456-426614174000' license: 'my own' parent_digest: 'sha256:aa' }",
      {{"document/bad-uuid", "identity.uuid"},
       {"document/bad-license", "identity.license"},
       {"document/bad-digest", "identity.parent_digest"}});
}

TEST(CheckTexts, LicenceExpressions) {
  // Examples of SPDX 2.3, annex D, and what its grammar refuses.
  for (const char* good : {"CDDL-1.0", "CDDL-1.0+", "LicenseRef-23", "DocumentRef-spdx-tool-1.2:LicenseRef-MIT-Style-2",
                           "LGPL-2.1-only OR MIT OR BSD-3-Clause", "GPL-2.0-or-later WITH Bison-exception-2.2",
                           "MIT AND (LGPL-2.1-or-later OR BSD-3-Clause)", "((MIT))"}) {
    ExpectFindings(std::string("identity { license: '") + good + "' }", {});
  }
  for (const char* bad : {"MIT OR", "OR MIT", "MIT MIT", "(MIT", "MIT)", "()", "MIT WITH", "a/b", "MIT_1", "AND"}) {
    ExpectFindings(std::string("identity { license: '") + bad + "' }", {{"document/bad-license", "identity.license"}});
  }
  ExpectFindings("identity { license: '" + std::string(200000, '(') + "' }",
                 {{"document/bad-license", "identity.license"}});
}

TEST(CheckTexts, Money) {
  const auto price = [](const std::string& money) { return "threads { id: 't' item { price { " + money + " } } }"; };
  ExpectFindings(price("currency: 'EUR' amount: '12.50'"), {});
  ExpectFindings(price("currency: 'EUR' amount: '-3'"), {});
  for (const char* amount : {"12,50", "1.2.3", ".5", "5.", "1e3", "12 ", "$5", "0x1"}) {
    ExpectFindings(price(std::string("currency: 'EUR' amount: '") + amount + "'"),
                   {{"document/bad-money", "threads[t].item.price.amount"}});
  }
  ExpectFindings(price("currency: 'eur' amount: '5'"), {{"document/bad-currency", "threads[t].item.price.currency"}});
  ExpectFindings(price("currency: 'Euro' amount: '5'"), {{"document/bad-currency", "threads[t].item.price.currency"}});
  ExpectFindings(price("amount: '5'"), {{"document/bad-currency", "threads[t].item.price"}});
  ExpectFindings(price("currency: 'EUR'"), {{"document/bad-money", "threads[t].item.price"}});
}

}  // namespace
}  // namespace withy
