#include "bench_log.h"

#include <algorithm>
#include <set>
#include <unordered_map>
#include <unordered_set>
#include <utility>

#include "read_quantity.h"

namespace withy {
namespace {

FieldPath EntryPath(const v1::Design& design, int i) {
  return FieldPath().Field("log").Item(design.log(i).id(), i);
}

// Where each id stands first.
std::unordered_map<std::string, int> PlacesOfIds(const v1::Design& design) {
  std::unordered_map<std::string, int> places;
  for (int i = 0; i < design.log_size(); ++i) {
    if (!design.log(i).id().empty()) places.emplace(design.log(i).id(), i);
  }
  return places;
}

// From the last entry to the first: a correction that still counts cancels an earlier entry, which may itself be one.
// One that names itself or a later entry cancels nothing, so that none go in a circle, and is put into `misdirected`.
std::vector<bool> Counting(const v1::Design& design, std::vector<FieldPath>& misdirected) {
  std::vector<bool> counts(design.log_size(), true);
  std::unordered_set<std::string> cancelled;
  const std::unordered_map<std::string, int> places = PlacesOfIds(design);
  for (int i = design.log_size() - 1; i >= 0; --i) {
    const v1::Entry& entry = design.log(i);
    counts[i] = entry.id().empty() || !cancelled.contains(entry.id());
    if (!entry.has_correction()) continue;
    const auto named = places.find(entry.correction().entry());
    if (named == places.end()) continue;  // document/unknown-id speaks of it
    if (named->second >= i) {
      misdirected.push_back(EntryPath(design, i).Field("correction").Field("entry"));
    } else if (counts[i]) {
      cancelled.insert(named->first);
    }
  }
  return counts;
}

// The entries that count, in the order in which they count: one that stands instead of another in the place of that one,
// which no longer counts. One that names an entry which counts, or a later one, is put into `misdirected`.
std::vector<std::pair<int, int>> InOrder(const v1::Design& design, std::vector<FieldPath>& misdirected) {
  const std::vector<bool> counts = Counting(design, misdirected);
  const std::unordered_map<std::string, int> places = PlacesOfIds(design);
  std::vector<int> order(design.log_size());
  std::vector<std::pair<int, int>> ordered;  // place in the order, place in the log
  std::set<int> taken;
  for (int i = 0; i < design.log_size(); ++i) {
    order[i] = i;
    const auto named = places.find(design.log(i).instead_of());
    if (named != places.end()) {  // else document/unknown-id speaks of it
      const int place = named->second;
      const bool free = place < i && !counts[place] && (!counts[i] || taken.insert(order[place]).second);
      if (free) order[i] = order[place];
      if (!free && counts[i]) misdirected.push_back(EntryPath(design, i).Field("instead_of"));
    }
    if (!counts[i]) continue;
    ordered.emplace_back(order[i], i);
  }
  std::sort(ordered.begin(), ordered.end());
  return ordered;
}

// Entries that hold something the reader had no name for.
std::set<int> EntriesWithUnknownFields(const Document& document) {
  std::set<int> entries;
  for (const UnknownField& unknown : document.unknown) {
    const auto& steps = unknown.at.steps();
    if (steps.size() >= 2 && steps[0].field == "log") entries.insert(steps[1].index);
  }
  return entries;
}

std::unordered_set<std::string> SectionIds(const v1::Design& design) {
  std::unordered_set<std::string> ids;
  for (const v1::Section& section : design.blank().sections()) {
    if (!section.id().empty()) ids.insert(section.id());
  }
  return ids;
}

bool IsUsableCut(const std::unordered_set<std::string>& sections, const v1::Cut& cut) {
  const auto amount = LengthOf(cut.amount());
  return amount && amount->meters() >= 0 && sections.contains(cut.section()) && v1::End::Value_IsValid(cut.at_end());
}

}  // namespace

BenchLog ReadLog(const Document& document) {
  const v1::Design& design = document.design;
  const std::set<int> strange = EntriesWithUnknownFields(document);
  const std::unordered_set<std::string> sections = SectionIds(design);
  BenchLog log;
  for (const auto& [order, i] : InOrder(design, log.misdirected_corrections)) {
    const v1::Entry& entry = design.log(i);
    const FieldPath at = EntryPath(design, i);
    const bool content = entry.what_case() != v1::Entry::WHAT_NOT_SET;
    const bool cut_unusable = entry.has_cut() && !IsUsableCut(sections, entry.cut());
    log.entries.push_back({order, &entry, at});
    if (!content || cut_unusable || strange.contains(i)) log.not_understood.push_back(at);
    switch (entry.what_case()) {
      case v1::Entry::kCut:
        if (!cut_unusable) log.cuts.push_back({order, &entry.cut(), at.Field("cut")});
        break;
      case v1::Entry::kFit: log.fits.push_back({order, &entry.fit(), at.Field("fit")}); break;
      case v1::Entry::kWeighed: log.weighings.push_back({order, &entry.weighed(), at.Field("weighed")}); break;
      case v1::Entry::kCalipered: log.calipered.push_back({order, &entry.calipered(), at.Field("calipered")}); break;
      case v1::Entry::kPlaced: log.placed.push_back({order, &entry.placed(), at.Field("placed")}); break;
      case v1::Entry::kBreakage: log.breakages.push_back({order, &entry.breakage(), at.Field("breakage")}); break;
      case v1::Entry::kDone:
        if (entry.done().step() == "repaired") log.repairs.push_back({order, &entry.done(), at.Field("done")});
        if (entry.done().step() == "reamed") log.reamings.push_back({order, &entry.done(), at.Field("done")});
        break;
      case v1::Entry::kGlued: log.glued.push_back({order, &entry.glued(), at.Field("glued")}); break;
      default: break;
    }
  }
  return log;
}

}  // namespace withy
