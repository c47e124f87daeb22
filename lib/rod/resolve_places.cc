// Places along the rod. Every thing starts from at most one other thing (the part before it, the wrap it comes after, the
// tip of the rod), so the things form chains. Each chain is followed from its far end, without recursion; a chain that
// comes back to itself is a cycle, and a finding.
#include <algorithm>
#include <unordered_map>
#include <utility>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "codes.h"
#include "place_wraps.h"
#include "read_quantity.h"
#include "rest.h"
#include "resolver.h"

namespace withy {
namespace {

constexpr int kNone = -1;       // starts from nothing else
constexpr int kNowhere = -2;    // has no place that can be worked out
constexpr int kAmbiguous = -3;  // names a wrap that lies in several places

class Places {
 public:
  explicit Places(Resolver& r) : r_(r), rod_(r.rod), plan_(PlanRest(r)) {
    parts_ = 1;
    guides_ = parts_ + static_cast<int>(rod_.handle.parts.size());
    wraps_ = guides_ + static_cast<int>(rod_.guides.size());
    inscriptions_ = wraps_ + static_cast<int>(rod_.wraps.size());
    count_ = inscriptions_ + static_cast<int>(rod_.inscriptions.size());
    IndexNames();
    for (const auto& placed : r.log.placed) {
      if (!placed.entry->has_place()) continue;
      logged_[placed.entry->what()] = &placed.entry->place();
      logged_at_[&placed.entry->place()] = placed.at.Field("place");
    }
    FindPartsBefore();
    length_.resize(count_);
    for (std::size_t i = 0; i < rod_.handle.parts.size(); ++i) {
      const Part& part = rod_.handle.parts[i];
      if (Positive(part.length)) length_[parts_ + i] = r.Input(*part.length);
    }
    for (int i = guides_; i < wraps_; ++i) length_[i] = Uncertain(0);  // of a guide the ring's plane is placed
    for (std::size_t i = 0; i < rod_.wraps.size(); ++i) {
      if (rod_.wraps[i].length) length_[wraps_ + i] = Uncertain(rod_.wraps[i].length->meters());
    }
    for (std::size_t i = 0; i < rod_.inscriptions.size(); ++i) {
      if (Positive(rod_.inscriptions[i].length)) length_[inscriptions_ + i] = r.Input(*rod_.inscriptions[i].length);
    }
  }

  void Run() {
    enum State : char { kNew, kOpen, kDone };
    std::vector<State> state(count_, kNew);
    std::vector<int> chain;
    for (int first = 0; first < count_; ++first) {
      chain.clear();
      int node = first;
      while (node >= 0 && state[node] == kNew) {
        state[node] = kOpen;
        chain.push_back(node);
        node = StartsFrom(node);
      }
      if (node == kAmbiguous) ReportAmbiguous(chain.back());
      const bool cycle = node >= 0 && state[node] == kOpen;
      if (cycle) ReportCycle(chain, node);
      for (auto at = chain.rbegin(); at != chain.rend(); ++at) {
        state[*at] = kDone;
        if (!cycle) Settle(*at);
      }
      if (!rest_settled_) SettleRestNode(PlacedPart{});  // its chain was the first, and a cycle
    }
    PutButtOnShoulder(rod_);
    CompareRestWithDryFit(r_);
  }

 private:
  void IndexNames() {
    for (int i = parts_; i < guides_; ++i) names_.emplace(rod_.handle.parts[i - parts_].id, i);
    for (int i = wraps_; i < inscriptions_; ++i) {
      const auto [name, added] = names_.emplace(rod_.wraps[i - wraps_].id, i);
      if (!added && name->second >= wraps_) name->second = kAmbiguous;
    }
    for (int i = guides_; i < wraps_; ++i) guide_names_.emplace(rod_.guides[i - guides_].id, i);
    names_.erase("");
    guide_names_.erase("");
    for (const Joint& joint : rod_.blank.joints) joint_names_.emplace(joint.id, &joint);
  }

  // The part of the stack that each part butts against: loose ones and those on another part are no neighbours.
  void FindPartsBefore() {
    int before = kNone;
    for (int i = parts_; i < guides_; ++i) {
      before_.push_back(before);
      const Part& part = rod_.handle.parts[i - parts_];
      if (part.on.empty() && !part.loose) before = i;
    }
  }

  int Named(const std::string& id) const {
    const auto found = names_.find(id);
    return found == names_.end() ? kNowhere : found->second;
  }

  // The place that holds: where the log put it, else as planned. Null where it has none of its own.
  const v1::Place* PlaceOf(int node) const {
    const auto choose = [this](const std::string& id, bool written, const v1::Place& place) {
      const auto logged = id.empty() ? logged_.end() : logged_.find(id);
      return logged != logged_.end() ? logged->second : written ? &place : nullptr;
    };
    if (node < parts_) return nullptr;
    if (node < guides_) {
      const v1::Part& part = r_.design.handle().parts(node - parts_);
      return choose(part.id(), part.has_place(), part.place());
    }
    if (node < wraps_) return choose(rod_.guides[node - guides_].id, false, v1::Place::default_instance());
    if (node < inscriptions_) {
      const v1::Wrap& wrap = WrittenWrap(node);
      return choose(wrap.id(), wrap.has_place(), wrap.place());
    }
    const v1::Inscription& inscription = r_.design.inscriptions(node - inscriptions_);
    return inscription.has_place() ? &inscription.place() : nullptr;
  }

  const v1::Wrap& WrittenWrap(int node) const {
    return r_.design.wraps(rod_.wraps[node - wraps_].at.steps().back().index);
  }

  // The node this one's place starts from: 0 is the blank's rest, on which everything from the tip depends.
  int StartsFrom(int node) const {
    if (node == 0) return plan_.part >= 0 ? parts_ + plan_.part : kNone;
    if (const v1::Place* place = PlaceOf(node)) return StartsFromPlace(*place);
    if (node < guides_) {
      const Part& part = rod_.handle.parts[node - parts_];
      return part.on.empty() ? before_[node - parts_] : Named(part.on);
    }
    if (node < wraps_) return 0;
    if (node >= inscriptions_) return kNowhere;
    const Wrap& wrap = rod_.wraps[node - wraps_];
    if (const auto guide = guide_names_.find(wrap.on); guide != guide_names_.end()) return guide->second;
    if (joint_names_.contains(wrap.on) || (rod_.tip_top && rod_.tip_top->id == wrap.on)) return 0;
    return wrap.on.empty() ? kNowhere : Named(wrap.on);
  }

  int StartsFromPlace(const v1::Place& place) const {
    switch (place.origin_case()) {
      case v1::Place::kFromButt: return kNone;
      case v1::Place::kFromTip:
      case v1::Place::kFromSectionButt: return 0;
      case v1::Place::kAfter: return Named(place.after());
      case v1::Place::kBefore: return Named(place.before());
      case v1::Place::ORIGIN_NOT_SET: break;
    }
    return kNowhere;
  }

  // What the node starts from is settled.
  void Settle(int node) {
    if (node == 0) {
      const int part = plan_.part;
      SettleRestNode(part < 0 ? PlacedPart{}
                              : PlacedPart{rod_.handle.parts[part].start.from_butt_m, length_[parts_ + part]});
      return;
    }
    if (StartsFrom(node) == kNowhere || StartsFrom(node) == kAmbiguous) return;
    const v1::Place* place = PlaceOf(node);
    Along start = place ? FromPlace(*place, node) : WithoutPlace(node);
    StartOf(node) = Complete(std::move(start));
    if (place && node >= guides_ && node < wraps_) CountFromTip(rod_.guides[node - guides_]);
    if (node >= wraps_ && node < inscriptions_ && !length_[node]) {  // some take their length from what they are on
      if (const auto& length = rod_.wraps[node - wraps_].length) length_[node] = Uncertain(length->meters());
    }
  }

  void SettleRestNode(const PlacedPart& part) {
    datums_ = SettleRest(r_, plan_, part);
    rest_settled_ = true;
  }

  Along WithoutPlace(int node) {
    if (node < guides_) {
      const Part& part = rod_.handle.parts[node - parts_];
      if (!part.on.empty()) {
        r_.Assume(part.at.Field("place"), "from the same place as the part it is on", "it has no place of its own");
        return StartOf(Named(part.on));
      }
      const int before = before_[node - parts_];
      return before == kNone ? Along{Uncertain(0), std::nullopt} : EndOf(before);
    }
    if (node < wraps_) return PlaceGuide(rod_.guides[node - guides_]);
    Wrap& wrap = rod_.wraps[node - wraps_];
    const v1::Wrap& written = WrittenWrap(node);
    if (const auto guide = guide_names_.find(wrap.on); guide != guide_names_.end()) {
      return PlaceOnGuide(written, rod_.guides[guide->second - guides_], wrap);
    }
    if (const auto joint = joint_names_.find(wrap.on); joint != joint_names_.end()) return PlaceOnJoint(*joint->second, wrap);
    if (rod_.tip_top && rod_.tip_top->id == wrap.on) return PlaceOnTip(rod_, wrap);
    const int host = Named(wrap.on);
    if (host >= wraps_) {
      if (!wrap.length) wrap.length = rod_.wraps[host - wraps_].length;
      return StartOf(host);
    }
    return PlaceOnPart(rod_.handle.parts[host - parts_], wrap);
  }

  Along PlaceGuide(const Guide& guide) {
    if (!guide.from_tip) return {};
    const Uncertain from_tip = r_.Input(*guide.from_tip);
    return Along{rod_.tip_ring_m, datums_.tip_ring_on_blank_m}.Moved(-from_tip);
  }

  // Of a guide that the log moved: the trade's number that belongs to its new place.
  void CountFromTip(Guide& guide) const {
    std::optional<Uncertain> from_tip;
    if (rod_.tip_ring_m && guide.ring.from_butt_m) {
      from_tip = *rod_.tip_ring_m - *guide.ring.from_butt_m;
    } else if (datums_.tip_ring_on_blank_m && guide.ring.on_blank_m) {
      from_tip = *datums_.tip_ring_on_blank_m - *guide.ring.on_blank_m;
    }
    guide.from_tip.reset();
    if (!from_tip) return;
    guide.from_tip = Known<Length>{Length::Meters(from_tip->value()), std::nullopt, Source::kMeasured,
                                   guide.at.Field("from_tip")};
  }

  // What `from_tip` counts from: of a guide the tip-top's ring centre, as the trade does; of anything else the tip end.
  Along TipDatum(int node) const {
    const bool guide = node >= guides_ && node < wraps_;
    return guide ? Along{rod_.tip_ring_m, datums_.tip_ring_on_blank_m} : Along{rod_.overall_m, datums_.tip_end_on_blank_m};
  }

  Along FromPlace(const v1::Place& place, int node) {
    const auto logged = logged_at_.find(&place);
    const FieldPath at = logged != logged_at_.end() ? logged->second : PathOf(node).Field("place");
    const auto distance = [&](const v1::Length& q, std::string_view name) -> std::optional<Uncertain> {
      const auto known = ReadLength(q, at, name);
      return known ? std::optional<Uncertain>(r_.Input(*known)) : std::nullopt;
    };
    const Uncertain gap = distance(place.gap(), "gap").value_or(Uncertain(0));
    Along tip_side;  // the tip-side edge, of the two origins that place it
    switch (place.origin_case()) {
      case v1::Place::kFromButt: return {distance(place.from_butt(), "from_butt"), std::nullopt};
      case v1::Place::kFromSectionButt: return FromSection(place, distance(place.from_section_butt(), "from_section_butt"));
      case v1::Place::kAfter: return EndOf(Named(place.after())).Moved(gap);
      case v1::Place::kFromTip:
        if (const auto d = distance(place.from_tip(), "from_tip")) tip_side = TipDatum(node).Moved(-*d);
        break;
      case v1::Place::kBefore: tip_side = StartOf(Named(place.before())).Moved(-gap); break;
      case v1::Place::ORIGIN_NOT_SET: return {};
    }
    return length_[node] ? tip_side.Moved(-*length_[node]) : Along{};
  }

  Along FromSection(const v1::Place& place, const std::optional<Uncertain>& distance) const {
    const Section* section = rod_.FindSection(place.section());
    if (!section || !section->start_m || !distance) return {};
    return {std::nullopt, *section->start_m + *distance - *section->from_m};
  }

  Along EndOf(int node) {
    return length_[node] ? StartOf(node).Moved(*length_[node]) : Along{};
  }

  Along& StartOf(int node) {
    if (node < guides_) return rod_.handle.parts[node - parts_].start;
    if (node < wraps_) return rod_.guides[node - guides_].ring;
    if (node < inscriptions_) return rod_.wraps[node - wraps_].start;
    return rod_.inscriptions[node - inscriptions_].start;
  }

  // The other origin, once it is known where the blank lies. Parts that come before it are completed at the end.
  Along Complete(Along at) const {
    if (!rod_.blank_butt_m) return at;
    if (!at.on_blank_m && at.from_butt_m) at.on_blank_m = *at.from_butt_m - *rod_.blank_butt_m;
    if (!at.from_butt_m && at.on_blank_m) at.from_butt_m = *at.on_blank_m + *rod_.blank_butt_m;
    return at;
  }

  void PlaceArbors(Part& part) const {
    for (Arbor& arbor : part.arbors) {
      if (arbor.own_at) arbor.start = part.start.Moved(arbor.own_at->value.meters());
    }
  }

 public:
  // Things that were placed before it was known where the blank lies.
  void CompleteAll() {
    for (Part& part : rod_.handle.parts) {
      part.start = Complete(part.start);
      PlaceArbors(part);
    }
    for (Wrap& wrap : rod_.wraps) wrap.start = Complete(wrap.start);
    for (Guide& guide : rod_.guides) guide.ring = Complete(guide.ring);
    for (Inscription& inscription : rod_.inscriptions) inscription.start = Complete(inscription.start);
  }

 private:
  const FieldPath& PathOf(int node) const {
    if (node < parts_) return rod_.handle.at;
    if (node < guides_) return rod_.handle.parts[node - parts_].at;
    if (node < wraps_) return rod_.guides[node - guides_].at;
    if (node < inscriptions_) return rod_.wraps[node - wraps_].at;
    return rod_.inscriptions[node - inscriptions_].at;
  }

  void ReportCycle(const std::vector<int>& chain, int node) {
    std::vector<std::string> names;
    std::vector<FieldPath> paths;
    for (auto at = std::find(chain.begin(), chain.end(), node); at != chain.end(); ++at) {
      if (names.size() < 10) names.push_back(*at == 0 ? "the blank's rest" : PathOf(*at).ToString());
      if (*at != 0) paths.push_back(PathOf(*at));
    }
    if (paths.empty()) return;
    Finding finding = MakeFinding(kPlaceCycle, paths.front(),
                                  absl::StrCat("these places wait for each other: ", absl::StrJoin(names, ", ")),
                                  {{"things", static_cast<double>(paths.size())}});
    finding.related.assign(paths.begin() + 1, paths.end());
    rod_.findings.push_back(std::move(finding));
  }

  void ReportAmbiguous(int node) {
    rod_.findings.push_back(MakeFinding(kPlaceAmbiguous, PathOf(node),
                                        "the wrap it is placed against is several wraps, one on each guide or foot"));
  }

  Resolver& r_;
  Rod& rod_;
  RestPlan plan_;
  Datums datums_;
  bool rest_settled_ = false;
  int parts_ = 0, guides_ = 0, wraps_ = 0, inscriptions_ = 0, count_ = 0;  // first node of each kind
  std::unordered_map<std::string, int> names_;        // parts and wraps
  std::unordered_map<std::string, int> guide_names_;
  std::unordered_map<std::string, const Joint*> joint_names_;
  std::unordered_map<std::string, const v1::Place*> logged_;
  std::unordered_map<const v1::Place*, FieldPath> logged_at_;
  std::vector<int> before_;                           // by part
  std::vector<std::optional<Uncertain>> length_;      // by node
};

// Where the reel hangs: as the order says, else where the part that holds it has the middle of its foot.
void PlaceReel(Resolver& r) {
  Order& order = r.rod.order;
  if (order.reel_foot_center) {
    order.reel_foot_m = r.Input(*order.reel_foot_center);
    return;
  }
  for (const Part& part : r.rod.handle.parts) {
    if (!part.foot_center || !part.start.from_butt_m) continue;
    order.reel_foot_m = *part.start.from_butt_m + r.Input(*part.foot_center);
    return;
  }
}

}  // namespace

void ResolvePlaces(Resolver& r) {
  Places places(r);
  places.Run();
  places.CompleteAll();
  PlaceReel(r);
}

}  // namespace withy
