// The parent survives whatever its child does: dies, hangs, floods, lies.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "subject.h"

namespace withy {
namespace {

namespace fs = std::filesystem;
using testing::HasSubstr;
using testing::IsEmpty;

class FakeChild : public testing::Test {
 protected:
  void SetUp() override {
    folder_ = fs::temp_directory_path() / ("withy-fake-" + std::to_string(getpid()));
    fs::create_directories(folder_);
  }
  void TearDown() override { fs::remove_all(folder_); }

  PluginHost::CheckResult Run(const std::string& name,
                              std::chrono::milliseconds wall = std::chrono::milliseconds(5000)) {
    fs::create_symlink(FAKE_CHILD, folder_ / name);
    PluginHostOptions options;
    options.child_program = (folder_ / name).string();
    options.limits.wall = wall;
    options.limits.output_bytes = 1 << 20;
    return PluginHost(options).RunChecks(CheckPlugin("", false), subject_.get());
  }

  // The one failure of a run that gave nothing.
  absl::Status FailureOf(const std::string& name) {
    PluginHost::CheckResult result = Run(name);
    EXPECT_THAT(result.findings, IsEmpty()) << name;
    EXPECT_EQ(result.failures.size(), 1u) << name;
    return result.failures.empty() ? absl::OkStatus() : result.failures.front();
  }

  fs::path folder_;
  TestSubject subject_;
};

TEST_F(FakeChild, AnHonestOneIsBelieved) {
  PluginHost::CheckResult result = Run("good");
  EXPECT_THAT(result.failures, IsEmpty());
  ASSERT_EQ(result.findings.size(), 1u);
  EXPECT_EQ(result.findings[0].code, "test/probe");
}

TEST_F(FakeChild, ThatDiesIsAFailure) {
  EXPECT_THAT(std::string(FailureOf("crash").message()), HasSubstr("killed by signal 15"));
  EXPECT_THAT(std::string(FailureOf("exit-7").message()), HasSubstr("exit status 7"));
  EXPECT_THAT(std::string(FailureOf("silent").message()), HasSubstr("gave no result"));
  absl::Status late = FailureOf("crash-after-info");
  EXPECT_EQ(late.code(), absl::StatusCode::kAborted);
  EXPECT_THAT(std::string(late.message()), HasSubstr("test/probe: its process was killed by signal 6"));
}

TEST_F(FakeChild, ThatHangsIsKilledInTime) {
  for (const char* name : {"hang", "hang-after-closing"}) {
    auto start = std::chrono::steady_clock::now();
    PluginHost::CheckResult result = Run(name, std::chrono::milliseconds(300));
    EXPECT_LT(std::chrono::steady_clock::now() - start, std::chrono::seconds(4)) << name;
    ASSERT_EQ(result.failures.size(), 1u) << name;
    EXPECT_EQ(result.failures[0].code(), absl::StatusCode::kResourceExhausted) << name;
    EXPECT_THAT(std::string(result.failures[0].message()), HasSubstr("took longer than 300 ms")) << name;
  }
}

TEST_F(FakeChild, ThatFloodsIsKilled) {
  EXPECT_THAT(std::string(FailureOf("flood").message()), HasSubstr("gives out more than"));
  EXPECT_THAT(std::string(FailureOf("flood-remarks").message()), HasSubstr("gives out more than"));
}

TEST_F(FakeChild, ThatReadsNothingRaisesNoSignalHere) {
  // The request is larger than a socket holds, so that writing meets the closed end.
  for (int i = 0; i < 20'000; ++i)
    subject_.design.mutable_identity()->add_tags("a tag that takes some room in the request");
  EXPECT_THAT(Run("deaf").failures, IsEmpty());
}

TEST_F(FakeChild, ThatLiesIsNotBelieved) {
  for (const char* name : {"garbage",           "bad-message",     "large-remark",       "no-info",
                           "two-infos",         "escape-message",  "bad-utf8",           "turned-around",
                           "bad-severity",      "bad-path",        "bad-number",         "file-from-check",
                           "bad-name",          "other-api",       "no-entries",         "bad-status",
                           "practice-nan",      "practice-huge",   "practice-reversed",  "practice-other-range",
                           "practice-per-foot", "practice-escape", "practice-technique", "practice-other-escape",
                           "practice-twice",    "practice-many",   "wants-escape"}) {
    EXPECT_EQ(FailureOf(name).code(), absl::StatusCode::kAborted) << name;
  }
  EXPECT_THAT(Run("good-practice").failures, IsEmpty());
  EXPECT_EQ(FailureOf("taken-name").code(), absl::StatusCode::kInvalidArgument);
  EXPECT_EQ(FailureOf("cut-off").code(), absl::StatusCode::kAborted);
}

TEST_F(FakeChild, MoreResultsThanChecksAreLeftAside) {
  PluginHost::CheckResult result = Run("too-many-outcomes");
  EXPECT_THAT(result.findings, IsEmpty());
}

TEST_F(FakeChild, HasNoEnvironmentFewFilesAndItsOwnGroup) {
  setenv("WITHY_SECRET", "x", 1);
  int inherited = dup(STDOUT_FILENO);  // is not to be seen in the child
  EXPECT_THAT(std::string(FailureOf("walls").message()),
              HasSubstr("gave no result"));  // exit status 0: every wall stands
  close(inherited);
}

TEST_F(FakeChild, ThatCannotBeStartedIsAFailure) {
  PluginHostOptions options;
  options.child_program = (folder_ / "nothing").string();
  PluginHost::CheckResult result = PluginHost(options).RunChecks(CheckPlugin("", false), subject_.get());
  ASSERT_EQ(result.failures.size(), 1u);
  EXPECT_THAT(std::string(result.failures[0].message()), HasSubstr("cannot start"));
}

TEST_F(FakeChild, LeavesNoProcessBehind) {
  Run("hang", std::chrono::milliseconds(200));
  Run("crash");
  EXPECT_EQ(waitpid(-1, nullptr, WNOHANG), -1);
  EXPECT_EQ(errno, ECHILD);
}

TEST(Child, AGoodPluginStillGivesItsResultBesideABadOne) {
  TestSubject subject;
  PluginHost host = Host();
  EXPECT_FALSE(host.RunChecks(CheckPlugin("error('broken')", false), subject.get()).failures.empty());
  PluginHost::CheckResult good = host.RunChecks(CheckPlugin("ctx:emit { message = 'm' }", false), subject.get());
  EXPECT_THAT(good.failures, IsEmpty());
  EXPECT_EQ(good.findings.size(), 1u);
}

TEST(Child, GivesTheSameAsInProcess) {
  TestSubject subject;
  const char* body =
      "ctx:emit { message = 'm', at = ctx.design.guides[1], numbers = { a_mm = ctx.rod.overall_length_mm } } "
      "ctx:need('balance.mass_g')";
  PluginHost::CheckResult here = Host().RunChecks(CheckPlugin(body, true), subject.get());
  PluginHost::CheckResult there = Host().RunChecks(CheckPlugin(body, false), subject.get());
  ASSERT_EQ(here.findings.size(), there.findings.size());
  for (std::size_t i = 0; i < here.findings.size(); ++i) {
    EXPECT_EQ(here.findings[i].code, there.findings[i].code);
    EXPECT_EQ(here.findings[i].at.ToString(), there.findings[i].at.ToString());
    EXPECT_EQ(here.findings[i].message, there.findings[i].message);
    EXPECT_EQ(here.findings[i].numbers, there.findings[i].numbers);
  }
}

}  // namespace
}  // namespace withy
