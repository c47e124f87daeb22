// What the log has closed, entry by entry. Nothing here looks at a plan, so that no plan can alter it; the one
// exception is a potting that does not say how many, which means as many as the part says.
#include <cstdint>
#include <string>
#include <unordered_map>
#include <unordered_set>
#include <utility>

#include "absl/strings/str_cat.h"
#include "codes.h"
#include "read_quantity.h"
#include "resolver.h"

namespace withy {
namespace {

using Kind = Closed::Kind;

template <typename List>
void AddIds(const List& list, std::unordered_set<std::string>& ids) {
  for (const auto& thing : list) ids.insert(thing.id());
}

std::unordered_set<std::string> IdsOf(const v1::Design& design) {
  std::unordered_set<std::string> ids;
  AddIds(design.blank().sections(), ids);
  AddIds(design.blank().joints(), ids);
  AddIds(design.handle().parts(), ids);
  for (const v1::Part& part : design.handle().parts()) AddIds(part.arbors(), ids);
  AddIds(design.guides(), ids);
  AddIds(design.wraps(), ids);
  AddIds(design.inscriptions(), ids);
  ids.insert(design.tip_top().id());
  ids.erase("");
  return ids;
}

// What comes off again only after an entry has put it on: what is glued by plan, and every wrap.
std::unordered_set<std::string> HeldByEntries(const v1::Design& design) {
  std::unordered_set<std::string> ids;
  for (const v1::Part& part : design.handle().parts()) {
    if (!part.bond().empty() && !part.loose() && (part.held_by().empty() || part.held_by() == "bond"))
      ids.insert(part.id());
  }
  if (!design.tip_top().bond().empty()) ids.insert(design.tip_top().id());
  AddIds(design.wraps(), ids);
  ids.erase("");
  return ids;
}

std::string ButtSectionId(const v1::Design& design) {
  for (const v1::Section& section : design.blank().sections()) {
    if (section.spare_for().empty()) return section.id();
  }
  return "";
}

class Closing {
 public:
  explicit Closing(Resolver& r)
      : r_(r), ids_(IdsOf(r.design)), held_(HeldByEntries(r.design)), butt_(ButtSectionId(r.design)) {
    const int host = r.rod.handle.Host();
    if (host >= 0) host_ = r.rod.handle.parts[host].id;
  }

  void Run() {
    for (const auto& logged : r_.log.entries) Take(logged);
    std::erase_if(closed_, [](const Closed& closed) { return closed.id.empty(); });
    r_.rod.closed = std::move(closed_);
  }

 private:
  void Take(const Logged<v1::Entry>& logged) {
    const v1::Entry& entry = *logged.entry;
    switch (entry.what_case()) {
      case v1::Entry::kCut:
        TakeCut(entry.cut(), logged.at.Field("cut"));
        break;
      case v1::Entry::kFit:
        TakeFit(entry.fit(), logged.at.Field("fit"));
        break;
      case v1::Entry::kGlued:
        TakeGlued(entry.glued(), logged.order, logged.at.Field("glued"));
        break;
      case v1::Entry::kPotted:
        TakePotted(entry.potted(), logged.order, logged.at.Field("potted"));
        break;
      case v1::Entry::kDone:
        TakeDone(entry.done(), logged.at.Field("done"));
        break;
      case v1::Entry::kCoated:
        for (const std::string& id : entry.coated().what()) {
          if (Closed* coated = Close(Kind::kCoated, id, logged.at.Field("coated"))) coated->amount += 1;
        }
        break;
      case v1::Entry::kRemoved:
        for (const std::string& id : entry.removed().what()) Remove(id, logged.order, logged.at.Field("removed"));
        break;
      case v1::Entry::kPlaced:
        was_on_.insert(entry.placed().what());
        break;
      case v1::Entry::kBreakage:
        Open(entry.breakage().what(), logged.order);
        break;
      default:
        break;
    }
  }

  // Null for a thing that the design does not have.
  Closed* Close(Kind kind, const std::string& id, FieldPath at, End end = End::kUnknown) {
    if (!ids_.contains(id)) return nullptr;
    if (kind != Kind::kCut) was_on_.insert(id);
    const std::string key = absl::StrCat(static_cast<int>(kind), static_cast<int>(end), id);
    const auto [found, added] = index_.emplace(key, closed_.size());
    if (added) {
      Closed& fresh = closed_.emplace_back();
      fresh.kind = kind;
      fresh.id = id;
      fresh.end = end;
      if (kind != Kind::kCut) of_thing_[id].push_back(key);
    }
    Closed& closed = closed_[found->second];
    closed.at = std::move(at);
    return &closed;
  }

  // A cut stays: what is off is off.
  void Open(const std::string& id, int order) {
    if (id == host_) r_.host_glued.reset();
    all_wrapped_ = false;
    const auto keys = of_thing_.find(id);
    if (keys == of_thing_.end()) return;
    for (const std::string& key : keys->second) {
      const auto found = index_.find(key);
      if (closed_[found->second].kind == Kind::kPotted) r_.potted.push_back({order, id, 0});
      closed_[found->second].id.clear();
      index_.erase(found);
    }
    of_thing_.erase(keys);
  }

  void TakeCut(const v1::Cut& cut, const FieldPath& at) {
    const auto amount = LengthOf(cut.amount());
    if (!amount || amount->meters() < 0 || !v1::End::Value_IsValid(cut.at_end())) return;
    const End end = cut.at_end() == v1::End::TIP ? End::kTip : End::kButt;
    if (Closed* closed = Close(Kind::kCut, cut.section(), at, end)) closed->amount += amount->meters();
    if (end == End::kButt && cut.section() == butt_) SayAfterGlueUp(at, "this cut of the butt");
  }

  void TakeFit(const v1::Fit& fit, const FieldPath& at) {
    was_on_.insert(fit.part());
    if (host_.empty() || fit.part() != host_) return;
    tried_ = true;
    SayAfterGlueUp(at, "this dry fit");
  }

  void TakeGlued(const v1::Glued& glued, int order, const FieldPath& at) {
    for (const std::string& id : glued.what()) {
      if (!Close(Kind::kGlued, id, at) || id != host_ || r_.host_glued) continue;
      r_.host_glued = order;
      glued_at_ = at;
      if (!tried_) {
        r_.rod.findings.push_back(
            MakeFinding(kGluedUntried, at, absl::StrCat(id, " is glued on, and no dry fit of it stands before")));
      }
    }
  }

  // The latest entry says how many are in it, also where they are fewer: whoever dug some out writes what is left.
  void TakePotted(const v1::Potted& potted, int order, const FieldPath& at) {
    Closed* closed = Close(Kind::kPotted, potted.part(), at);
    if (closed == nullptr) return;
    const Part* part = r_.rod.FindPart(potted.part());
    const std::uint32_t planned = part && part->weights ? part->weights->count.value_or(0) : 0;
    const std::uint32_t count = potted.has_count() ? potted.count() : planned;
    closed->amount = count;
    r_.potted.push_back({order, potted.part(), count});
  }

  void TakeDone(const v1::Done& done, const FieldPath& at) {
    const bool wrapped = done.step() == "wrapped";
    if (!wrapped && done.step() != "reamed") return;
    for (const std::string& id : done.what()) Close(wrapped ? Kind::kWrapped : Kind::kReamed, id, at);
    if (wrapped && done.what().empty() && !std::exchange(all_wrapped_, true)) {
      for (const v1::Wrap& wrap : r_.design.wraps()) Close(Kind::kWrapped, wrap.id(), at);
    }
  }

  void Remove(const std::string& id, int order, const FieldPath& at) {
    if (was_on_.erase(id) == 0 && held_.contains(id)) {
      r_.rod.findings.push_back(
          MakeFinding(kRemovedNotOn, at, absl::StrCat(id, " came off, and no entry before says that it was on")));
    }
    Open(id, order);
  }

  void SayAfterGlueUp(const FieldPath& at, const char* what) {
    if (!r_.host_glued) return;
    Finding finding = MakeFinding(kAfterGlueUp, at,
                                  absl::StrCat(what, " stands after the glue-up of ", host_,
                                               ", and no entry between says that it came off again"));
    finding.related.push_back(glued_at_);
    r_.rod.findings.push_back(std::move(finding));
  }

  Resolver& r_;
  const std::unordered_set<std::string> ids_, held_;
  const std::string butt_;
  std::string host_;  // empty = none, or it has no id and no entry can name it
  bool tried_ = false;
  bool all_wrapped_ = false;  // and none opened since
  FieldPath glued_at_;
  std::vector<Closed> closed_;                                          // an empty id = open again
  std::unordered_map<std::string, std::size_t> index_;                  // kind, end and id: in closed_
  std::unordered_map<std::string, std::vector<std::string>> of_thing_;  // id: keys in index_
  std::unordered_set<std::string> was_on_;
};

}  // namespace

void ReadClosed(Resolver& r) {
  Closing(r).Run();
}

const Closed* Rod::FindClosed(Closed::Kind kind, std::string_view id, End end) const {
  for (const Closed& thing : closed) {
    if (thing.kind == kind && thing.id == id && thing.end == end) return &thing;
  }
  return nullptr;
}

}  // namespace withy
