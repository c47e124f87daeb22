// What an exporter wants of the report is there for it, and for no other.
#include "withy/plugin_host/wanted.h"

#include <gtest/gtest.h>

#include "withy/document/document.h"

namespace withy {
namespace {

TEST(Wanted, IsAddedForWhoWantsIt) {
  const ReadResult read = ReadDesign("d.txtpb", "format: \"withy/1\"\nguides { id: \"g\" from_tip { mm: 500 } }\n");
  ASSERT_TRUE(read.document);
  v1::Report report;
  PluginEntry entry;
  AddWanted(entry, *read.document, {}, report);
  EXPECT_FALSE(report.has_placement());
  entry.wants = {"placement"};
  AddWanted(entry, *read.document, {}, report);
  ASSERT_TRUE(report.has_placement());
  EXPECT_EQ(report.placement().state(), "cannot tell");  // there is no blank
}

}  // namespace
}  // namespace withy
