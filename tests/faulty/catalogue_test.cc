// The catalogue of codes as a whole: each is well formed, unique, documented, and provoked by at least one faulty
// design.
#include <algorithm>
#include <regex>
#include <set>
#include <string>

#include "faulty/expected.h"
#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "support/design_files.h"

namespace withy::testing {
namespace {

std::set<std::string> NamesInCatalogue() {
  std::set<std::string> names;
  for (const Code& code : Catalogue()) names.insert(std::string(code.name));
  return names;
}

// Codes that the faulty designs must be told.
std::set<std::string> NamesProvoked() {
  std::set<std::string> names;
  for (const DesignFile& file : DesignFilesBelow("tests/faulty")) {
    std::string problem;
    for (const ExpectedFinding& finding : ReadExpected(ExpectedPathOf(file.path), problem).findings)
      names.insert(finding.code);
  }
  return names;
}

TEST(Catalogue, HasAtLeastFortyCodes) {
  EXPECT_GE(Catalogue().size(), 40u);
}

TEST(Catalogue, NamesAreUniqueAndWellFormed) {
  EXPECT_EQ(NamesInCatalogue().size(), Catalogue().size());
  const std::regex form("[a-z_]+/[a-z0-9]+(-[a-z0-9]+)*");
  for (const Code& code : Catalogue()) EXPECT_TRUE(std::regex_match(std::string(code.name), form)) << code.name;
}

TEST(Catalogue, EveryCodeIsDocumented) {
  for (const Code& code : Catalogue()) {
    EXPECT_FALSE(code.summary.empty()) << code.name;
    EXPECT_FALSE(code.summary.ends_with('.')) << code.name << ": a summary is one line without a full stop";
    EXPECT_TRUE(code.why.ends_with('.')) << code.name << ": `why` is whole sentences";
    EXPECT_TRUE(code.action.ends_with('.')) << code.name << ": `action` is whole sentences";
    EXPECT_GE(code.since, 1) << code.name;
  }
}

TEST(Catalogue, EveryCodeIsFoundByItsName) {
  for (const Code& code : Catalogue()) {
    const Code* found = FindCode(code.name, nullptr);
    ASSERT_NE(found, nullptr) << code.name;
    EXPECT_EQ(found->name, code.name);
  }
}

TEST(Catalogue, EveryCodeIsProvokedByAFaultyDesign) {
  EXPECT_THAT(NamesProvoked(), ::testing::IsSupersetOf(NamesInCatalogue()));
}

TEST(Catalogue, HasEveryCodeThatTheFaultyDesignsExpect) {
  EXPECT_THAT(NamesInCatalogue(), ::testing::IsSupersetOf(NamesProvoked()));
}

// A file stands under the first word of the code it is about and bears its second.
TEST(Catalogue, FaultyDesignsAreNamedAfterACode) {
  for (const DesignFile& file : DesignFilesBelow("tests/faulty")) {
    const std::string slug = file.path.stem().string();
    const std::string concern = file.path.parent_path().filename().string();
    const bool named = std::any_of(Catalogue().begin(), Catalogue().end(),
                                   [&](const Code& code) { return (concern + "/" + slug).starts_with(code.name); });
    EXPECT_TRUE(named) << file;
  }
}

}  // namespace
}  // namespace withy::testing
