// Writing proposed places into a design.
#include <cmath>
#include <vector>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "bench_text.h"
#include "withy/document/rewrite.h"
#include "withy/review/placement.h"

namespace withy {
namespace {

constexpr double kSameMm = 1e-6;

// As a number of whole steps, so that what is written is as short as the step; in inches where the step is a fraction
// of one.
v1::Length OnGrid(double mm, double grid_mm) {
  constexpr double kInch = 25.4, kFinest = 64;
  const double steps = std::round(mm / grid_mm), per_inch = kInch / grid_mm;
  v1::Length length;
  if (std::abs(per_inch - std::round(per_inch)) < 1e-9 && per_inch <= kFinest + 0.5) {
    length.set_inch(steps / std::round(per_inch));
  } else {
    length.set_mm(std::round(steps * grid_mm * 1e6) / 1e6);
  }
  return length;
}

int IndexOf(const v1::Design& design, const std::string& id) {
  for (int i = 0; i < design.guides_size(); ++i) {
    if (design.guides(i).id() == id) return i;
  }
  return -1;
}

}  // namespace

absl::StatusOr<std::string> WithPlacement(const Document& document, const v1::PlacementReport& proposal,
                                          const PlacementMark& mark, bool unplaced_too) {
  const auto refused = [&document](auto... parts) {
    return absl::FailedPreconditionError(absl::StrCat(document.name, ": not written: ", parts...));
  };
  if (proposal.state() != "placed" && !(unplaced_too && proposal.has_proposed()))
    return refused(proposal.state(), ": ", proposal.why());
  if (proposal.guides_size() != document.design.guides_size()) {
    return refused("the proposal is for ", proposal.guides_size(), " guides and the design lists ",
                   document.design.guides_size(), ": add them or take them out there first, with their wraps");
  }
  v1::Design edited = document.design;
  std::vector<FieldPath> paths;
  std::vector<std::string> moved;
  for (const v1::PlacedFor& guide : proposal.guides()) {
    const int i = IndexOf(edited, guide.id());
    if (i < 0 || guide.locked() || !guide.has_from_tip_mm()) continue;
    v1::Guide& to = *edited.mutable_guides(i);
    const FieldPath at = FieldPath().Field("guides").Item(guide.id(), i);
    const std::optional<double> was_mm = MmOf(to.from_tip());
    const bool moves = !was_mm || std::abs(*was_mm - guide.from_tip_mm()) > kSameMm,
               changes = !guide.model_was().empty();
    if (moves) *to.mutable_from_tip() = OnGrid(guide.from_tip_mm(), proposal.grid_mm());
    if (changes) to.set_model(guide.model());
    if (!moves && !changes) continue;
    paths.push_back(changes ? at : at.Field("from_tip"));  // a word is written with the item that it stands in
    moved.push_back(guide.id());
  }
  if (paths.empty()) return document.bytes;
  v1::Identity& identity = *edited.mutable_identity();
  v1::Change& change = *identity.add_changes();
  change.set_date(mark.date);
  change.set_author(mark.author);
  change.set_summary(absl::StrCat("guides placed for reel, line and loads: ", absl::StrJoin(moved, ", ")));
  paths.push_back(FieldPath().Field("identity").Field("changes").Item("", identity.changes_size() - 1));
  return RewriteFields(document, edited, paths);
}

}  // namespace withy
