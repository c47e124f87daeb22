// A plugin's own cases: the templates pass theirs, every built-in and example plugin passes its own.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/stat.h>

#include <filesystem>
#include <fstream>

#include "subject.h"
#include "withy/plugin_host/plugin_cases.h"

namespace withy {
namespace {

namespace fs = std::filesystem;
using testing::HasSubstr;
using testing::IsEmpty;

class Cases : public testing::Test {
 protected:
  void SetUp() override {
    folder_ = fs::temp_directory_path() / ("withy-cases-" + std::to_string(getpid()));
    fs::create_directories(folder_);
  }
  void TearDown() override { fs::remove_all(folder_); }

  void Write(const std::string& name, const std::string& text) const {
    fs::create_directories((folder_ / name).parent_path());
    std::ofstream(folder_ / name, std::ios::binary) << text;
  }
  void WriteTemplate(PluginEntry::Kind kind) const {
    auto files = PluginTemplate(kind, "my-plugin");
    ASSERT_TRUE(files.ok()) << files.status();
    for (const auto& [name, text] : *files) Write(name, text);
  }
  std::vector<PluginCaseResult> Run(bool accept = false) const {
    auto results = RunPluginCases(Host(), folder_.string(), accept);
    EXPECT_TRUE(results.ok()) << results.status();
    return results.ok() ? *results : std::vector<PluginCaseResult>();
  }

  fs::path folder_;
};

TEST_F(Cases, EveryTemplatePassesItsOwnCases) {
  for (PluginEntry::Kind kind :
       {PluginEntry::Kind::kCheck, PluginEntry::Kind::kExporter, PluginEntry::Kind::kImporter}) {
    fs::remove_all(folder_);
    WriteTemplate(kind);
    std::vector<PluginCaseResult> results = Run();
    EXPECT_FALSE(results.empty());
    for (const PluginCaseResult& result : results) {
      EXPECT_TRUE(result.status.ok()) << result.status;
      EXPECT_THAT(result.differences, IsEmpty()) << result.name;
    }
  }
}

TEST_F(Cases, ADifferenceIsToldWithFileAndLineAndCanBeAccepted) {
  WriteTemplate(PluginEntry::Kind::kExporter);
  Write("cases/two-guides/expected/guide-list/two-guides.csv", "guide,from_tip_mm\ng1,100.0\ng2,\n");
  Write("cases/two-guides/expected/guide-list/old.csv", "");
  std::vector<PluginCaseResult> results = Run();
  ASSERT_EQ(results.size(), 1u);
  EXPECT_THAT(
      results[0].differences,
      testing::UnorderedElementsAre("expected/guide-list/old.csv: did not come out",
                                    "expected/guide-list/two-guides.csv: line 2: expected 'g1,100.0', got 'g1,101.6'"));
  EXPECT_EQ(Run(true)[0].differences.size(), 2u);
  EXPECT_THAT(Run()[0].differences, IsEmpty());
  EXPECT_FALSE(fs::exists(folder_ / "cases/two-guides/expected/guide-list/old.csv"));
}

TEST_F(Cases, OptionsAreGivenByExporterAndARefusalCanBeExpected) {
  WriteTemplate(PluginEntry::Kind::kExporter);
  Write("cases/two-guides/options.json", R"({ "guide-list": { "separator": ";" } })");
  EXPECT_THAT(Run()[0].differences.at(0), HasSubstr("got 'guide;from_tip_mm'"));
  Write("cases/two-guides/options.json", R"({ "guide-list": { "seperator": ";" } })");
  fs::remove_all(folder_ / "cases/two-guides/expected");
  EXPECT_THAT(Run()[0].differences.at(0), HasSubstr("error.txt: came out and is not there"));
}

TEST_F(Cases, ACaseThatCannotBeRunSaysWhy) {
  WriteTemplate(PluginEntry::Kind::kImporter);
  Write("cases/empty/note.md", "");
  Write("cases/odd/input.xyz", "");
  std::vector<PluginCaseResult> results = Run();
  ASSERT_EQ(results.size(), 3u);
  EXPECT_THAT(std::string(results[0].status.message()), HasSubstr("neither a design nor an input"));
  EXPECT_THAT(std::string(results[1].status.message()), HasSubstr("no importer of the plugin reads .xyz"));
}

// What --accept would take away or overwrite through a link stays as it was, and nothing waits for a pipe.
TEST_F(Cases, NothingBelowCasesIsALinkOrAPipe) {
  const fs::path outside = folder_.string() + "-outside";
  fs::create_directories(outside);
  const std::string precious = (outside / "findings.txt").string();
  std::ofstream(precious) << "precious";
  const fs::path expected = folder_ / "cases/short/expected";
  auto refused = [&](const fs::path& at) {
    absl::Status status = RunPluginCases(Host(), folder_.string(), true).status();
    EXPECT_EQ(status.code(), absl::StatusCode::kInvalidArgument);
    EXPECT_THAT(std::string(status.message()), HasSubstr(at.string() + ": not a plain file or folder"));
    std::ifstream file(precious);
    EXPECT_EQ(std::string(std::istreambuf_iterator<char>(file), {}), "precious");
    fs::remove(at);
  };
  WriteTemplate(PluginEntry::Kind::kCheck);
  fs::remove_all(expected);
  fs::create_directory_symlink(outside, expected);
  refused(expected);
  fs::create_directories(expected);
  fs::create_symlink(precious, expected / "findings.txt");
  refused(expected / "findings.txt");
  fs::create_directory_symlink(outside, folder_ / "cases/linked");
  refused(folder_ / "cases/linked");
  ASSERT_EQ(mkfifo((folder_ / "cases/short/input.csv").c_str(), 0600), 0);
  refused(folder_ / "cases/short/input.csv");
  fs::create_hard_link(precious, expected / "findings.txt");
  Run(true);
  EXPECT_EQ(fs::file_size(precious), 8u);
  fs::remove_all(folder_ / "cases");
  fs::create_directory_symlink(outside, folder_ / "cases");
  refused(folder_ / "cases");
  fs::remove_all(outside);
}

TEST_F(Cases, AFolderWithoutCasesIsNotFound) {
  Write("init.lua", CheckPlugin("").files["init.lua"]);
  EXPECT_EQ(RunPluginCases(Host(), folder_.string(), false).status().code(), absl::StatusCode::kNotFound);
}

TEST(Templates, ANameIsPlain) {
  for (const char* name : {"", "Upper", "with blank", "../up", "1st"}) {
    EXPECT_FALSE(PluginTemplate(PluginEntry::Kind::kCheck, name).ok()) << name;
  }
}

TEST(BuiltIn, EveryPluginWithCasesPassesThem) {
  for (const char* folder : {"plugins", "examples/plugins"}) {
    const fs::path root = fs::path(WITHY_SOURCE_DIR) / folder;
    if (!fs::exists(root)) continue;
    for (const fs::directory_entry& entry : fs::directory_iterator(root)) {
      if (!fs::exists(entry.path() / "init.lua")) continue;
      auto results = RunPluginCases(Host(), entry.path().string(), false);
      if (results.status().code() == absl::StatusCode::kNotFound) continue;  // has no cases
      ASSERT_TRUE(results.ok()) << results.status();
      for (const PluginCaseResult& result : *results) {
        EXPECT_TRUE(result.status.ok()) << result.status;
        EXPECT_THAT(result.differences, IsEmpty()) << entry.path() << " " << result.name;
      }
    }
  }
}

}  // namespace
}  // namespace withy
