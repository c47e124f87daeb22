#include "checked.h"

namespace withy {
namespace {

TEST(CheckIds, MissingOnThingsThatAreReferredTo) {
  ExpectFindings("guides {} threads { id: 't' } tip_top {}",
                 {{"document/missing-id", "guides[0]"}, {"document/missing-id", "tip_top"}});
  // A log entry without an id cannot be corrected, and that is all.
  ExpectFindings("log { done { step: 'sanded' } } blank { bench { beat {} } }", {});
}

TEST(CheckIds, AwkwardOnes) {
  for (const char* id : {"a]", "[a", "a\\\"b", "7", " a", "a ", "a\\tb", "a\\\\b"}) {
    const auto findings = CheckText(std::string("threads { id: \"") + id + "\" }");
    ASSERT_EQ(findings.size(), 1u) << id << Told(findings);
    EXPECT_EQ(findings[0].code, "document/bad-id") << id;
  }
  for (const char* id : {"g5", "reel-seat", "a_b", "5a", "Führung", "butt grip", "a.b"}) {
    ExpectFindings(std::string("threads { id: \"") + id + "\" }", {});
  }
}

// The place is given by number: the id would lead to the first of the two.
TEST(CheckIds, DuplicatesAreFoundAcrossKinds) {
  ExpectFindings("guides { id: 'x' } threads { id: 'x' } finishes { id: 'x' }",
                 {{"document/duplicate-id", "threads[0].id"}, {"document/duplicate-id", "finishes[0].id"}});
  const auto findings = CheckText("guides { id: 'x' } threads { id: 'x' }");
  ASSERT_EQ(findings.size(), 1u);
  ASSERT_EQ(findings[0].related.size(), 1u);
  EXPECT_EQ(findings[0].related[0].ToString(), "guides[0]");
  EXPECT_EQ(findings[0].severity, Severity::kError);
}

TEST(CheckIds, DeepOnesCount) {
  ExpectFindings("handle { parts { id: 'grip' arbors { id: 'grip' } } }",
                 {{"document/duplicate-id", "handle.parts[grip].arbors[0].id"}});
}

TEST(CheckIds, ReferencesToNothing) {
  ExpectFindings("guide_models { id: 'double-8' } guides { id: 'g1' model: 'duoble-8' }",
                 {{"document/unknown-id", "guides[g1].model"}});
  const auto findings = CheckText("guide_models { id: 'double-8' } guides { id: 'g1' model: 'duoble-8' }");
  ASSERT_EQ(findings.size(), 1u);
  EXPECT_NE(findings[0].message.find("did you mean `double-8`"), std::string::npos) << findings[0].message;
  // In lists, the item; through a place; in the log.
  ExpectFindings("wraps { id: 'w' on: 'nothing' place { after: 'nowhere' } } log { removed { what: 'gone' } }",
                 {{"document/unknown-id", "wraps[w].on[0]"},
                  {"document/unknown-id", "wraps[w].place.after"},
                  {"document/unknown-id", "log[0].removed.what[0]"}});
}

TEST(CheckIds, ReferencesToAnotherKind) {
  ExpectFindings("blank { sections { id: 'butt' } } threads { id: 'red' } wraps { id: 'w' on: 'butt' thread: 'butt' }",
                 {{"document/wrong-reference", "wraps[w].on[0]"}, {"document/wrong-reference", "wraps[w].thread"}});
  ExpectFindings("guides { id: 'g' } threads { id: 'red' } wraps { id: 'w' on: 'g' thread: 'red' }", {});
}

TEST(CheckIds, ManyUnknownReferencesStayQuick) {
  // 20,000 guides whose model is not there, beside 20,000 models: comparing each with each would take minutes.
  v1::Design design;
  design.set_format("withy/1");
  for (int i = 0; i < 20000; ++i) {
    design.add_guide_models()->set_id("m" + std::to_string(i));
    auto* guide = design.add_guides();
    guide->set_id("g" + std::to_string(i));
    guide->set_model("x" + std::to_string(i));
  }
  EXPECT_EQ(CheckDesign(design).size(), 20000u);
}

}  // namespace
}  // namespace withy
