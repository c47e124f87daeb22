// Lua's own library as a plugin has it: the allow-list, the fixed order, no addresses.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <sstream>

#include "subject.h"

namespace withy {
namespace {

using testing::HasSubstr;

// Every name that can be reached from the globals, as "string.format".
std::set<std::string> ReachableNames() {
  std::string text = Eval(R"((function()
    local names, seen = {}, {}
    local function walk(prefix, t)
      if seen_before(t) then return end
      for key, value in pairs(t) do
        names[#names + 1] = prefix .. key
        if type(value) == "table" then walk(prefix .. key .. ".", value) end
      end
    end
    local visited = {}
    function seen_before(t)
      for _, other in ipairs(visited) do if rawequal(other, t) then return true end end
      visited[#visited + 1] = t
      return false
    end
    walk("", _G)
    return table.concat(names, "\n")
  end)())");
  std::set<std::string> names;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) names.insert(line);
  names.erase("seen_before");  // of this test
  return names;
}

// Written by hand from the reference manual of Lua 5.4, section 6, less what reaches files, processes, the clock,
// random numbers, bytecode, the collector or the debugger.
const std::set<std::string>& Allowed() {
  static const std::set<std::string> names = {"_G",
                                              "_VERSION",
                                              "assert",
                                              "error",
                                              "getmetatable",
                                              "ipairs",
                                              "next",
                                              "pairs",
                                              "pcall",
                                              "rawequal",
                                              "rawget",
                                              "rawlen",
                                              "rawset",
                                              "require",
                                              "select",
                                              "setmetatable",
                                              "tonumber",
                                              "tostring",
                                              "type",
                                              "xpcall",
                                              "math",
                                              "math.abs",
                                              "math.acos",
                                              "math.asin",
                                              "math.atan",
                                              "math.ceil",
                                              "math.cos",
                                              "math.deg",
                                              "math.exp",
                                              "math.floor",
                                              "math.fmod",
                                              "math.huge",
                                              "math.log",
                                              "math.max",
                                              "math.maxinteger",
                                              "math.min",
                                              "math.mininteger",
                                              "math.modf",
                                              "math.pi",
                                              "math.rad",
                                              "math.sin",
                                              "math.sqrt",
                                              "math.tan",
                                              "math.tointeger",
                                              "math.type",
                                              "math.ult",
                                              "string",
                                              "string.byte",
                                              "string.char",
                                              "string.find",
                                              "string.format",
                                              "string.gmatch",
                                              "string.gsub",
                                              "string.len",
                                              "string.lower",
                                              "string.match",
                                              "string.pack",
                                              "string.packsize",
                                              "string.rep",
                                              "string.reverse",
                                              "string.sub",
                                              "string.unpack",
                                              "string.upper",
                                              "table",
                                              "table.concat",
                                              "table.insert",
                                              "table.move",
                                              "table.pack",
                                              "table.remove",
                                              "table.sort",
                                              "table.unpack",
                                              "utf8",
                                              "utf8.char",
                                              "utf8.charpattern",
                                              "utf8.codepoint",
                                              "utf8.codes",
                                              "utf8.len",
                                              "utf8.offset"};
  return names;
}

TEST(Library, NothingButTheAllowListCanBeReached) {
  EXPECT_EQ(ReachableNames(), Allowed());
}

TEST(Library, TheManualListsExactlyTheAllowList) {
  std::string manual = PluginManual();
  std::size_t from = manual.find("## Lua's own library");
  ASSERT_NE(from, std::string::npos);
  std::string section = manual.substr(from, manual.find("\n## ", from + 1) - from);
  std::set<std::string> listed;
  for (std::size_t at = section.find('`'); at != std::string::npos; at = section.find('`', at + 1)) {
    std::size_t close = section.find('`', at + 1);
    listed.insert(section.substr(at + 1, close - at - 1));
    at = close;
  }
  std::set<std::string> expected = Allowed();
  for (const char* table : {"math", "string", "table", "utf8"}) expected.erase(table);
  EXPECT_EQ(listed, expected);
}

TEST(Library, StringMethodsAreThoseOfTheAllowList) {
  EXPECT_EQ(Eval("('abc'):upper()"), "ABC");
  EXPECT_THAT(Eval("('x').dump"), testing::AnyOf("nil", HasSubstr("error")));
  EXPECT_EQ(Eval("getmetatable('x')"), "nil");
}

TEST(Library, AGlobalThatDoesNotExistIsAnError) {
  for (const char* name : {"io", "os", "debug", "package", "coroutine", "load", "loadstring", "dofile", "loadfile",
                           "print", "collectgarbage", "lenght"}) {
    EXPECT_THAT(Eval(name), HasSubstr(std::string("there is no '") + name + "' here")) << name;
  }
}

TEST(Library, PairsGoesThroughNumbersAndThenText) {
  EXPECT_EQ(Eval("(function() local out = {} for k in pairs({ b = 1, [3] = 1, a = 1, [1] = 1, [-2] = 1, [2.5] = 1, B = "
                 "1 }) do "
                 "out[#out + 1] = tostring(k) end return table.concat(out, ' ') end)()"),
            "-2 1 2.5 3 B a b");
  EXPECT_EQ(Eval("(function() local t, out, k = { b = 1, a = 2, [1] = 3 }, {}, nil repeat k = next(t, k) out[#out + 1] "
                 "= tostring(k) "
                 "until k == nil return table.concat(out, ' ') end)()"),
            "1 a b nil");
  EXPECT_EQ(Eval("next({})"), "nil");
}

TEST(Library, AFieldMayBeClearedWhileGoingThrough) {
  EXPECT_EQ(Eval("(function() local t, n = { a = 1, b = 2, c = 3 }, 0 for k in pairs(t) do t.b = nil n = n + 1 end "
                 "return n end)()"),
            "2");
}

TEST(Library, AKeyWithoutAnOrderCannotBeGoneThrough) {
  EXPECT_THAT(Eval("(function() for k in pairs({ [{}] = 1 }) do end end)()"), HasSubstr("a table with a table as key"));
  EXPECT_THAT(Eval("next({ [true] = 1 })"), HasSubstr("a table with a boolean as key"));
}

TEST(Library, NoAddressIsShown) {
  EXPECT_EQ(Eval("tostring({})"), "table");
  EXPECT_EQ(Eval("tostring(print == nil and pairs or pairs)").substr(0, 5), "error");
  EXPECT_EQ(Eval("tostring(pairs)"), "function");
  EXPECT_EQ(Eval("string.format('%s %s', {}, pairs)"), "table function");
  EXPECT_EQ(Eval("string.format('%-7s|', {})"), "table  |");
  EXPECT_THAT(Eval("string.format('%p', {})"), HasSubstr("'%p' is not part of"));
  EXPECT_THAT(Eval("string.format('%5p', {})"), HasSubstr("'%p' is not part of"));
  EXPECT_EQ(Eval("string.format('%%p %d', 3)"), "%p 3");
  EXPECT_EQ(Eval("tostring(setmetatable({}, { __tostring = function() return 'me' end }))"), "me");
  EXPECT_THAT(Eval("(function() error({}) end)()"), HasSubstr("the error is a table"));
}

TEST(Library, NotANumberHasNoSign) {
  EXPECT_EQ(Eval("tostring(0/0)"), "nan");
  EXPECT_EQ(Eval("tostring(-(0/0))"), "nan");
  EXPECT_EQ(Eval("string.format('%.1f %s', 0/0, -(0/0))"), "nan nan");
}

TEST(Library, MetatablesAreForPlainTables) {
  EXPECT_EQ(Eval("setmetatable({}, { __index = { a = 'x' } }).a"), "x");
  EXPECT_THAT(Eval("setmetatable({}, { __gc = function() end })"), HasSubstr("'__gc' is not part of"));
  EXPECT_THAT(Eval("setmetatable({}, { __mode = 'k' })"), HasSubstr("'__mode' is not part of"));
  EXPECT_THAT(FailureOf("local m = {} Weak = setmetatable({}, m) m.__mode = 'k'"),
              HasSubstr("'__mode' is not part of"));
  EXPECT_THAT(Eval("setmetatable(ctx.design, {})"), HasSubstr("table expected"));
  EXPECT_THAT(Eval("setmetatable(_G, {})"), HasSubstr("protected"));
  EXPECT_EQ(Eval("getmetatable(_G)"), "false");
}

TEST(Library, SortIsStable) {
  // Keys 1 2 1 2 ...: equal ones keep their order, which an unstable sort of this size loses.
  EXPECT_EQ(Eval(R"((function()
    local t = {}
    for i = 1, 500 do t[i] = { key = i % 7, place = i } end
    table.sort(t, function(a, b) return a.key < b.key end)
    for i = 2, 500 do
      if t[i - 1].key > t[i].key then return "unsorted" end
      if t[i - 1].key == t[i].key and t[i - 1].place > t[i].place then return "unstable" end
    end
    return "stable"
  end)())"),
            "stable");
  EXPECT_EQ(Eval("(function() local t = { 3, 1, 2 } table.sort(t) return table.concat(t) end)()"), "123");
  EXPECT_EQ(Eval("(function() local t = { 3, 1, 2, 5, 4 } table.sort(t, function() return true end) return #t end)()"),
            "5");
  EXPECT_THAT(Eval("(function() table.sort({ 1, 'a' }) end)()"), HasSubstr("attempt to compare"));
}

TEST(Library, RequireReachesTheHostsModulesAndThePluginsOwnFiles) {
  TestSubject subject;
  PluginSource plugin = ExportPlugin("ctx:write('out', require('parts.rows').name .. require('help').name)");
  plugin.files["parts/rows.lua"] = "return { name = 'rows' }";
  plugin.files["help/init.lua"] = "return { name = 'help' }";
  auto files = Host().Export(plugin, "probe", "rod", {}, subject.get());
  ASSERT_TRUE(files.ok()) << files.status();
  EXPECT_EQ(files->at(0).bytes, "rowshelp");
  EXPECT_EQ(Eval("rawequal(require('withy.text'), require('withy.text'))"), "true");
  EXPECT_THAT(Eval("require('withy.txt')"), HasSubstr("did you mean 'withy.text'?"));
  EXPECT_THAT(Eval("require('socket')"), HasSubstr("there is no module 'socket'"));
  EXPECT_THAT(Eval("require('../../etc/passwd')"), HasSubstr("there is no module"));
  EXPECT_THAT(Eval("require('withy.text').wrapp"), HasSubstr("withy.text has no 'wrapp'; did you mean 'wrap'?"));
}

TEST(Library, AFileThatRequiresItselfIsAnError) {
  PluginSource plugin = CheckPlugin("require('a')");
  plugin.files["a.lua"] = "return require('b')";
  plugin.files["b.lua"] = "return require('a')";
  TestSubject subject;
  PluginHost::CheckResult result = Host().RunChecks(plugin, subject.get());
  ASSERT_EQ(result.failures.size(), 1u);
  EXPECT_THAT(std::string(result.failures[0].message()), HasSubstr("b.lua:1: module 'a' requires itself"));
}

TEST(Library, BytecodeIsNotLoaded) {
  // The signature of a precompiled chunk of Lua 5.4: reference manual section 4.6, LUA_SIGNATURE.
  absl::StatusOr<PluginInfo> info = Host().Describe(Plugin("\x1bLua\x54"));
  EXPECT_EQ(info.status().code(), absl::StatusCode::kInvalidArgument);
  EXPECT_THAT(std::string(info.status().message()), HasSubstr("attempt to load a binary chunk"));
}

// Where a table lies in memory differs from run to run: its type stands for it in messages.
TEST(Messages, HaveNoAddresses) {
  EXPECT_THAT(Eval("_G[{}]"), HasSubstr("there is no 'table' here"));
  EXPECT_THAT(Eval("require('withy.text')[{}]"), HasSubstr("withy.text has no 'table'"));
  EXPECT_THAT(Eval("ctx[pairs]"), HasSubstr("'function'"));
  EXPECT_THAT(Eval("ctx.design.guides[{}]"), HasSubstr("a list has no field 'table'"));
  absl::Status status = Host().Describe(Plugin("return { api = {} }")).status();
  EXPECT_THAT(std::string(status.message()), HasSubstr("version table of the plugin API"));
}

}  // namespace
}  // namespace withy
