#include <set>

#include "checked.h"

namespace withy {
namespace {

TEST(CheckMessages, Places) {
  const auto wrap = [](const std::string& place) {
    return "blank { sections { id: 'tip' } } wraps { id: 'v' } wraps { id: 'w' place { " + place + " } }";
  };
  ExpectFindings(wrap("from_butt { mm: 300 }"), {});
  ExpectFindings(wrap("from_section_butt { mm: 30 } section: 'tip'"), {});
  ExpectFindings(wrap("after: 'v' gap { mm: 2 }"), {});
  ExpectFindings(wrap(""), {{"document/place-without-origin", "wraps[w].place"}});
  ExpectFindings(wrap("gap { mm: 2 }"), {{"document/place-without-origin", "wraps[w].place"}});
  ExpectFindings(wrap("from_section_butt { mm: 30 }"), {{"document/section-with-place", "wraps[w].place"}});
  ExpectFindings(wrap("from_butt { mm: 30 } section: 'tip'"),
                 {{"document/section-with-place", "wraps[w].place.section"}});
}

TEST(CheckMessages, ChoicesThatAreNotMade) {
  ExpectFindings("load_cases { id: 'lift' } blank { bench { id: 'b' } } log { date: '2026-03-14' note: 'wet day' }",
                 {{"document/unset-oneof", "load_cases[lift]"},
                  {"document/unset-oneof", "blank.bench[b]"},
                  {"document/unset-oneof", "log[0]"}});
}

TEST(CheckMessages, TheLogRunsForward) {
  const auto entry = [](const std::string& date, const std::string& more = "") {
    return "log { date: '" + date + "' done { step: 'sanded' } " + more + " } ";
  };
  ExpectFindings(entry("2026-03-14") + entry("2026-03-14T18:30") + entry("2026-03-14") + entry("2026-03-15"), {});
  ExpectFindings(entry("2026-03-14T18:30") + entry("2026-03-14T09:00", "id: 'e2'"),
                 {{"document/log-order", "log[e2].date"}});
  ExpectFindings(entry("2026-03-14") + entry("2025-12-31") + entry("2026-01-01"),
                 {{"document/log-order", "log[1].date"}});
  // A text that is no date is told of once, and compared with nothing.
  ExpectFindings(entry("2026-03-14") + entry("2026-3-1"), {{"document/bad-date", "log[1].date"}});
}

TEST(CheckMessages, Waivers) {
  ExpectFindings("waivers { code: 'guides/spacing' reason: 'ordered so' }", {});
  ExpectFindings("waivers { code: 'guides/spacing' }", {{"document/waiver-without-reason", "waivers[0]"}});
}

TEST(CheckMessages, PersonalData) {
  ExpectFindings("intent { customer { reach { mm: 350 } } }", {{"document/personal-data", "intent.customer"}});
  ExpectFindings("intent { customer {} }", {});
  EXPECT_EQ(CheckText("intent { customer { name: 'A. N. Angler' } }")[0].severity, Severity::kAdvice);
}

TEST(CheckMessages, ADesignMadeInMemorySaysItsFormat) {
  v1::Design design;
  ASSERT_EQ(CheckDesign(design).size(), 1u);
  EXPECT_EQ(CheckDesign(design)[0].code, "document/format-missing");
  design.set_format("withy/99");
  ASSERT_EQ(CheckDesign(design).size(), 1u);
  EXPECT_EQ(CheckDesign(design)[0].code, "document/format-unknown");
  // One that was read has been told so by the reader.
  Document document;
  document.bytes = "x";
  EXPECT_TRUE(CheckDocument(document).empty());
}

TEST(CheckMessages, DataOfPluginsIsLeftAlone) {
  v1::Design design = DesignOf("");
  (*(*design.mutable_extensions())["club"].mutable_fields())["id"].set_string_value("[]");
  EXPECT_TRUE(CheckDesign(design).empty());
}

TEST(CheckMessages, AWorkingDesignIsClean) {
  ExpectFindings(R"(
      identity { name: "Reed bank special" license: "CC-BY-4.0" }
      intent { technique: "spinning" overall_length { inch: 81 plus_minus: 0.125 } reel { mass { g: 220 } } }
      blank { sections { id: "one" material: "carbon" length { inch: 78 }
                         taper { stations { at { mm: 0 } outer { mm: 12 } wall { mm: 1.1 } }
                                 stations { at { mm: 1981.2 } outer { mm: 1.6 } wall { mm: 0.4 } } } } }
      guide_models { id: "sf6" form: "single_foot" ring_outer { mm: 6 } mass { g: 0.4 } }
      guides { id: "g1" model: "sf6" from_tip { inch: 4 } }
      tip_top { id: "top" tube_bore { in64: 4.5 } }
      threads { id: "red" diameter { mm: 0.15 } }
      wraps { id: "w1" kind: "guide" on: "g1" on: "top" thread: "red" })",
                 {});
}

TEST(DocumentCodes, AreUnique) {
  std::set<std::string> names;
  for (const Code& code : DocumentCodes()) EXPECT_TRUE(names.insert(std::string(code.name)).second) << code.name;
  EXPECT_GE(names.size(), 40u);
}

}  // namespace
}  // namespace withy
