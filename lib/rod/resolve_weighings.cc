// Masses from the log: of single things they replace what the part says, of several they fix the sum.
#include <cstdint>
#include <unordered_map>
#include <utility>

#include "measurements.h"
#include "read_quantity.h"
#include "resolver.h"

namespace withy {
namespace {

// Where the mass of a single thing is kept.
struct Targets {
  std::unordered_map<std::string, Maybe<Mass>*> things;
  std::unordered_map<std::string, Section*> sections;
};

Targets CollectTargets(Rod& rod) {
  Targets targets;
  for (Part& part : rod.handle.parts) targets.things.emplace(part.id, &part.mass);
  for (Guide& guide : rod.guides) targets.things.emplace(guide.id, &guide.mass);
  if (rod.tip_top) targets.things.emplace(rod.tip_top->id, &rod.tip_top->mass);
  for (Section& section : rod.blank.sections) targets.sections.emplace(section.id, &section);
  targets.things.erase("");
  targets.sections.erase("");
  return targets;
}

Known<Mass> Measured(Known<Mass> mass) {
  if (mass.source == Source::kPlan) mass.source = Source::kMeasured;
  return mass;
}

void WeighSection(Resolver& r, const Known<Mass>& mass, const Maybe<Length>& balance, const Weighing::Off& off,
                  Section& section) {
  const auto length = Positive(section.length);
  if (!length) return;
  SectionMass weighed{mass, Length::Meters(off.butt_m), *length - Length::Meters(off.tip_m), std::nullopt};
  if (!(weighed.from < weighed.to)) return;
  if (section.mass && section.mass->from == weighed.from && section.mass->to == weighed.to) {
    CompareMasses(r, section.mass->mass, mass);
    weighed.balance = section.mass->balance;
  } else if (section.mass) {
    section.mass_before = section.mass;
    if (section.mass->balance) section.balanced_before = section.mass;
  }
  if (balance) {
    weighed.balance = balance;
    weighed.balance->value += weighed.from;
    section.balanced_before.reset();
  }
  section.mass = std::move(weighed);
}

void TakeMassesAsSupplied(Resolver& r) {
  Blank& blank = r.rod.blank;
  for (Section& section : blank.sections) {
    const v1::Section& from = r.design.blank().sections(section.index);
    const auto mass = ReadMass(from.mass(), section.at, "mass");
    const auto length = Positive(section.length);
    if (!mass || !length) continue;
    section.mass = SectionMass{*mass, Length(), *length, ReadLength(from.balance_from_butt(), section.at, "balance_from_butt")};
  }
  if (!blank.mass || blank.assembled.size() != blank.sections.size()) return;
  if (blank.sections.size() == 1) {
    Section& only = blank.sections[0];
    const auto length = Positive(only.length);
    if (!only.mass && length) {
      only.mass = SectionMass{*blank.mass, Length(), *length,
                              ReadLength(r.design.blank().sections(0).balance_from_butt(), only.at, "balance_from_butt")};
    }
    return;
  }
  Weighing all;
  for (const Section& section : blank.sections) all.what.push_back(section.id);
  all.off.resize(all.what.size());
  all.mass = *blank.mass;
  all.at = blank.mass->at;
  r.rod.weighings.push_back(std::move(all));
}

// More comes off a section of the rod than was off it by then.
bool CutSince(const Rod& rod, const std::unordered_map<std::string, Weighing::Off>& off) {
  constexpr double kSameM = 1e-9;
  for (const int i : rod.blank.assembled) {
    const Section& section = rod.blank.sections[i];
    const auto found = off.find(section.id);
    const Weighing::Off then = found == off.end() ? Weighing::Off{} : found->second;
    if (section.cut_butt.amount.meters() > then.butt_m + kSameM) return true;
    if (section.cut_tip.amount.meters() > then.tip_m + kSameM) return true;
  }
  return false;
}

// What the log had done by the entry that is looked at.
struct ByThen {
  std::unordered_map<std::string, Weighing::Off> off;    // by section
  std::unordered_map<std::string, std::uint32_t> potted;  // counterweights, by part

  Weighing::Off OffOf(const std::string& id) const {
    const auto found = off.find(id);
    return found == off.end() ? Weighing::Off{} : found->second;
  }
};

void TakeWhole(Resolver& r, const Logged<v1::Weighed>& logged, const Maybe<Mass>& mass, const Maybe<Length>& balance,
               const ByThen& by_then) {
  const v1::Weighed& weighed = *logged.entry;
  if (!mass && !balance) return;
  WholeWeighing whole;
  if (mass) whole.mass = Measured(*mass);
  whole.balance = balance;
  whole.with_reel = weighed.with_reel();
  whole.outdated = CutSince(r.rod, by_then.off);
  for (const auto& [part, count] : by_then.potted) whole.potted += count;
  whole.weights = weighed.has_weights() ? weighed.weights() : whole.potted;
  whole.missing.assign(weighed.missing().begin(), weighed.missing().end());
  whole.at = logged.at;
  r.rod.wholes.push_back(std::move(whole));
}

void TakeSeveral(Resolver& r, const Logged<v1::Weighed>& logged, const Known<Mass>& mass, const Maybe<Length>& balance,
                 const ByThen& by_then) {
  Weighing several;
  several.mass = Measured(mass);
  several.balance = balance;
  several.with_reel = logged.entry->with_reel();
  several.at = logged.at;
  for (const std::string& id : logged.entry->what()) {
    several.what.push_back(id);
    several.off.push_back(by_then.OffOf(id));
  }
  r.rod.weighings.push_back(std::move(several));
}

void TakeOne(Resolver& r, const Targets& targets, const std::string& id, const Known<Mass>& mass,
             const Maybe<Length>& balance, const ByThen& by_then) {
  if (const auto section = targets.sections.find(id); section != targets.sections.end()) {
    WeighSection(r, Measured(mass), balance, by_then.OffOf(id), *section->second);
  } else if (const auto thing = targets.things.find(id); thing != targets.things.end()) {
    if (*thing->second) CompareMasses(r, **thing->second, Measured(mass));
    *thing->second = Measured(mass);
  }
}

void TakeWeighing(Resolver& r, const Targets& targets, const Logged<v1::Weighed>& logged, const ByThen& by_then) {
  const v1::Weighed& weighed = *logged.entry;
  auto mass = ReadMass(weighed.mass(), logged.at, "mass");
  if (mass && !(mass->value.kilograms() >= 0)) mass.reset();
  const auto balance = ReadLength(weighed.balance_from_butt(), logged.at, "balance_from_butt", Source::kMeasured);
  if (weighed.what_size() == 0) {
    TakeWhole(r, logged, mass, balance, by_then);
  } else if (mass && weighed.what_size() == 1 && !weighed.with_reel()) {
    TakeOne(r, targets, weighed.what(0), *mass, balance, by_then);
  } else if (mass) {
    TakeSeveral(r, logged, *mass, balance, by_then);
  }
}

}  // namespace

void ResolveWeighings(Resolver& r) {
  TakeMassesAsSupplied(r);
  const Targets targets = CollectTargets(r.rod);
  ByThen by_then;
  auto cut = r.log.cuts.begin();
  auto potted = r.potted.begin();
  for (const auto& weighed : r.log.weighings) {
    for (; cut != r.log.cuts.end() && cut->order < weighed.order; ++cut) {
      const double amount = LengthOf(cut->entry->amount()).value_or(Length()).meters();
      auto& ends = by_then.off[cut->entry->section()];
      (cut->entry->at_end() == v1::End::TIP ? ends.tip_m : ends.butt_m) += amount;
    }
    for (; potted != r.potted.end() && potted->order < weighed.order; ++potted) {
      by_then.potted[potted->part] = potted->count;
    }
    TakeWeighing(r, targets, weighed, by_then);
  }
}

}  // namespace withy
