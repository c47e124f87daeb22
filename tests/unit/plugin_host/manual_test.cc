// The manual and the stubs in plugins/api are those of this build. WITHY_UPDATE=1 writes them anew.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <sstream>

#include "api_table.h"
#include "withy/plugin_host/plugin_host.h"

namespace withy {
namespace {

using testing::HasSubstr;

void ExpectFresh(const std::string& name, const std::string& text) {
  const std::string path = std::string(WITHY_SOURCE_DIR) + "/plugins/api/" + name;
  if (std::getenv("WITHY_UPDATE") != nullptr) std::ofstream(path, std::ios::binary) << text;
  std::ostringstream there;
  there << std::ifstream(path, std::ios::binary).rdbuf();
  EXPECT_EQ(there.str(), text) << path << " is out of date: run this test with WITHY_UPDATE=1";
}

TEST(Manual, IsFresh) {
  ExpectFresh("manual.md", PluginManual());
}
TEST(Stubs, AreFresh) {
  ExpectFresh("withy.lua", PluginStubs());
}

TEST(Manual, HasEveryFunctionAndField) {
  std::string manual = PluginManual();
  std::string stubs = PluginStubs();
  for (const plugin::ApiModule& module : plugin::ApiModules()) {
    EXPECT_THAT(manual, HasSubstr("### " + std::string(module.name)));
    for (const plugin::ApiFunction& function : module.functions) {
      EXPECT_THAT(manual, HasSubstr("`" + std::string(function.name) + std::string(function.signature) + "`"));
      EXPECT_THAT(stubs, HasSubstr("_module." + std::string(function.name) + "("));
      EXPECT_FALSE(function.doc.empty());
    }
  }
  for (const plugin::ApiFunction& method : plugin::ContextMethods()) {
    EXPECT_THAT(manual, HasSubstr("ctx:" + std::string(method.name)));
    EXPECT_THAT(stubs, HasSubstr("function context:" + std::string(method.name)));
  }
}

TEST(Stubs, HaveTheMessagesOfTheSchema) {
  std::string stubs = PluginStubs();
  EXPECT_THAT(stubs, HasSubstr("---@class withy.Section\n---@field id? string\n"));
  EXPECT_THAT(stubs, HasSubstr("---@field sections withy.Section[]\n"));
  EXPECT_THAT(stubs, HasSubstr("---@class withy.Length\n---@field unit? string"));
}

}  // namespace
}  // namespace withy
