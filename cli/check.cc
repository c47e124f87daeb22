#include <algorithm>

#include "absl/strings/str_cat.h"
#include "commands.h"
#include "design_input.h"
#include "exit_status.h"
#include "io.h"
#include "plugins.h"
#include "version.h"
#include "withy/document/print.h"
#include "withy/review/findings_json.h"
#include "withy/review/findings_sarif.h"
#include "withy/review/findings_text.h"

namespace withy {
namespace {

constexpr Example kExamples[] = {
    {"withy check casting.txtpb", "look at one design"},
    {"withy check --fail-on warning casting.txtpb surf.txtpb", "several, stricter"},
    {"withy check --json casting.txtpb", "findings as data, for programs"},
    {"withy check --sarif casting.txtpb > casting.sarif", "for a code host that shows findings beside the lines"},
};

constexpr OptionSpec kOptions[] = {
    {"--fail-on", "SEVERITY", "what makes the exit status 1: error (as without it), warning, advice",
     Completes::kChoice, "error|warning|advice"},
    {"--json", "", "print JSON (check.proto)"},
    {"--sarif", "", "print SARIF 2.1.0"},
};

const std::span<const OptionSpec> kGroups[] = {kOptions, UnitsOptions(), PluginOptions(), ReadLimitOptions()};

Severity FailOn(const Options& options) {
  std::string name = options.Value("--fail-on", "error");
  if (name == "warning") return Severity::kWarning;
  return name == "advice" ? Severity::kAdvice : Severity::kError;
}

// The plugins are found once and run on every file.
class Checker {
 public:
  explicit Checker(const Options& options)
      : options_(options), plugins_(FindPlugins(options)), host_(PluginHostFrom(options)) {
    review_ = ReviewOptionsFrom(plugins_, host_, nullptr);  // what fails here fails again, and is told, with the checks
  }

  CheckedDesign Check(const std::string& path) const {
    CheckedDesign checked = ReadChecked(path, options_);
    if (!checked.read.document) return checked;
    checked.review = ReviewDesign(checked.read, review_);
    std::vector<Finding> found;
    PluginSubject subject{checked.read.document->design, checked.review.rod, checked.review.report};
    for (const PluginSource& plugin : plugins_.plugins) {
      PluginHost::CheckResult result = host_.RunChecks(plugin, subject);
      found.insert(found.end(), result.findings.begin(), result.findings.end());
      for (const absl::Status& failure : result.failures) checked.failures.emplace_back(failure.message());
    }
    checked.failures.insert(checked.failures.end(), plugins_.failures.begin(), plugins_.failures.end());
    ApplyWaivers(*checked.read.document, std::move(found), checked.review);
    return checked;
  }

 private:
  const Options& options_;
  FoundPlugins plugins_;
  PluginHost host_;
  ReviewOptions review_;
};

int StatusOf(Outcome outcome) {
  switch (outcome) {
    case Outcome::kClean:
      return kDone;
    case Outcome::kFindings:
      return kFindings;
    case Outcome::kCannotTell:
    case Outcome::kIncomplete:
      return kIncomplete;
    case Outcome::kUnreadable:
      return kUnreadable;
  }
  return kOwnFault;
}

int Run(const Options& options, Io& io) {
  if (options.Has("--json") && options.Has("--sarif")) {
    io.Complain("--json and --sarif are two answers to one question; take one");
    return kUsage;
  }
  bool as_data = options.Has("--json") || options.Has("--sarif");
  Severity fail_on = FailOn(options);
  Checker checker(options);
  v1::CheckReport report = EmptyCheckReport();
  std::vector<Outcome> outcomes;
  for (const std::string& path : options.operands()) {
    CheckedDesign checked = checker.Check(path);
    outcomes.push_back(OutcomeOf(checked, fail_on));
    if (!checked.read.document) NoteImporter(path, options, io);
    if (as_data) {
      *report.add_files() = CheckedFileOf(checked, fail_on);
    } else if (io.quiet()) {
      io.Out(VerdictText(checked, fail_on, io.out_style()));
    } else {
      io.Out(FindingsText(checked, {.fail_on = fail_on,
                                    .verbose = io.verbose(),
                                    .units = checked.read.document ? UnitsFrom(options, checked.read.document->design)
                                                                   : LengthUnits::kMm,
                                    .style = io.out_style()}));
    }
  }
  if (options.Has("--json")) io.Out(MessageToJson(report));
  if (options.Has("--sarif")) io.Out(FindingsSarif(report, kVersion));
  if (!as_data && outcomes.size() > 1) io.Out(OverallText(outcomes, io.out_style()));
  return StatusOf(*std::max_element(outcomes.begin(), outcomes.end()));
}

}  // namespace

const Command kCheck = {
    .name = "check",
    .operands = "FILE...",
    .least_operands = 1,
    .most_operands = kAnyNumber,
    .completes = Completes::kDesign,
    .summary = "Look for what is wrong with a design, and for what is not known yet",
    .details =
        "Each finding says where it is in the file and on the rod, and what to do at the bench; 'withy explain CODE' "
        "says more. The last line is the verdict: clean, no errors (with warnings or advice that stand), findings, "
        "cannot tell (a rule could not be judged), incomplete (a plugin failed), unreadable. Of several files the "
        "worst holds.",
    .examples = kExamples,
    .options = kGroups,
    .run = Run,
};

}  // namespace withy
