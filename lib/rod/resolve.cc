#include "withy/rod/resolve.h"

#include <unordered_map>
#include <utility>

#include "absl/strings/str_cat.h"
#include "codes.h"
#include "resolver.h"

namespace withy {
namespace {

void ReportNotUnderstood(Resolver& r) {
  for (const FieldPath& at : r.log.not_understood) {
    r.rod.findings.push_back(MakeFinding(kEntryNotUnderstood, at, "this entry may be a cut: no length can be told"));
  }
  r.rod.not_understood = r.log.not_understood;
}

void ReportMisdirectedCorrections(Resolver& r) {
  for (const FieldPath& at : r.log.misdirected_corrections) {
    r.rod.findings.push_back(MakeFinding(kCorrectionNotOfEarlier, at, "the entry it names does not stand before it"));
  }
}

void ReportNoBlank(Resolver& r) {
  if (r.design.blank().sections_size() > 0) return;
  r.rod.findings.push_back(MakeFinding(kNoBlank, FieldPath().Field("blank"), "the design has no section of a blank"));
}

// A section that broke, unless a repair of it was logged later.
void ReportBreakages(Resolver& r) {
  std::unordered_map<std::string, int> repaired;
  for (const auto& done : r.log.repairs) {
    for (const std::string& id : done.entry->what()) repaired[id] = done.order;
  }
  for (const auto& breakage : r.log.breakages) {
    const std::string& id = breakage.entry->what();
    const auto repair = repaired.find(id);
    if (!r.rod.FindSection(id) || (repair != repaired.end() && repair->second > breakage.order)) continue;
    r.rod.findings.push_back(MakeFinding(kBroken, breakage.at, absl::StrCat("section ", id, " broke")));
  }
}

}  // namespace

bool WithinLimit(Resolver& r, const FieldPath& at, std::size_t count, int most, const char* what) {
  if (count <= static_cast<std::size_t>(most)) return true;
  r.rod.findings.push_back(
      MakeFinding(kTooManyThings, at, absl::StrCat(count, " ", what), {{"count", static_cast<double>(count)}}));
  return false;
}

Rod Resolve(const Document& document) {
  Rod rod;
  Resolver r{document.design, ReadLog(document), rod};
  ReportNotUnderstood(r);
  ReportMisdirectedCorrections(r);
  ReportNoBlank(r);
  ResolveOrder(r);
  ResolveLoadCases(r);
  ResolveBonds(r);
  ResolveHandle(r);
  ReadClosed(r);
  ResolveSections(r);
  ResolveBench(r);
  AssembleBlank(r);
  ResolveGuides(r);
  ResolveThreads(r);
  ResolveWraps(r);
  ResolveWeighings(r);
  ReportBreakages(r);
  ResolvePlaces(r);
  return rod;
}

}  // namespace withy
