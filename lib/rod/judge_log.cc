#include "judge_log.h"

#include <string>
#include <unordered_map>

#include "absl/strings/str_cat.h"
#include "codes.h"
#include "log_codes.h"
#include "read_quantity.h"

namespace withy {
namespace {

// What is missing in an entry that has a kind and nothing to say; empty where it says something.
std::string Lacks(const v1::Entry& entry) {
  switch (entry.what_case()) {
    case v1::Entry::kCut: {
      const auto amount = LengthOf(entry.cut().amount());
      return amount && amount->meters() == 0 ? "a cut of nothing" : "";
    }
    case v1::Entry::kFit:
      return entry.fit().has_overall() || entry.fit().has_stand_out() ? "" : "a dry fit without a reading";
    case v1::Entry::kWeighed:
      return entry.weighed().has_mass() || entry.weighed().has_balance_from_butt() ? ""
                                                                                   : "a weighing without a reading";
    case v1::Entry::kCalipered:
      return entry.calipered().taper().stations_size() > 0 ? "" : "diameters were read, and none is here";
    case v1::Entry::kGlued:
      return entry.glued().what_size() > 0 ? "" : "a glue-up of nothing";
    case v1::Entry::kCoated:
      return entry.coated().what_size() > 0 ? "" : "a coat on nothing";
    case v1::Entry::kPlaced:
      return entry.placed().has_place() ? "" : "something was moved, and no place is here";
    case v1::Entry::kRemoved:
      return entry.removed().what_size() > 0 ? "" : "a removal of nothing";
    default:
      return "";
  }
}

const char* FieldOf(const v1::Entry& entry) {
  const auto* field = v1::Entry::descriptor()->FindFieldByNumber(entry.what_case());
  return field ? field->name().c_str() : "";
}

// The last entry that glued, or broke, each thing.
using Since = std::unordered_map<std::string, FieldPath>;

void Say(Resolver& r, const Code& code, const FieldPath& at, const std::string& message, const FieldPath& before) {
  Finding finding = MakeFinding(code, at, message);
  finding.related.push_back(before);
  r.rod.findings.push_back(std::move(finding));
}

void TakeGlued(Resolver& r, const v1::Glued& entry, const FieldPath& at, Since& glued, const Since& broken) {
  for (const std::string& id : entry.what()) {
    if (const auto before = glued.find(id); before != glued.end()) {
      Say(r, kGluedTwice, at, absl::StrCat(id, " is glued on, and it was before; nothing says that it came off between"),
          before->second);
    } else if (const auto broke = broken.find(id); broke != broken.end()) {
      Say(r, kGluedBroken, at, absl::StrCat(id, " is glued on, and it broke before; nothing says that it was repaired"),
          broke->second);
    }
    glued.insert_or_assign(id, at);
  }
}

}  // namespace

void JudgeLog(Resolver& r) {
  Since glued, broken;
  for (const auto& [order, entry, at] : r.log.entries) {
    if (const std::string lacks = Lacks(*entry); !lacks.empty()) {
      r.rod.findings.push_back(MakeFinding(kEntryEmpty, at.Field(FieldOf(*entry)), lacks));
    }
    if (entry->has_glued()) TakeGlued(r, entry->glued(), at.Field("glued"), glued, broken);
    for (const std::string& id : entry->removed().what()) {
      glued.erase(id);
      broken.erase(id);
    }
    if (entry->has_breakage()) {
      glued.erase(entry->breakage().what());
      broken.insert_or_assign(entry->breakage().what(), at.Field("breakage"));
    }
    if (entry->done().step() != "repaired") continue;
    for (const std::string& id : entry->done().what()) broken.erase(id);
  }
}

std::vector<Logged<v1::Breakage>> UnrepairedBreakages(const Resolver& r) {
  std::unordered_map<std::string, int> repaired;
  for (const auto& done : r.log.repairs) {
    for (const std::string& id : done.entry->what()) repaired[id] = done.order;
  }
  std::vector<Logged<v1::Breakage>> unrepaired;
  for (const auto& breakage : r.log.breakages) {
    const std::string& id = breakage.entry->what();
    const auto repair = repaired.find(id);
    if (r.rod.FindSection(id) && (repair == repaired.end() || repair->second < breakage.order)) {
      unrepaired.push_back(breakage);
    }
  }
  return unrepaired;
}

void JudgeBreakages(Resolver& r) {
  for (const auto& breakage : UnrepairedBreakages(r)) {
    r.rod.findings.push_back(MakeFinding(kBroken, breakage.at, absl::StrCat("section ", breakage.entry->what(), " broke")));
  }
}

}  // namespace withy
