// What sits on the blank, for bending: from what was counted for the balance.
#include "on_the_blank.h"

#include <algorithm>
#include <set>
#include <string>

namespace withy {
namespace {

// The guide or tip-top that a wrap or adhesive is on; empty where it is on anything else.
std::string TrainOf(const Rod& rod, const std::string& id) {
  if (id.empty()) return "";
  if (rod.FindGuide(id) != nullptr || (rod.tip_top && rod.tip_top->id == id)) return id;
  return "";
}

// Contributions of wraps come in the order of the wraps; those that could not be told are left out.
class WrapsInOrder {
 public:
  explicit WrapsInOrder(const Rod& rod) : rod_(rod) {}
  const Wrap* Next(const Contribution& part) {
    for (std::size_t i = next_; i < rod_.wraps.size(); ++i) {
      const Wrap& wrap = rod_.wraps[i];
      const bool same_place = wrap.start.from_butt_m ? part.start_m == wrap.start.from_butt_m->value() : !part.start_m;
      if (wrap.id != part.id || wrap.at != part.at || !same_place) continue;
      next_ = i + 1;
      return &wrap;
    }
    return nullptr;
  }

 private:
  const Rod& rod_;
  std::size_t next_ = 0;
};

}  // namespace

std::vector<OnTheBlank> OnTheBlankOf(const Rod& rod, const std::vector<Contribution>& parts) {
  std::set<std::string> sections;
  for (const int i : rod.blank.assembled) sections.insert(rod.blank.sections[i].at.ToString());
  WrapsInOrder wraps(rod);
  std::vector<OnTheBlank> things;
  for (const Contribution& part : parts) {
    if (sections.contains(part.at.ToString())) continue;
    OnTheBlank thing{part.id, part.at, std::nullopt, part.length_m.value_or(0), part.mass_kg, TrainOf(rod, part.id)};
    if (part.center_m) thing.center_m = part.center_m->value();
    if (const Wrap* wrap = wraps.Next(part)) thing.train = TrainOf(rod, wrap->on);
    things.push_back(std::move(thing));
  }
  return things;
}

}  // namespace withy
