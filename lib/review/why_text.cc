#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "absl/strings/str_cat.h"
#include "figure_value.h"
#include "withy/review/terminal_text.h"
#include "withy/review/why.h"
#include "withy/units/format.h"

namespace withy {
namespace {

constexpr int kMostShares = 8;
constexpr double kSmallShare = 0.005;  // less would be shown as 0 %

std::string Percent(double share) {
  const std::string number = FormatFixed(share * 100, 0);
  return share > 0 && number == "0" ? "<1 %" : number + " %";
}

// "measured, line 34, 62 % of the variance".
std::string RemarksOf(const v1::WhyStep& step) {
  std::string remarks = step.source();
  if (step.line() > 0) absl::StrAppend(&remarks, ", line ", step.line());
  if (step.has_share()) absl::StrAppend(&remarks, ", ", Percent(step.share()), " of the variance");
  return remarks;
}

std::string NameOf(const v1::WhyStep& step, const TextStyle& style) {
  std::string name = Painted(Visible(step.path()), step.written() ? Ink::kPlain : Ink::kStrong, style);
  if (!step.about().empty()) absl::StrAppend(&name, " (", Visible(step.about()), ")");
  return name;
}

std::string HeadOf(const v1::WhyStep& step, const TextStyle& style) {
  const std::string name = NameOf(step, style);
  if (!step.text().empty()) return absl::StrCat(name, " = ", Visible(step.text()));
  return absl::StrCat(name, step.measure().empty() ? ": not told of this rod" : ": cannot be told");
}

class TreeText {
 public:
  explicit TreeText(const TextStyle& style) : style_(style) {}

  // `first` stands before the head, `rest` before all that hangs on it.
  void Add(const v1::WhyStep& step, const std::string& first, const std::string& rest) {
    const int inputs = step.inputs_size();
    const std::string below = rest + (inputs > 0 ? "│ " : "  ");
    if (step.written()) {
      AddWritten(step, first, rest + "  ");
    } else {
      AddHead(step, first, below);
      AddNotes(step, below);
    }
    for (int i = 0; i < inputs; ++i) {
      const v1::WhyStep& input = step.inputs(i);
      const bool last = i + 1 == inputs && input.more() == 0;
      Add(input, rest + (last ? "└─ " : "├─ "), rest + (last ? "   " : "│  "));
      if (input.more() == 0) continue;
      absl::StrAppend(&text_, rest, i + 1 == inputs ? "└─ " : "├─ ", "and ", input.more(), " more like it\n");
    }
  }

  std::string Take() { return std::move(text_); }

 private:
  void AddLines(std::string_view words, const std::string& before, Ink ink) {
    for (const std::string& line : Wrapped(words, style_.width - DisplayWidth(before))) {
      absl::StrAppend(&text_, before, Painted(line, ink, style_), "\n");
    }
  }

  // A long text goes below its name.
  void AddHead(const v1::WhyStep& step, const std::string& first, const std::string& below) {
    const std::string_view more = step.repeated_above() ? "  (above)" : step.deeper() ? "  ..." : "";
    const std::string plain = HeadOf(step, TextStyle{.width = style_.width});
    const bool fits = step.text().empty() || DisplayWidth(first) + DisplayWidth(plain) <= style_.width;
    absl::StrAppend(&text_, first, fits ? HeadOf(step, style_) : NameOf(step, style_) + " =",
                    Painted(more, Ink::kFaint, style_), "\n");
    if (!fits) AddLines(Visible(step.text()), below, Ink::kPlain);
  }

  // On the line of the head where there is room, else below.
  void AddWritten(const v1::WhyStep& step, const std::string& first, const std::string& below) {
    const std::string head = HeadOf(step, style_), remarks = RemarksOf(step);
    const std::string plain = absl::StrCat(Visible(step.path()), " = ", Visible(step.text()));
    if (DisplayWidth(first) + DisplayWidth(plain) + 2 + DisplayWidth(remarks) <= style_.width) {
      absl::StrAppend(&text_, first, head, "  ", Painted(remarks, Ink::kFaint, style_), "\n");
    } else {
      absl::StrAppend(&text_, first, head, "\n");
      AddLines(remarks, below, Ink::kFaint);
    }
    if (!step.formula().empty()) AddLines(Visible(step.formula()), below, Ink::kFaint);
  }

  void AddNotes(const v1::WhyStep& step, const std::string& below) {
    if (!step.measure().empty())
      AddLines(absl::StrCat("to settle it: ", Visible(step.measure())), below, Ink::kCannotTell);
    // Items of a list are worked out alike.
    if (step.formula().empty() || !told_.insert(absl::StrCat(step.formula(), step.source())).second) return;
    AddLines(step.formula(), below, Ink::kPlain);
    AddLines(absl::StrCat("[", step.source(), "]"), below, Ink::kFaint);
  }

  const TextStyle& style_;
  std::string text_;
  std::set<std::string> told_;  // formulas
};

std::string ShareLine(const v1::WhyShare& share, const TextStyle& style) {
  std::string name = Visible(share.at().empty() ? "not written" : share.at());
  if (!share.aspect().empty()) absl::StrAppend(&name, ", ", Visible(share.aspect()));
  std::string line = absl::StrCat("  ", PaddedLeft(Percent(share.of_variance()), 5), "  ", name);
  std::string remarks = share.source();
  if (share.line() > 0) absl::StrAppend(&remarks, ", line ", share.line());
  if (share.aspect().empty() && !share.text().empty()) absl::StrAppend(&line, " = ", Visible(share.text()));
  if (DisplayWidth(line) + 2 + DisplayWidth(remarks) > style.width) absl::StrAppend(&line, "\n        ");
  return absl::StrCat(line, "  ", Painted(remarks, Ink::kFaint, style), "\n");
}

std::string SharesText(const v1::WhyStep& step, const TextStyle& style) {
  if (step.shares_size() == 0 || !step.has_plus_minus()) return "";
  const std::string heading = absl::StrCat("Where ", ReadablePlusMinus(step.plus_minus(), step.unit()),
                                           " comes from, by share of the variance");
  std::string text = absl::StrCat("\n", Painted(heading, Ink::kStrong, style), "\n");
  int shown = 0;
  double rest = 0;
  for (const v1::WhyShare& share : step.shares()) {
    if (shown < kMostShares && (share.of_variance() >= kSmallShare || shown == 0)) {
      text += ShareLine(share, style);
      ++shown;
    } else {
      rest += share.of_variance();
    }
  }
  const int more = step.shares_size() - shown;
  if (more > 0) absl::StrAppend(&text, "  ", PaddedLeft(Percent(rest), 5), "  ", more, " more\n");
  return text;
}

bool AnyDeeper(const v1::WhyStep& step) {
  if (step.deeper()) return true;
  for (const v1::WhyStep& input : step.inputs()) {
    if (AnyDeeper(input)) return true;
  }
  return false;
}

}  // namespace

std::string WhyText(const v1::WhyReport& why, const TextStyle& style) {
  if (why.figures_size() == 1 && !why.figures(0).formula().empty()) {
    const v1::WhyStep& step = why.figures(0);
    TreeText tree(style);
    tree.Add(step, "", "");
    std::string text = tree.Take() + SharesText(step, style);
    if (AnyDeeper(step))
      absl::StrAppend(&text, "\n", Painted("'...' stands for more: --depth N opens it.", Ink::kFaint, style), "\n");
    return text;
  }
  std::string text;
  for (const v1::WhyStep& step : why.figures()) absl::StrAppend(&text, HeadOf(step, style), "\n");
  return text;
}

}  // namespace withy
