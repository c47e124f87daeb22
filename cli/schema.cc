#include "absl/strings/str_cat.h"
#include "commands.h"
#include "exit_status.h"
#include "io.h"
#include "withy/document/json_schema.h"

namespace withy {
namespace {

constexpr Example kExamples[] = {
    {"withy schema > withy.schema.json", "the JSON form of a design, for editors and validators"},
    {"withy schema check", "what 'withy check --json' prints"},
};

constexpr std::span<const OptionSpec> kGroups[] = {{}};

// The message of a word on the command line.
struct Named {
  std::string_view word, message;
};
constexpr Named kNamed[] = {{"design", "Design"}, {"report", "Report"}, {"check", "CheckReport"},
                            {"plan", "WorkPlan"}, {"why", "WhyReport"}, {"calibration", "Calibration"}};

int Run(const Options& options, Io& io) {
  std::string word = options.operands().empty() ? "design" : options.operands().front();
  for (const Named& named : kNamed) {
    if (named.word != word) continue;
    io.Out(JsonSchema(named.message));
    return kDone;
  }
  io.Complain(absl::StrCat("no schema '", word, "'"), "there are design, report, check, plan, why and calibration");
  return kUsage;
}

}  // namespace

const Command kSchema = {
    .name = "schema",
    .operands = "[design|report|check|plan|why|calibration]",
    .least_operands = 0,
    .most_operands = 1,
    .completes = Completes::kSchema,
    .summary = "Print the JSON Schema of what withy reads and prints",
    .details = "",
    .examples = kExamples,
    .options = kGroups,
    .run = Run,
};

}  // namespace withy
