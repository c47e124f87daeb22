// What the plugins of these tests look at, and short ways to run them.
#ifndef WITHY_TESTS_UNIT_PLUGIN_HOST_SUBJECT_H_
#define WITHY_TESTS_UNIT_PLUGIN_HOST_SUBJECT_H_

#include <string>

#include "withy/plugin_host/plugin_host.h"

namespace withy {

// A design, rod and report with a few values of each kind.
struct TestSubject {
  v1::Design design;
  v1::Rod rod;
  v1::Report report;
  TestSubject();
  PluginSubject get() const { return {design, rod, report}; }
};

// A plugin with one check "probe" whose run function has this body.
PluginSource CheckPlugin(const std::string& body, bool built_in = true);
// A plugin with one exporter "probe" (options: paper = "A4", copies = 1, mono = false, note without default).
PluginSource ExportPlugin(const std::string& body, bool built_in = true);
// A plugin with one importer "probe" (extension csv).
PluginSource ImportPlugin(const std::string& body, bool built_in = true);
// A plugin of one file.
PluginSource Plugin(const std::string& text, bool built_in = true);

// A host whose children are this very program.
PluginHostOptions Options();
PluginHost Host();

// What `return EXPRESSION` gives inside a check, as text; "error: ..." where it fails.
std::string Eval(const std::string& expression);
// The message that a check with this body fails with; "" where it does not fail.
std::string FailureOf(const std::string& body, bool built_in = true);

}  // namespace withy

#endif  // WITHY_TESTS_UNIT_PLUGIN_HOST_SUBJECT_H_
