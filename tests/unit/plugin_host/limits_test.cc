// Limits of a plugin in its child: each is reached, cannot be caught, and names the line.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <chrono>

#include "subject.h"

namespace withy {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

class Limits : public testing::Test {
 protected:
  Limits() {
    options_ = Options();
    options_.limits.cpu = std::chrono::milliseconds(300);
    options_.limits.wall = std::chrono::milliseconds(20'000);
    options_.limits.memory_bytes = std::size_t{32} << 20;
    options_.limits.output_bytes = 1 << 20;
    options_.limits.files = 3;
  }

  // How a check with this body ends; it starts in line 1, so that a body that begins with a line break is in line 2.
  absl::Status Run(const std::string& body, bool built_in = false) {
    PluginHost::CheckResult result = PluginHost(options_).RunChecks(CheckPlugin(body, built_in), subject_.get());
    EXPECT_THAT(result.findings, IsEmpty());
    return result.failures.empty() ? absl::OkStatus() : result.failures.front();
  }
  void ExpectTime(const std::string& body, const std::string& where) {
    absl::Status status = Run(body);
    EXPECT_EQ(status.code(), absl::StatusCode::kResourceExhausted) << body;
    EXPECT_THAT(std::string(status.message()), HasSubstr(where + ": ran for more than 300 ms")) << body;
  }
  void ExpectMemory(const std::string& body, bool built_in = false) {
    absl::Status status = Run(body, built_in);
    EXPECT_EQ(status.code(), absl::StatusCode::kResourceExhausted) << body;
    EXPECT_THAT(std::string(status.message()), HasSubstr("needs more than 32 MiB of memory")) << body;
  }

  PluginHostOptions options_;
  TestSubject subject_;
};

TEST_F(Limits, AnEndlessLoopStopsAtItsLine) {
  ExpectTime("\nwhile true do end", "test/probe: init.lua:2");
  ExpectTime("\n\nlocal function f() return f() end\nf()", "init.lua:3");
}

TEST_F(Limits, TimeCannotBeCaught) {
  ExpectTime("\nwhile true do pcall(function() while true do end end) end", "init.lua:2");
  ExpectTime("\nwhile true do xpcall(function() while true do end end, function() while true do end end) end",
             "init.lua:2");
  ExpectTime("\nlocal function again() return pcall(again) end\nwhile true do again() end", "init.lua:2");
  ExpectTime(
      "local mt = { __close = function() while true do end end }\n"
      "pcall(function() local x <close> = setmetatable({}, mt) while true do end end)",
      "init.lua:2");
}

TEST_F(Limits, OneEndlessCallStopsAtItsLineToo) {
  // Each is one call of the library that no hook reaches. Seen to run for minutes and longer without a limit.
  ExpectTime("\nlocal s = ('a'):rep(100) s:find(('a*'):rep(30) .. 'b')", "init.lua:2");
  ExpectTime("\nlocal s = ('a'):rep(1000000) s:find('.-b')", "init.lua:2");
  ExpectTime("\nlocal s = ('('):rep(1000000) s:find('%b()')", "init.lua:2");
  ExpectTime("\ntable.move({}, 1, 1 << 50, 2)", "init.lua:2");
  ExpectTime("\ntable.insert(setmetatable({}, { __len = function() return 1 << 50 end }), 1, 'x')", "init.lua:2");
  ExpectTime("\ntable.concat(setmetatable({}, { __index = function() return '' end }), '', 1, 1 << 50)", "init.lua:2");
  ExpectTime("\nselect('#', table.unpack(setmetatable({}, { __index = function() while true do end end }), 1, 10))",
             "init.lua:2");
}

TEST_F(Limits, AnEmptyRepetitionTakesNoTime) {
  EXPECT_TRUE(Run("assert(('').rep('', 1 << 62) == '')").ok());
  EXPECT_THAT(std::string(Run("local s = ('x'):rep(1 << 62)").message()), HasSubstr("resulting string too large"));
}

TEST_F(Limits, MemoryIsBoundedAndTheLineIsNamed) {
  for (bool built_in : {true, false}) {
    ExpectMemory("\nlocal t = {} while true do t[#t + 1] = {} end", built_in);
    ExpectMemory("\nlocal s = 'x' while true do s = s .. s end", built_in);
    ExpectMemory("\nlocal s = ('x'):rep(1 << 30)", built_in);
    ExpectMemory("\nlocal t = {} while true do pcall(function() while true do t[#t + 1] = {} end end) end", built_in);
  }
  EXPECT_THAT(std::string(Run("\nlocal s = ('x'):rep(1 << 30)").message()), HasSubstr("init.lua:2: needs"));
}

TEST_F(Limits, MemoryThatIsGivenBackCountsNoMore) {
  options_.limits.cpu = std::chrono::milliseconds(10'000);
  EXPECT_EQ(Run("for i = 1, 200 do local s = ('x'):rep(1 << 20) .. i end"), absl::OkStatus());
}

TEST_F(Limits, DeepRecursionIsAnOrdinaryError) {
  options_.limits = PluginLimits();  // Lua's own bound on its stack, 1,000,000 values, takes some 50 MB to reach
  EXPECT_THAT(std::string(Run("\nlocal function f() return 1 + f() end f()").message()), HasSubstr("stack overflow"));
  EXPECT_THAT(
      std::string(
          Run("local s = ('('):rep(10000) .. '1' .. (')'):rep(10000) return s:gsub('%b()', function(x) error(x) end)")
              .message()),
      HasSubstr("init.lua:1"));
}

TEST_F(Limits, OutputAndFilesAreBounded) {
  auto error_of = [&](const std::string& body) {
    return PluginHost(options_).Export(ExportPlugin(body, false), "probe", "rod", {}, subject_.get()).status();
  };
  absl::Status large = error_of("\npcall(ctx.write, ctx, 'a', ('x'):rep(1 << 21))");
  EXPECT_EQ(large.code(), absl::StatusCode::kResourceExhausted);
  EXPECT_THAT(std::string(large.message()), HasSubstr("init.lua:2: gives out more than 1024 KiB"));
  absl::Status many = error_of("for i = 1, 10 do pcall(ctx.write, ctx, 'f' .. i, '') end");
  EXPECT_EQ(many.code(), absl::StatusCode::kResourceExhausted);
  EXPECT_THAT(std::string(many.message()), HasSubstr("writes more than 3 files"));
  EXPECT_EQ(Run("while true do ctx:emit { message = ('x'):rep(1000) } end").code(),
            absl::StatusCode::kResourceExhausted);
}

TEST_F(Limits, ACheckThatUsesUpItsTimeDoesNotHideTheOthers) {
  const PluginSource plugin =
      Plugin(R"(return { api = 1, name = "test", version = "1", license = "MIT", summary = "Test", checks = {
    { code = "first", severity = "advice", summary = "s", run = function(ctx) ctx:emit { message = "one" } end },
    { code = "second", severity = "advice", summary = "s", run = function(ctx) while true do end end },
    { code = "third", severity = "advice", summary = "s", run = function(ctx) (("a"):rep(100)):find(("a*"):rep(30) .. "b") end },
    { code = "fourth", severity = "advice", summary = "s", run = function(ctx) ctx:emit { message = "four" } end } } })",
             false);
  PluginHost::CheckResult result = PluginHost(options_).RunChecks(plugin, subject_.get());
  ASSERT_EQ(result.findings.size(), 2u);
  EXPECT_EQ(result.findings[0].code, "test/first");
  EXPECT_EQ(result.findings[1].code, "test/fourth");
  ASSERT_EQ(result.failures.size(), 2u);
  EXPECT_THAT(std::string(result.failures[0].message()), HasSubstr("test/second: init.lua:3: ran for"));
  EXPECT_THAT(std::string(result.failures[1].message()), HasSubstr("test/third: init.lua:4: ran for"));
}

TEST_F(Limits, LoadingCountsToo) {
  absl::StatusOr<PluginInfo> info = PluginHost(options_).Describe(Plugin("while true do end", false));
  EXPECT_EQ(info.status().code(), absl::StatusCode::kResourceExhausted);
  EXPECT_THAT(std::string(info.status().message()), HasSubstr("init.lua:1: ran for more than 300 ms"));
}

// Its text is shortened before anything looks at it: it is not what the process dies of.
TEST_F(Limits, AnErrorTextOfTenMegabytesIsAnErrorLikeAnother) {
  for (bool built_in : {true, false}) {
    const std::string message = FailureOf("error(('x'):rep(10 * 1024 * 1024), 0)", built_in);
    EXPECT_THAT(message, testing::HasSubstr("xxxx"));
    EXPECT_LT(message.size(), 3000u);
  }
  const std::string cut = FailureOf("error(('\u{2300}'):rep(1000000), 0)");
  EXPECT_THAT(cut, testing::EndsWith("\u2300"));
}

}  // namespace
}  // namespace withy
