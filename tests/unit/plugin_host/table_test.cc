// The plugin's own table: `api` first, required fields, nothing unknown.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "subject.h"

namespace withy {
namespace {

using testing::HasSubstr;

std::string ErrorOf(const std::string& text) {
  absl::StatusOr<PluginInfo> info = Host().Describe(Plugin(text));
  return info.ok() ? "" : std::string(info.status().message());
}

// A table with these fields beside the required ones.
std::string With(const std::string& fields) {
  return "return { api = 1, name = 'test', version = '1', license = 'Apache-2.0', summary = 'Test', " + fields + " }";
}

constexpr char kCheck[] = "checks = {{ code = 'c', severity = 'error', summary = 's', run = function() end }}";

TEST(PluginTable, IsDescribed) {
  absl::StatusOr<PluginInfo> info = Host().Describe(Plugin(With(R"(
    checks = {{ code = 'short-rod', severity = 'advice', summary = 'Short', run = function() end }},
    exporters = {{ name = 'list', extension = 'csv', summary = 'List', run = function() end, options = {
      paper = { type = 'string', default = 'A4', summary = 'Paper' }, copies = { type = 'number', default = 2, summary = 'Copies' },
      note = { type = 'string', summary = 'Note' }, mono = { type = 'boolean', default = false, summary = 'Mono' } } }},
    importers = {{ name = 'table', extensions = { 'csv', 'tsv' }, summary = 'Table', run = function() end }})")));
  ASSERT_TRUE(info.ok()) << info.status();
  EXPECT_EQ(info->api, 1);
  EXPECT_EQ(info->name, "test");
  EXPECT_EQ(info->version, "1");
  EXPECT_EQ(info->license, "Apache-2.0");
  ASSERT_EQ(info->entries.size(), 3u);
  EXPECT_EQ(info->entries[0].name, "short-rod");
  EXPECT_EQ(info->entries[0].severity, "advice");
  EXPECT_EQ(info->entries[1].kind, PluginEntry::Kind::kExporter);
  EXPECT_EQ(info->entries[1].extension, "csv");
  ASSERT_EQ(info->entries[1].options.size(), 4u);  // by name
  EXPECT_EQ(info->entries[1].options[0].name, "copies");
  EXPECT_EQ(info->entries[1].options[0].default_value, "2");
  EXPECT_FALSE(info->entries[1].options[2].has_default);
  EXPECT_EQ(info->entries[1].options[1].default_value, "false");
  EXPECT_THAT(info->entries[2].extensions, testing::ElementsAre("csv", "tsv"));
}

TEST(PluginTable, ApiIsReadBeforeAnythingElse) {
  EXPECT_THAT(ErrorOf("return { api = 2, nonsense = true }"),
              HasSubstr("written for version 2 of the plugin API; this withy has version 1"));
  EXPECT_THAT(ErrorOf("return { nonsense = true }"), HasSubstr("no 'api'"));
  EXPECT_THAT(ErrorOf("return { api = '1' }"), HasSubstr("version 1"));
  EXPECT_THAT(ErrorOf("return 5"), HasSubstr("must return a table, not a number"));
  EXPECT_THAT(ErrorOf(""), HasSubstr("must return a table"));
}

TEST(PluginTable, RequiredFieldsAreThere) {
  EXPECT_THAT(ErrorOf("return { api = 1 }"), HasSubstr("'name' is missing"));
  EXPECT_THAT(ErrorOf(With("checks = {{ code = 'c', summary = 's', run = function() end }}")),
              HasSubstr("checks[1]: 'severity' is missing"));
  EXPECT_THAT(ErrorOf(With("exporters = {{ name = 'e', summary = 's', run = function() end }}")),
              HasSubstr("'extension' is missing"));
  EXPECT_THAT(ErrorOf(With("importers = {{ name = 'e', summary = 's', extensions = {}, run = function() end }}")),
              HasSubstr("is empty"));
  EXPECT_THAT(ErrorOf(With("")), HasSubstr("no checks, exporters, importers or practices"));
}

TEST(PluginTable, UnknownNamesAreRefusedWithTheNearest) {
  EXPECT_THAT(ErrorOf(With("check = {}")), HasSubstr("there is no 'check'; did you mean 'checks'?"));
  EXPECT_THAT(
      ErrorOf(With("checks = {{ code = 'c', severity = 'error', summary = 's', run = function() end, hepl = 1 }}")),
      HasSubstr("checks[1]: there is no 'hepl'"));
}

TEST(PluginTable, FieldsHaveTheirTypes) {
  EXPECT_THAT(ErrorOf(With("checks = {{ code = 'c', severity = 'error', summary = 's', run = 1 }}")),
              HasSubstr("checks[1]: 'run' must be a function, not a number"));
  EXPECT_THAT(ErrorOf(With("checks = {{ code = 'c', severity = 'fatal', summary = 's', run = function() end }}")),
              HasSubstr("'severity' is \"error\""));
  EXPECT_THAT(ErrorOf(With("checks = {{ code = 'C 1', severity = 'error', summary = 's', run = function() end }}")),
              HasSubstr("lower-case letters"));
  EXPECT_THAT(ErrorOf(With(std::string(kCheck) +
                           ", exporters = {{ name = 'e', extension = '.csv', summary = 's', run = function() end }}")),
              HasSubstr("without a dot"));
  EXPECT_THAT(
      ErrorOf(With("exporters = {{ name = 'e', extension = 'csv', summary = 's', run = function() end, options = "
                   "{ n = { type = 'number', default = 'x', summary = 's' } } }}")),
      HasSubstr("exporters[1].options.n: 'default' must be a number"));
}

TEST(PluginTable, CodesAreUniqueAndNamesAreNotTaken) {
  const std::string check = "{ code = 'c', severity = 'error', summary = 's', run = function() end }";
  EXPECT_THAT(ErrorOf(With("checks = {" + check + ", " + check + "}")), HasSubstr("checks[2]: there are two 'c'"));
  EXPECT_THAT(ErrorOf("return { api = 1, name = 'guides', version = '1', license = 'MIT', summary = 's', " +
                      std::string(kCheck) + " }"),
              HasSubstr("the name 'guides' is withy's own"));
}

TEST(PluginTable, AnErrorInTheFileNamesFileAndLine) {
  EXPECT_THAT(ErrorOf("local x = 1\nlocal y = = 2"), HasSubstr("init.lua:2: unexpected symbol"));
  EXPECT_THAT(ErrorOf("\n\nerror('broken')"), HasSubstr("init.lua:3: broken"));
  PluginSource file = {"/home/ines/rules.lua", true, {{"init.lua", "\nerror('broken')"}}};
  EXPECT_THAT(std::string(Host().Describe(file).status().message()),
              HasSubstr("plugin rules.lua: rules.lua:2: broken"));
}

TEST(PluginTable, PracticesAreDescribed) {
  absl::StatusOr<PluginInfo> info = Host().Describe(Plugin(With(R"(practices = {
    { technique = 'casting', source = 'our rule', butt_guide_from_reel_mm = { 350, 600 }, butt_ring_mm = { 8, 12 },
      guides = { 8, 11 } },
    { technique = 'other: kite', source = 'ours', guides_per_foot = 0.5, guides = { -1, 2.5 }, butt_ring_mm = { 0, 0 } } })")));
  ASSERT_TRUE(info.ok()) << info.status();
  EXPECT_TRUE(info->entries.empty());
  ASSERT_EQ(info->practices.size(), 2u);
  const Practice& casting = info->practices[0];
  EXPECT_EQ(casting.technique, "casting");
  EXPECT_DOUBLE_EQ(casting.butt_guide_from_reel->least, 0.35);
  EXPECT_DOUBLE_EQ(casting.butt_guide_from_reel->most, 0.6);
  EXPECT_EQ(casting.butt_guide_from_reel->source, "our rule");
  EXPECT_EQ(casting.butt_guide_from_reel->plugin, "test");
  EXPECT_DOUBLE_EQ(casting.butt_ring->most, 0.012);
  EXPECT_EQ(casting.guides->per_foot, 0);
  EXPECT_EQ(casting.guides->most, 11);
  EXPECT_FALSE(casting.butt_guide_from_butt || casting.running_ring);
  EXPECT_EQ(info->practices[1].guides->per_foot, 0.5);
  EXPECT_EQ(info->practices[1].guides->least, -1);
}

TEST(PluginTable, PracticesAreStrict) {
  const auto error_of = [](const std::string& fields) {
    return ErrorOf(With("practices = {{ technique = 'casting', source = 's', " + fields + " }}"));
  };
  EXPECT_THAT(error_of("but_ring_mm = { 8, 12 }"), HasSubstr("did you mean 'butt_ring_mm'?"));
  EXPECT_THAT(error_of(""), HasSubstr("practices[1]: it says nothing"));
  EXPECT_THAT(error_of("guides = 8"), HasSubstr("'guides' must be a number[], not a number"));
  EXPECT_THAT(error_of("guides = { 8 }"), HasSubstr("'guides' is { least, most }"));
  EXPECT_THAT(error_of("guides = { 8, 9, 10 }"), HasSubstr("'guides' is { least, most }"));
  EXPECT_THAT(error_of("guides = { '8', 9 }"), HasSubstr("'guides' is two numbers"));
  EXPECT_THAT(error_of("guides = { 0, 9 }"), HasSubstr("from 1 to 100"));
  EXPECT_THAT(error_of("butt_ring_mm = { 8, 101 }"), HasSubstr("from 0 to 100"));
  EXPECT_THAT(error_of("guides_per_foot = 1"), HasSubstr("'guides_per_foot' needs 'guides'"));
  EXPECT_THAT(error_of("guides = { 0, 1 }, guides_per_foot = 0"), HasSubstr("'guides_per_foot' is above 0"));
  EXPECT_THAT(ErrorOf(With("practices = {{ technique = 'casting', guides = { 8, 9 } }}")),
              HasSubstr("'source' is missing"));
  EXPECT_THAT(ErrorOf(With("practices = {{ technique = 'casting', source = '', guides = { 8, 9 } }}")),
              HasSubstr("'source' says whose rule it is"));
  EXPECT_THAT(ErrorOf(With("practices = {{ technique = 'fly', source = 's', guides = { 8, 9 } }, "
                           "{ technique = 'fly', source = 's', guides = { 8, 9 } }}")),
              HasSubstr("practices[2]: there are two of 'fly'"));
}

TEST(PluginTable, WantsAreOfAStrictList) {
  const auto exporter = [](const std::string& wants) {
    return With("exporters = {{ name = 'list', extension = 'csv', summary = 's', run = function() end, wants = " +
                wants + " }}");
  };
  absl::StatusOr<PluginInfo> info = Host().Describe(Plugin(exporter("{ 'placement' }")));
  ASSERT_TRUE(info.ok()) << info.status();
  EXPECT_THAT(info->entries.at(0).wants, testing::ElementsAre("placement"));
  EXPECT_THAT(ErrorOf(exporter("{ 'placment' }")), HasSubstr("there is no 'placment'; did you mean 'placement'?"));
  EXPECT_THAT(ErrorOf(exporter("{ 5 }")), HasSubstr("'wants' is a list of text"));
  EXPECT_THAT(ErrorOf(exporter("{ 'placement', 'placement' }")), HasSubstr("twice"));
  EXPECT_THAT(ErrorOf(With("checks = {{ code = 'c', severity = 'error', summary = 's', run = function() end, "
                           "wants = { 'placement' } }}")),
              HasSubstr("there is no 'wants'"));
}

TEST(PluginTable, WithoutAChildProgramOnlyBuiltInPluginsRun) {
  PluginHost host{PluginHostOptions{}};
  EXPECT_TRUE(host.Describe(Plugin(With(kCheck))).ok());
  EXPECT_THAT(std::string(host.Describe(Plugin(With(kCheck), false)).status().message()),
              HasSubstr("built-in plugins only"));
}

}  // namespace
}  // namespace withy
