#include "withy/rod/resolve.h"

#include <utility>

#include "absl/strings/str_cat.h"
#include "codes.h"
#include "judge_log.h"
#include "judge_parts.h"
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
    const bool instead = at.steps().back().field == "instead_of";
    r.rod.findings.push_back(MakeFinding(
        kCorrectionNotOfEarlier, at,
        instead ? "the entry it names is not one that a correction made room for" : "the entry it names does not stand before it"));
  }
}

void ReportNoBlank(Resolver& r) {
  if (r.design.blank().sections_size() > 0) return;
  r.rod.findings.push_back(MakeFinding(kNoBlank, FieldPath().Field("blank"), "the design has no section of a blank"));
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
  ResolveStaticTests(r);
  ResolveBonds(r);
  ResolveHandle(r);
  JudgeParts(r);
  JudgeLog(r);
  ReadClosed(r);
  ResolveSections(r);
  ResolveBench(r);
  AssembleBlank(r);
  ResolveGuides(r);
  ResolveThreads(r);
  ResolveWraps(r);
  ResolveWeighings(r);
  JudgeBreakages(r);
  ResolvePlaces(r);
  JudgePoints(r);
  return rod;
}

}  // namespace withy
