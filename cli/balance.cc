#include "absl/strings/str_cat.h"
#include "bench_log.h"
#include "commands.h"
#include "design_input.h"
#include "exit_status.h"
#include "io.h"
#include "withy/document/print.h"
#include "withy/review/balance_text.h"

namespace withy {
namespace {

constexpr Example kExamples[] = {
    {"withy balance casting.txtpb", "where it balances, how many counterweights"},
    {"withy balance casting.txtpb --weighed '408 g' --balance '12 5/8 in' --with-reel", "record a reading"},
    {"withy balance casting.txtpb --potted 3 --note 'packed with cork' -o done.txtpb", "they are in for good"},
};

constexpr OptionSpec kOptions[] = {
    {"--weighed", "MASS", "record what the whole rod weighs as it stands: '312 g', '11 oz'"},
    {"--balance", "LENGTH", "record where it balances, from its butt end: '13 1/4 in'"},
    {.name = "--weights",
     .value = "N",
     .summary = "counterweights that were in it then, 0 = none (as potted)",
     .most = 1000,
     .least = 0},
    {"--with-reel", "", "the reel was on"},
    {.name = "--missing", .value = "ID", .summary = "what was not on it yet", .repeatable = true},
    {.name = "--potted",
     .value = "N",
     .summary = "record that this many counterweights are fixed for good",
     .most = 1000},
    {"--json", "", "print JSON (BalanceReport of report.proto)"},
};

const std::span<const OptionSpec> kGroups[] = {kOptions, RecordingOptions(), UnitsOptions(), ReadLimitOptions()};

// What was typed.
struct Typed {
  std::optional<MassText> mass;
  std::optional<LengthText> balance;
  bool weighed = false, potted = false;
};

bool ReadTyped(const Options& options, Io& io, Typed& typed) {
  if (!ReadMass(options, "--weighed", io, &typed.mass) || !ReadLength(options, "--balance", io, &typed.balance)) {
    return false;
  }
  typed.weighed = typed.mass || typed.balance;
  typed.potted = options.Has("--potted");
  for (std::string_view option : {"--weights", "--with-reel", "--missing"}) {
    if (!options.Has(option) || typed.weighed) continue;
    io.Complain(absl::StrCat(std::string(option), " goes with --weighed or --balance"));
    return false;
  }
  for (std::string_view option : {"--note", "--by", "--output"}) {
    if (!options.Has(option) || typed.weighed || typed.potted) continue;
    io.Complain(absl::StrCat(std::string(option), " goes with what is to be recorded: --weighed, --balance, --potted"));
    return false;
  }
  return true;
}

v1::Entry WeighedEntry(const Typed& typed, const Options& options) {
  v1::Entry entry;
  v1::Weighed& weighed = *entry.mutable_weighed();
  if (typed.mass) *weighed.mutable_mass() = MeasuredMass(*typed.mass);
  if (typed.balance) *weighed.mutable_balance_from_butt() = MeasuredLength(*typed.balance, std::nullopt);
  weighed.set_with_reel(options.Has("--with-reel"));
  if (options.Has("--weights")) weighed.set_weights(static_cast<std::uint32_t>(options.Number("--weights", 0)));
  for (const std::string& id : options.Values("--missing")) weighed.add_missing(id);
  return entry;
}

// The part whose counterweights are planned; null where it holds none.
const v1::Part* PartWithWeights(const v1::Design& design, const v1::Report& report) {
  for (const v1::Part& part : design.handle().parts()) {
    if (part.has_weights() && part.id() == report.balance().counterweights().part()) return &part;
  }
  return nullptr;
}

v1::Entry PottedEntry(const v1::Part& part, const Options& options) {
  v1::Entry entry;
  v1::Potted& potted = *entry.mutable_potted();
  potted.set_part(part.id());
  potted.set_count(static_cast<std::uint32_t>(options.Number("--potted", 0)));
  potted.set_bond(part.weights().bond());
  return entry;
}

int RecordTyped(const Typed& typed, const Options& options, Io& io, CheckedDesign& checked) {
  const v1::Part* part = PartWithWeights(checked.read.document->design, checked.review.report);
  std::vector<v1::Entry> entries;
  BenchReadings readings;
  if (typed.mass) readings.mass_g = typed.mass->value.grams();
  if (typed.balance) readings.balance_mm = typed.balance->value.mm();
  readings.with_reel = options.Has("--with-reel");
  if (typed.weighed) {
    entries.push_back(WeighedEntry(typed, options));
    readings.missing = options.Values("--missing");
    if (options.Has("--weights")) readings.weights = entries.back().weighed().weights();
  }
  if (typed.potted) {
    if (!part) {
      io.Complain("not recorded: no part of the design holds counterweights", "add handle.parts[...].weights first");
      return kFindings;
    }
    entries.push_back(PottedEntry(*part, options));
    readings.part = part->id();
    readings.weights = entries.back().potted().count();
    readings.potted = true;
  }
  return Record(std::move(entries), readings, options, io, checked);
}

int Run(const Options& options, Io& io) {
  Typed typed;
  if (!ReadTyped(options, io, typed)) return kUsage;
  const std::string& path = options.operands().front();
  std::optional<CheckedDesign> checked = ReadReviewed(path, options, io);
  if (!checked) return kUnreadable;
  const bool records = typed.weighed || typed.potted;
  if (records) {
    if (int status = RecordTyped(typed, options, io, *checked); status != kDone) return status;
  }
  const v1::Design& design = checked->read.document->design;
  const v1::Report& report = checked->review.report;
  const ShowOptions show = {.units = UnitsFrom(options, design), .style = io.out_style()};
  PrintResult(options.Has("--json") ? MessageToJson(report.balance()) : BalanceText(path, design, report, show),
              options, records, io);
  NoteErrors(*checked, io);
  return kDone;
}

}  // namespace

const Command kBalance = {
    .name = "balance",
    .operands = "FILE",
    .least_operands = 1,
    .most_operands = 1,
    .completes = Completes::kDesign,
    .summary = "Balance the rod: moment, counterweights, what they cost; record weighings",
    .details =
        "The plan is for the balance point that the order names, else for where the rod is held. It stops just "
        "tip-heavy "
        "before potting, by the amount that the potting adds behind. A weighing "
        "of "
        "the rod as it stands replaces the estimate of what was on it; name what was not with --missing. Recording "
        "adds "
        "an entry to the log in FILE and prints the plan as it then is; a reading that cannot be right is refused "
        "(exit "
        "status 1) and nothing is written.",
    .examples = kExamples,
    .options = kGroups,
    .run = Run,
};

}  // namespace withy
