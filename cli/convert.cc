#include <string>

#include "absl/strings/str_cat.h"
#include "commands.h"
#include "design_input.h"
#include "exit_status.h"
#include "io.h"
#include "output.h"
#include "withy/document/upgrade.h"

namespace withy {
namespace {

constexpr Example kExamples[] = {
    {"withy convert casting.txtpb -o casting.json", "the form follows the ending: .txtpb, .json, .binpb"},
    {"withy convert casting.txtpb --to json", "to standard output"},
    {"withy convert --format-version 0 --drop-unknown fly.txtpb -o page.txtpb", "for a program that reads version 0"},
};

constexpr OptionSpec kOptions[] = {
    {"-o,--output", "OUT", "where to (standard output)", Completes::kFile},
    {"--to", "FORM", "text, json or binary (by OUT's ending)", Completes::kChoice, "text|json|binary"},
    {"--format-version", "N", "write this version of the format: 0 or 1", Completes::kChoice, "0|1"},
    {"--drop-unknown", "", "write even where something would be lost"},
    {"--force", "", "replace OUT where it exists"},
};

const std::span<const OptionSpec> kGroups[] = {kOptions, ReadLimitOptions()};

std::string LossText(const Loss& loss) {
  std::string at = loss.at.ToString();
  bool says_where = at.empty() || loss.what.find(at) != std::string::npos;
  return absl::StrCat(says_where ? "" : at + ": ", loss.what);
}

bool MayBeLost(const Loss& loss, const Options& options) {
  return loss.comment || options.Has("--drop-unknown");
}

int Refuse(const std::vector<Loss>& losses, const Options& options, Io& io) {
  for (const Loss& loss : losses) {
    if (!MayBeLost(loss, options)) io.Note("would be lost: " + LossText(loss));
  }
  io.Complain("not written: something would be lost", "--drop-unknown writes it all the same");
  return kNoOutput;
}

int Run(const Options& options, Io& io) {
  std::string output = options.Value("--output");
  if (!options.Has("--to") && !FormOfEnding(output)) {
    io.Complain("which form? Name it with --to, or give OUT an ending that says it: .txtpb, .json, .binpb");
    return kUsage;
  }
  std::optional<CheckedDesign> checked = ReadOnly(options.operands().front(), options, io);
  if (!checked) return kUnreadable;
  const Document& document = *checked->read.document;
  Form form = WantedForm(options, output, Form::kText);
  std::vector<Loss> losses = LossesInForm(document, form);
  bool version_0 = options.Value("--format-version", "1") == "0";
  std::string bytes =
      version_0 ? WriteDesign(DowngradeTo0(document.design, &losses), form) : WriteDesign(document.design, form);
  for (const Loss& loss : losses) {
    if (!MayBeLost(loss, options)) return Refuse(losses, options, io);
  }
  int status = Deliver(output, bytes, form == Form::kBinary, options.Has("--force"), io);
  if (status != kDone) return status;
  for (const Loss& loss : losses) io.Note("lost: " + LossText(loss));
  return kDone;
}

}  // namespace

const Command kConvert = {
    .name = "convert",
    .operands = "IN",
    .least_operands = 1,
    .most_operands = 1,
    .completes = Completes::kDesign,
    .summary = "Write a design in another form: text, JSON or binary",
    .details =
        "The text written is canonical: field order of the schema, no comments. Use 'withy fmt' to lay out a file and "
        "keep its comments. What the other form cannot hold is listed; where it is more than comments, nothing is "
        "written unless --drop-unknown is given.",
    .examples = kExamples,
    .options = kGroups,
    .run = Run,
};

}  // namespace withy
