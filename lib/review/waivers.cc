#include "waivers.h"

#include <algorithm>
#include <cstddef>
#include <limits>
#include <string>
#include <tuple>
#include <unordered_map>
#include <utility>

#include "absl/strings/str_cat.h"
#include "codes.h"

namespace withy {
namespace {

// More than any design has; each is compared with each finding of its code.
constexpr int kMostWaivers = 1000;

struct UsableWaiver {
  FieldPath at;      // what it covers; empty = everywhere
  FieldPath itself;  // where it stands
};
using WaiversByCode = std::unordered_map<std::string, std::vector<UsableWaiver>>;

FieldPath PathOfWaiver(int i) { return FieldPath().Field("waivers").Item("", i); }

int Considered(const v1::Design& design) { return std::min(design.waivers_size(), kMostWaivers); }

WaiversByCode UsableWaivers(const v1::Design& design) {
  WaiversByCode by_code;
  for (int i = 0; i < Considered(design); ++i) {
    const v1::Waiver& waiver = design.waivers(i);
    const auto at = FieldPath::Parse(waiver.at());
    if (waiver.reason().empty() || !at.ok()) continue;
    by_code[waiver.code()].push_back({*at, PathOfWaiver(i)});
  }
  return by_code;
}

const UsableWaiver* WaiverFor(const WaiversByCode& by_code, const Finding& finding) {
  const auto found = by_code.find(finding.code);
  if (found == by_code.end()) return nullptr;
  for (const UsableWaiver& waiver : found->second) {
    if (finding.at.IsWithin(waiver.at)) return &waiver;
  }
  return nullptr;
}

// A verdict without what could not be judged would be a guess, and what was not understood of the file may be anything.
// A plugin's findings are its own judgement of a design that was understood.
bool IsWaivable(std::string_view code, Severity severity) {
  if (code == kNotWaivable.name || severity == Severity::kCannotTell) return false;
  return severity != Severity::kError || !code.starts_with("document/");
}

bool NeverGivesWhatIsWaivable(const Code* code) {
  return code != nullptr && !IsWaivable(code->name, code->severity);
}

// What a name before the slash says of who gives the code: codes of plugins are known only when they run.
bool IsOwnConcern(std::string_view code) {
  const std::string_view concern = code.substr(0, code.find('/'));
  for (const Code& own : Catalogue()) {
    if (own.name.substr(0, own.name.find('/')) == concern) return true;
  }
  return false;
}

Finding UnknownCode(const FieldPath& at, const std::string& code, const std::string& nearest) {
  return MakeFinding(kUnknownWaiverCode, at.Field("code"),
                     absl::StrCat("there is no code ", code,
                                  nearest.empty() ? std::string() : absl::StrCat("; did you mean ", nearest, "?")));
}

// What stands although it is of the waiver's code and place.
bool AnyStands(const v1::Waiver& waiver, const FieldPath& place, const std::vector<Finding>& standing) {
  return std::any_of(standing.begin(), standing.end(), [&](const Finding& finding) {
    return finding.code == waiver.code() && finding.at.IsWithin(place);
  });
}

// What is wrong with one waiver, if anything.
std::optional<Finding> Judge(const v1::Waiver& waiver, const FieldPath& at, bool used,
                             const std::vector<Finding>& standing) {
  std::string nearest;
  if (waiver.reason().empty()) return std::nullopt;  // document/waiver-without-reason speaks of it
  const auto place = FieldPath::Parse(waiver.at());
  if (!place.ok()) {
    return MakeFinding(kWaiverPath, at.Field("at"), absl::StrCat("'", waiver.at(), "' is not a field path"));
  }
  if (used) return std::nullopt;
  const Code* code = FindCode(waiver.code(), &nearest);
  if (code == nullptr && IsOwnConcern(waiver.code())) return UnknownCode(at, waiver.code(), nearest);
  if (NeverGivesWhatIsWaivable(code) || AnyStands(waiver, *place, standing)) {
    return MakeFinding(kNotWaivable, at, absl::StrCat(waiver.code(), " cannot be waived: what it says stands"));
  }
  return MakeFinding(kUnusedWaiver, at, absl::StrCat("nothing that is found is waived by this waiver of ", waiver.code()));
}

std::vector<Finding> JudgeWaivers(const v1::Design& design, const Review& review) {
  std::vector<bool> used(Considered(design), false);
  for (const Finding& finding : review.waived) used[finding.related.front().steps().back().index] = true;
  std::vector<Finding> findings;
  for (int i = 0; i < Considered(design); ++i) {
    auto finding = Judge(design.waivers(i), PathOfWaiver(i), used[i], review.findings);
    if (finding) findings.push_back(std::move(*finding));
  }
  if (design.waivers_size() > kMostWaivers) {
    findings.push_back(MakeFinding(kUnusedWaiver, PathOfWaiver(kMostWaivers),
                                   absl::StrCat("only the first ", kMostWaivers, " waivers count"),
                                   {{"waivers", static_cast<double>(design.waivers_size())}}));
  }
  return findings;
}

}  // namespace

void SortByWaivers(const Document& document, std::vector<Finding> found, Review& review) {
  const WaiversByCode by_code = UsableWaivers(document.design);
  for (Finding& finding : found) {
    const UsableWaiver* waiver = IsWaivable(finding.code, finding.severity) ? WaiverFor(by_code, finding) : nullptr;
    if (waiver != nullptr) {
      finding.related.insert(finding.related.begin(), waiver->itself);
      review.waived.push_back(std::move(finding));
    } else {
      review.findings.push_back(std::move(finding));
    }
  }
}

void SortByPlace(const Document& document, std::vector<Finding>& findings) {
  std::unordered_map<std::string, std::size_t> rank;
  for (const Code& code : Catalogue()) rank.emplace(code.name, rank.size());
  using Key = std::tuple<std::size_t, std::size_t, std::size_t>;  // offset, rank in the catalogue, order found
  std::vector<std::pair<Key, Finding>> keyed;
  for (Finding& finding : findings) {
    if (!finding.position && !finding.at.empty()) {  // kept, so that nobody has to look it up again
      finding.position = document.positions.Find(finding.at, document.design, document.bytes, document.form == Form::kBinary);
    }
    const auto code = rank.find(finding.code);
    const Key key = {finding.position ? finding.position->offset : std::numeric_limits<std::size_t>::max(),
                     code == rank.end() ? rank.size() : code->second, keyed.size()};
    keyed.emplace_back(key, std::move(finding));
  }
  std::sort(keyed.begin(), keyed.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  for (std::size_t i = 0; i < keyed.size(); ++i) findings[i] = std::move(keyed[i].second);
}

void ApplyWaivers(const Document& document, std::vector<Finding> more, Review& review) {
  SortByWaivers(document, std::move(more), review);
  SortByWaivers(document, JudgeWaivers(document.design, review), review);
  SortByPlace(document, review.findings);
}

}  // namespace withy
