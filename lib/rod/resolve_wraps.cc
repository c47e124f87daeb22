// Wraps one by one: an entry that names ten guides is one wrap per foot of each. Their places come later.
#include <unordered_map>
#include <utility>

#include "read_quantity.h"
#include "resolver.h"

namespace withy {
namespace {

// Common practice 3 to 6 mm, no source; the schema says so where the field is described.
constexpr double kBeyondFootM = 0.004;

using Index = std::unordered_map<std::string, int>;

template <typename List>
Index IndexOf(const List& list) {
  Index index;
  for (std::size_t i = 0; i < list.size(); ++i) {
    if (!list[i].id.empty()) index.emplace(list[i].id, static_cast<int>(i));
  }
  return index;
}

struct Names {
  Index threads, finishes, guides, joints;
};

// Along the rod: as written, else from the turns in one layer and what one turn takes up.
std::optional<Length> WrittenLength(const Resolver& r, const v1::Wrap& from, const Wrap& wrap) {
  if (const auto length = LengthOf(from.length())) {
    return length->meters() > 0 ? length : std::nullopt;
  }
  if (!from.has_turns() || wrap.thread_index < 0) return std::nullopt;
  const auto diameter = Positive(r.rod.threads[wrap.thread_index].diameter);
  if (!diameter || from.turns() == 0) return std::nullopt;
  return *diameter * static_cast<double>(from.turns());
}

Wrap Base(const Resolver& r, const Names& names, const v1::Wrap& from, int i) {
  Wrap wrap;
  wrap.id = from.id();
  wrap.at = FieldPath().Field("wraps").Item(from.id(), i);
  wrap.kind = from.kind();
  wrap.thread = from.thread();
  if (const auto found = names.threads.find(from.thread()); found != names.threads.end()) {
    wrap.thread_index = found->second;
  }
  if (from.has_layers()) wrap.layers = from.layers();
  if (from.has_turns()) wrap.turns = from.turns();
  wrap.coats_known = from.coats_size() <= kMostCoats;
  for (int c = 0; wrap.coats_known && c < from.coats_size(); ++c) {
    const auto found = names.finishes.find(from.coats(c));
    wrap.coats_known = found != names.finishes.end();
    if (wrap.coats_known) wrap.coats.push_back(found->second);
  }
  wrap.length = WrittenLength(r, from, wrap);
  if (from.has_ramp()) {
    wrap.high = LengthOf(from.ramp().high());
    wrap.high_end = from.ramp().high_end() == v1::End::TIP ? End::kTip : End::kButt;
  }
  return wrap;
}

// Foot and both margins; the place follows from the guide.
void FillGuideLength(Resolver& r, const v1::Wrap& from, const Guide& guide, bool& told, Wrap& wrap) {
  wrap.over_foot = true;
  if (wrap.length) return;
  const auto foot = Positive(guide.foot_length);
  if (!foot) return;
  const auto beyond = LengthOf(from.beyond_foot());
  if (!beyond && !told) {
    r.Assume(wrap.at.Field("beyond_foot"), "4 mm", "common practice 3 to 6 mm, no source");
    told = true;
  }
  const double before_ring = LengthOf(from.before_ring()).value_or(Length()).meters();
  const double length = foot->meters() + (beyond ? beyond->meters() : kBeyondFootM) - before_ring;
  if (length > 0) wrap.length = Length::Meters(length);
}

void AddOnGuide(Resolver& r, const v1::Wrap& from, const Guide& guide, bool& told, const Wrap& base) {
  for (int foot = 0; foot < guide.feet(); ++foot) {
    Wrap wrap = base;
    wrap.on = guide.id;
    wrap.foot = guide.feet() == 1 ? (guide.foot_towards == End::kTip ? 1 : 0) : foot;
    FillGuideLength(r, from, guide, told, wrap);
    r.rod.wraps.push_back(std::move(wrap));
  }
}

// The open ends that a joint would split: of a put-over joint the upper section's, of a put-in joint the lower one's, of
// the others both.
void AddOnJoint(Resolver& r, const v1::Wrap& from, const Joint& joint, const Wrap& base) {
  const bool lower = from.joint_side() == v1::End::BUTT ||
                     (from.joint_side() == v1::End::UNSPECIFIED && joint.kind != JointKind::kTipOverButt);
  const bool upper = from.joint_side() == v1::End::TIP ||
                     (from.joint_side() == v1::End::UNSPECIFIED && joint.kind != JointKind::kPutIn);
  for (const int side : {0, 1}) {
    if (side == 0 ? !lower : !upper) continue;
    Wrap wrap = base;
    wrap.on = joint.id;
    wrap.foot = side;
    r.rod.wraps.push_back(std::move(wrap));
  }
}

void AddEntry(Resolver& r, const Names& names, const v1::Wrap& from, int i) {
  const Wrap base = Base(r, names, from, i);
  bool told = false;
  if (from.on().empty() || from.has_place()) {
    Wrap wrap = base;
    if (!from.on().empty()) wrap.on = from.on(0);
    r.rod.wraps.push_back(std::move(wrap));
    return;
  }
  for (const std::string& on : from.on()) {
    if (const auto guide = names.guides.find(on); guide != names.guides.end()) {
      AddOnGuide(r, from, r.rod.guides[guide->second], told, base);
    } else if (const auto joint = names.joints.find(on); joint != names.joints.end()) {
      AddOnJoint(r, from, r.rod.blank.joints[joint->second], base);
    } else {
      Wrap wrap = base;
      wrap.on = on;
      r.rod.wraps.push_back(std::move(wrap));
    }
  }
}

}  // namespace

void ResolveWraps(Resolver& r) {
  const Names names = {IndexOf(r.rod.threads), IndexOf(r.rod.finishes), IndexOf(r.rod.guides),
                       IndexOf(r.rod.blank.joints)};
  std::size_t named = 0;
  for (const v1::Wrap& wrap : r.design.wraps()) named += wrap.on_size() + 1;
  const bool few = WithinLimit(r, FieldPath().Field("wraps"), named, kMostWraps, "wraps");
  for (int i = 0; few && i < r.design.wraps_size(); ++i) AddEntry(r, names, r.design.wraps(i), i);
  if (!WithinLimit(r, FieldPath().Field("inscriptions"), r.design.inscriptions_size(), kMostWraps, "inscriptions")) return;
  for (int i = 0; i < r.design.inscriptions_size(); ++i) {
    const v1::Inscription& from = r.design.inscriptions(i);
    Inscription inscription;
    inscription.id = from.id();
    inscription.at = FieldPath().Field("inscriptions").Item(from.id(), i);
    inscription.length = ReadLength(from.length(), inscription.at, "length");
    r.rod.inscriptions.push_back(std::move(inscription));
  }
}

}  // namespace withy
