// Where plugins come from: files, folders, the library itself.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

#include "subject.h"

namespace withy {
namespace {

namespace fs = std::filesystem;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Key;

class Loading : public testing::Test {
 protected:
  void SetUp() override {
    folder_ = fs::temp_directory_path() / ("withy-load-" + std::to_string(getpid()));
    fs::create_directories(folder_);
  }
  void TearDown() override { fs::remove_all(folder_); }

  std::string Write(const std::string& name, const std::string& text = "") {
    fs::create_directories((folder_ / name).parent_path());
    std::ofstream(folder_ / name, std::ios::binary) << text;
    return (folder_ / name).string();
  }
  fs::path folder_;
};

TEST_F(Loading, AFileIsAPlugin) {
  auto plugin = LoadPlugin(Write("rules.lua", "return 1"));
  ASSERT_TRUE(plugin.ok()) << plugin.status();
  EXPECT_FALSE(plugin->built_in);
  EXPECT_THAT(plugin->files, ElementsAre(testing::Pair("init.lua", "return 1")));
}

TEST_F(Loading, AFolderIsAPluginWithItsLuaFiles) {
  Write("rules/init.lua", "a");
  Write("rules/parts/rows.lua", "b");
  Write("rules/cases/one/design.txtpb", "c");
  auto plugin = LoadPlugin((folder_ / "rules").string());
  ASSERT_TRUE(plugin.ok()) << plugin.status();
  EXPECT_THAT(plugin->files, ElementsAre(Key("init.lua"), Key("parts/rows.lua")));
}

TEST_F(Loading, LinksInAFolderAreNotFollowed) {
  Write("rules/init.lua");
  std::string secret = Write("secret.lua", "secret");
  fs::create_symlink(secret, folder_ / "rules/link.lua");
  EXPECT_THAT(std::string(LoadPlugin((folder_ / "rules").string()).status().message()),
              HasSubstr("links are not followed"));
  fs::remove(folder_ / "rules/link.lua");
  fs::create_directory_symlink("/", folder_ / "rules/root");
  auto plugin = LoadPlugin((folder_ / "rules").string());
  ASSERT_TRUE(plugin.ok()) << plugin.status();
  EXPECT_THAT(plugin->files, ElementsAre(Key("init.lua")));
}

TEST_F(Loading, WhatIsNoPluginIsToldApart) {
  EXPECT_EQ(LoadPlugin((folder_ / "nothing").string()).status().code(), absl::StatusCode::kNotFound);
  EXPECT_EQ(LoadPlugin(Write("notes.txt")).status().code(), absl::StatusCode::kInvalidArgument);
  Write("empty/readme.md");
  EXPECT_THAT(std::string(LoadPlugin((folder_ / "empty").string()).status().message()), HasSubstr("has no init.lua"));
  EXPECT_EQ(LoadPlugin("/dev/null").status().code(), absl::StatusCode::kInvalidArgument);
}

TEST_F(Loading, SizesAreBounded) {
  EXPECT_EQ(LoadPlugin(Write("large.lua", std::string((1 << 20) + 1, '-'))).status().code(),
            absl::StatusCode::kResourceExhausted);
  Write("rules/init.lua");
  for (int i = 0; i < 9; ++i) Write("rules/f" + std::to_string(i) + ".lua", std::string(1 << 20, '-'));
  EXPECT_EQ(LoadPlugin((folder_ / "rules").string()).status().code(), absl::StatusCode::kResourceExhausted);
}

TEST_F(Loading, AFolderOfPluginsIsSortedAndMayBeMissing) {
  Write("b.lua");
  Write("a/init.lua");
  Write("notes.txt");
  Write("no-plugin/readme.md");
  auto plugins = LoadPluginFolder(folder_.string());
  ASSERT_TRUE(plugins.ok()) << plugins.status();
  ASSERT_EQ(plugins->plugins.size(), 2u);
  EXPECT_EQ(plugins->plugins[0].path, (folder_ / "a").string());
  EXPECT_EQ(plugins->plugins[1].path, (folder_ / "b.lua").string());
  EXPECT_THAT(LoadPluginFolder((folder_ / "missing").string())->plugins, IsEmpty());
}

TEST_F(Loading, OneBadPluginDoesNotHideTheOthers) {
  Write("good.lua", "return 1");
  fs::create_symlink(folder_ / "missing.lua", folder_ / "gone.lua");
  auto found = LoadPluginFolder(folder_.string());
  ASSERT_TRUE(found.ok()) << found.status();
  ASSERT_EQ(found->plugins.size(), 1u);
  EXPECT_EQ(found->plugins[0].path, (folder_ / "good.lua").string());
  ASSERT_EQ(found->failures.size(), 1u);
  EXPECT_THAT(std::string(found->failures[0].message()), HasSubstr("gone.lua"));
}

TEST_F(Loading, HiddenNamesArePassedOver) {
  Write("rules/init.lua");
  Write("rules/._init.lua", "\1");
  fs::create_symlink("nobody@nowhere", folder_ / "rules/.#init.lua");
  Write(".hidden.lua");
  Write(".folder/init.lua");
  auto found = LoadPluginFolder(folder_.string());
  ASSERT_TRUE(found.ok()) << found.status();
  EXPECT_THAT(found->failures, IsEmpty());
  ASSERT_EQ(found->plugins.size(), 1u);
  EXPECT_THAT(found->plugins[0].files, ElementsAre(Key("init.lua")));
}

TEST(BuiltInPlugins, TheirNamesAreTheirs) {
  PluginSource stranger = CheckPlugin("", false);
  std::string& text = stranger.files["init.lua"];
  text.replace(text.find("\"test\""), 6, "\"cut-sheet\"");
  EXPECT_THAT(std::string(Host().Describe(stranger).status().message()),
              HasSubstr("'cut-sheet' is the name of a built-in plugin"));
  stranger.under_test = true;
  EXPECT_TRUE(Host().Describe(stranger).ok()) << Host().Describe(stranger).status();
}

TEST(BuiltInPlugins, AllLoadAndNoneIsTheStubs) {
  ASSERT_FALSE(BuiltInPlugins().empty());
  for (const PluginSource& plugin : BuiltInPlugins()) {
    EXPECT_TRUE(plugin.built_in);
    EXPECT_EQ(plugin.path, "built-in");
    absl::StatusOr<PluginInfo> info = Host().Describe(plugin);
    EXPECT_TRUE(info.ok()) << info.status();
  }
}

}  // namespace
}  // namespace withy
