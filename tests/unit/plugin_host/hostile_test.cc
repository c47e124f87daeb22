// Every plugin in tests/hostile_plugins ends as its first line says, and a good one works after it.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <filesystem>

#include "absl/strings/str_cat.h"
#include "subject.h"

namespace withy {
namespace {

namespace fs = std::filesystem;
using testing::HasSubstr;
using testing::IsEmpty;

std::vector<std::string> HostilePlugins() {
  std::vector<std::string> names;
  for (const fs::directory_entry& entry :
       fs::directory_iterator(std::string(WITHY_SOURCE_DIR) + "/tests/hostile_plugins")) {
    if (entry.path().extension() == ".lua") names.push_back(entry.path().stem().string());
  }
  std::sort(names.begin(), names.end());
  return names;
}

class Hostile : public testing::TestWithParam<std::string> {};

TEST_P(Hostile, EndsAsItMust) {
  absl::StatusOr<PluginSource> plugin =
      LoadPlugin(absl::StrCat(WITHY_SOURCE_DIR, "/tests/hostile_plugins/", GetParam(), ".lua"));
  ASSERT_TRUE(plugin.ok()) << plugin.status();
  const std::string& text = plugin->files["init.lua"];
  const std::string start = "-- expect: ";
  ASSERT_EQ(text.substr(0, start.size()), start);
  const std::string expected = text.substr(start.size(), text.find('\n') - start.size());

  PluginHostOptions options = Options();
  options.limits.cpu = std::chrono::milliseconds(400);
  options.limits.memory_bytes = std::size_t{16} << 20;
  options.limits.output_bytes = 1 << 20;
  PluginHost host(options);
  TestSubject subject;
  PluginHost::CheckResult result = host.RunChecks(*plugin, subject.get());
  EXPECT_THAT(result.findings, IsEmpty());
  if (expected == "nothing") {
    EXPECT_THAT(result.failures, IsEmpty()) << result.failures.front();
  } else {
    ASSERT_EQ(result.failures.size(), 1u);
    const absl::Status& failure = result.failures.front();
    EXPECT_EQ(absl::StatusCodeToString(failure.code()), expected.substr(0, expected.find(": ")));
    EXPECT_THAT(std::string(failure.message()), HasSubstr(expected.substr(expected.find(": ") + 2)));
    EXPECT_LT(failure.message().size(), 5000u);
  }

  PluginHost::CheckResult good = host.RunChecks(CheckPlugin("ctx:emit { message = 'm' }", false), subject.get());
  EXPECT_THAT(good.failures, IsEmpty());
  EXPECT_EQ(good.findings.size(), 1u);
}

INSTANTIATE_TEST_SUITE_P(All, Hostile, testing::ValuesIn(HostilePlugins()),
                         [](const testing::TestParamInfo<std::string>& info) {
                           std::string name = info.param;
                           std::replace(name.begin(), name.end(), '-', '_');
                           return name;
                         });

}  // namespace
}  // namespace withy
