#include <algorithm>

#include "absl/strings/str_cat.h"
#include "bench_log.h"
#include "commands.h"
#include "design_input.h"
#include "exit_status.h"
#include "io.h"
#include "withy/document/print.h"
#include "withy/review/trim_text.h"

namespace withy {
namespace {

constexpr Example kExamples[] = {
    {"withy trim casting-uncut.txtpb", "how much comes off the butt, in which steps"},
    {"withy trim casting-uncut.txtpb --cut '2 in' --overall '91 15/16 in'", "record a cut and its dry fit"},
    {"withy trim casting.txtpb --correct e9 --reason 'was 13/16 in' --cut '13/16 in' -o mended.txtpb",
     "an entry was wrong, and what it should have said"},
};

constexpr OptionSpec kOptions[] = {
    {"--cut", "LENGTH", "record what came off the butt, kerf included: '3 in', '76.2 mm'"},
    {"--overall", "LENGTH", "record a dry fit: the handle's own butt end to the blank's tip end"},
    {"--arbors-on", "", "the arbors were on the blank in that dry fit"},
    {"--part", "ID", "the part that was tried on (the one that the blank rests in)"},
    {"--tip-cut", "LENGTH", "record what came off the tip"},
    {"--plus-minus", "LENGTH", "how exact these lengths are"},
    {"--correct", "ID", "an entry was wrong: what is typed for it here counts in its place, or nothing"},
    {"--reason", "TEXT", "why it was"},
    {"--json", "", "print JSON (FitReport of report.proto)"},
};

const std::span<const OptionSpec> kGroups[] = {kOptions, RecordingOptions(), UnitsOptions(), ReadLimitOptions()};

// What was typed.
struct Typed {
  std::optional<LengthText> cut, tip_cut, overall, plus_minus;

  bool Anything(const Options& options) const { return cut || tip_cut || overall || options.Has("--correct"); }
};

bool ReadTyped(const Options& options, Io& io, Typed& typed) {
  if (!ReadLength(options, "--cut", io, &typed.cut) || !ReadLength(options, "--tip-cut", io, &typed.tip_cut) ||
      !ReadLength(options, "--overall", io, &typed.overall) ||
      !ReadLength(options, "--plus-minus", io, &typed.plus_minus)) {
    return false;
  }
  if (typed.plus_minus && !(typed.plus_minus->value.mm() > 0)) {
    io.Complain("--plus-minus: how far off the reading may be, above zero: '1/16 in'");
    return false;
  }
  if (options.Has("--correct") != options.Has("--reason")) {
    io.Complain("--correct and --reason go together: which entry was wrong, and why");
    return false;
  }
  for (std::string_view option : {"--note", "--by", "--output", "--plus-minus", "--arbors-on", "--part"}) {
    if (!options.Has(option) || typed.Anything(options)) continue;
    io.Complain(absl::StrCat(std::string(option), " goes with what is to be recorded: --cut, --overall, --tip-cut, ",
                             "--correct"));
    return false;
  }
  return true;
}

v1::Entry CutEntry(const std::string& section, v1::End::Value end, const LengthText& amount, const Typed& typed) {
  v1::Entry entry;
  entry.mutable_cut()->set_section(section);
  entry.mutable_cut()->set_at_end(end);
  *entry.mutable_cut()->mutable_amount() = MeasuredLength(amount, typed.plus_minus);
  return entry;
}

bool SaysTheSameKind(const v1::Entry& a, const v1::Entry& b) {
  return a.what_case() == b.what_case() &&
         (!a.has_cut() || (a.cut().at_end() == v1::End::TIP) == (b.cut().at_end() == v1::End::TIP));
}

// Of what is recorded with a correction, the one that says what the wrong entry should have said.
void PutInItsPlace(const v1::Design& design, const std::string& wrong, std::vector<v1::Entry>& entries) {
  for (const v1::Entry& old : design.log()) {
    if (old.id() != wrong) continue;
    const auto right = std::find_if(entries.begin(), entries.end(),
                                    [&old](const v1::Entry& entry) { return SaysTheSameKind(entry, old); });
    if (right != entries.end()) right->set_instead_of(wrong);
    return;
  }
}

std::vector<v1::Entry> EntriesOf(const Typed& typed, const Options& options, const v1::Design& design,
                                 const v1::Report& report, const std::string& part) {
  std::vector<v1::Entry> entries;
  if (options.Has("--correct")) {
    v1::Correction& correction = *entries.emplace_back().mutable_correction();
    correction.set_entry(options.Value("--correct"));
    correction.set_reason(options.Value("--reason"));
  }
  const auto& sections = report.sections().sections();
  if (typed.cut) entries.push_back(CutEntry(sections.begin()->id(), v1::End::BUTT, *typed.cut, typed));
  if (typed.tip_cut) entries.push_back(CutEntry(sections.rbegin()->id(), v1::End::TIP, *typed.tip_cut, typed));
  if (typed.overall) {
    v1::Fit& fit = *entries.emplace_back().mutable_fit();
    fit.set_part(part);
    *fit.mutable_overall() = MeasuredLength(*typed.overall, typed.plus_minus);
    fit.set_arbors_on(options.Has("--arbors-on"));
  }
  if (options.Has("--correct")) PutInItsPlace(design, options.Value("--correct"), entries);
  return entries;
}

// The part that was tried on: named, or that the blank rests in, or the one one-piece handle. Empty: nobody can say.
std::string PartTriedOn(const Options& options, const v1::Design& design, const v1::Report& report) {
  if (options.Has("--part")) return options.Value("--part");
  if (!report.fit().cut_plan().host().empty()) return report.fit().cut_plan().host();
  std::string only;
  for (const v1::Part& part : design.handle().parts()) {
    if (part.kind() != "one_piece_handle") continue;
    if (!only.empty()) return "";
    only = part.id();
  }
  return only;
}

// What stands in the place of another entry is judged by the log that comes out, not by the rod as it is now.
bool CountsNow(const std::vector<v1::Entry>& entries, v1::Entry::WhatCase what, v1::End::Value end = v1::End::BUTT) {
  return std::none_of(entries.begin(), entries.end(), [what, end](const v1::Entry& entry) {
    return !entry.instead_of().empty() && entry.what_case() == what && (!entry.has_cut() || entry.cut().at_end() == end);
  });
}

BenchReadings ReadingsOf(const Typed& typed, const Options& options, const std::vector<v1::Entry>& entries,
                         const std::string& part) {
  BenchReadings readings;
  if (typed.cut && CountsNow(entries, v1::Entry::kCut)) readings.cut_mm = typed.cut->value.mm();
  if (typed.tip_cut && CountsNow(entries, v1::Entry::kCut, v1::End::TIP)) {
    readings.tip_cut_mm = typed.tip_cut->value.mm();
  }
  if (typed.overall && CountsNow(entries, v1::Entry::kFit)) readings.dry_fit_mm = typed.overall->value.mm();
  if (typed.plus_minus) readings.plus_minus_mm = typed.plus_minus->value.mm();
  readings.part = part;
  readings.corrects = options.Value("--correct");
  return readings;
}

int RecordTyped(const Typed& typed, const Options& options, Io& io, CheckedDesign& checked) {
  const v1::Design& design = checked.read.document->design;
  const v1::Report& report = checked.review.report;
  const std::string part = PartTriedOn(options, design, report);
  if (typed.overall && part.empty()) {
    io.Complain("which part was tried on?", "name it with --part; a blank that runs through needs no dry fit");
    return kUsage;
  }
  if ((typed.cut || typed.tip_cut) && report.sections().sections_size() == 0) {
    io.Complain("not recorded: the design has no blank to cut", "add blank.sections first");
    return kFindings;
  }
  const std::vector<v1::Entry> entries = EntriesOf(typed, options, design, report, part);
  return Record(entries, ReadingsOf(typed, options, entries, part), options, io, checked);
}

int Run(const Options& options, Io& io) {
  Typed typed;
  if (!ReadTyped(options, io, typed)) return kUsage;
  const std::string& path = options.operands().front();
  std::optional<CheckedDesign> checked = ReadReviewed(path, options, io);
  if (!checked) return kUnreadable;
  const bool records = typed.Anything(options);
  if (records) {
    if (int status = RecordTyped(typed, options, io, *checked); status != kDone) return status;
  }
  const v1::Design& design = checked->read.document->design;
  const v1::Report& report = checked->review.report;
  const ShowOptions show = {.units = UnitsFrom(options, design), .style = io.out_style()};
  PrintResult(options.Has("--json") ? MessageToJson(report.fit()) : TrimText(path, design, report, show), options,
              records, io);
  NoteErrors(*checked, io);
  return kDone;
}

}  // namespace

const Command kTrim = {
    .name = "trim",
    .operands = "FILE",
    .least_operands = 1,
    .most_operands = 1,
    .completes = Completes::kDesign,
    .summary = "Plan the cut: what to take off the butt in which steps; record cuts and dry fits",
    .details =
        "Cuts are rounded down to 1/16 in or 1 mm, never past. What is cut, glued or reamed by the log is a fact that "
        "no "
        "plan alters. Recording adds entries to the log in FILE, the rest stays as it is, and prints the plan as it "
        "then "
        "is. A reading that cannot be right is refused (exit status 1) and nothing is written. The date is the "
        "clock's, or "
        "SOURCE_DATE_EPOCH.",
    .examples = kExamples,
    .options = kGroups,
    .run = Run,
};

}  // namespace withy
