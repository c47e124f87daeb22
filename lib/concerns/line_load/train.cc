// Where the line runs: rings and reel along the blank.
#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "withy/line_load/line_load.h"

namespace withy {
namespace {

constexpr double kDegree = std::numbers::pi / 180;

class Train {
 public:
  Train(const Rod& rod, const std::vector<double>* places_of, std::vector<Assumption>* assumptions,
        std::vector<Unknown>* unknowns)
      : rod_(rod), places_of_(places_of), assumptions_(assumptions), unknowns_(unknowns) {}

  std::optional<LineTrain> Make() {
    train_.side = rod_.order.side;
    if (train_.side == 0) CannotTell("say on which side of the rod reel and rings are (intent.reel.side)");
    PlaceReel();
    AddGuides();
    AddTipTop();
    if (!known_) return std::nullopt;
    return std::move(train_);
  }

 private:
  void CannotTell(std::string measure) {
    known_ = false;
    if (unknowns_ != nullptr) unknowns_->push_back({"line_load", std::move(measure)});
  }
  void Assume(FieldPath at, std::string used, std::string why) {
    if (assumptions_ != nullptr) assumptions_->push_back({std::move(at), std::move(used), std::move(why)});
  }

  // Says so: no height of a reel or ring is counted from the other side of the blank.
  bool IsNegative(const Known<Length>& height) {
    if (height.value.meters() >= 0) return false;
    CannotTell(absl::StrFormat("correct %s: %g mm is below zero", height.at.ToString(), height.value.mm()));
    return true;
  }

  // Where the line leaves the reel. Of a spool across the rod the line leaves from the rim, anywhere around it and
  // along its width, and most from a guide that sweeps it: the middle of the reel foot at the height of the spool's
  // axis stands for all of that, half a spool away at most. A spool along the rod lets the line run off over its lip,
  // all around its axis: the middle of the lip stands for that.
  void PlaceReel() {
    const Order& order = rod_.order;
    if (!order.reel_foot_m) {
      CannotTell("measure where the middle of the reel foot is, from the butt end (intent.reel.foot_center_from_butt)");
    }
    if (!order.spool_axis_height) {
      CannotTell("measure from the axis of the blank to that of the spool (intent.reel.spool_axis_height)");
    }
    if (!order.reel_foot_m || !order.spool_axis_height || IsNegative(*order.spool_axis_height)) return;
    const double lip_m = order.spool_lip ? order.spool_lip->value.meters() : 0;
    const double tilt = order.spool_axis_angle_deg ? order.spool_axis_angle_deg->value * kDegree : 0;
    train_.reel_m = order.reel_foot_m->value() + lip_m;
    train_.reel_height_m = std::max(0.0, order.spool_axis_height->value.meters() - lip_m * std::tan(tilt));
    if (order.spool_lip) return;
    const bool across = order.side > 0 || order.technique == "fly" || order.technique == "conventional";
    Assume(FieldPath().Field("intent").Field("reel").Field("spool_lip_from_foot_center"),
           absl::StrFormat("the line leaves the reel over the middle of its foot, %.1f mm from the blank's axis",
                           train_.reel_height_m * 1000),
           across ? "the axis of the spool, across the rod, stands for the rim that the line runs off from: it may "
                    "leave half a spool higher or lower"
                  : "the lip of a spool along the rod is ahead of that by a few centimetres: measure it");
  }

  std::optional<double> PlaceOf(std::size_t i) const {
    if (places_of_ != nullptr && i < places_of_->size() && std::isfinite((*places_of_)[i])) {
      return rod_.tip_ring_m->value() - (*places_of_)[i];
    }
    if (places_of_ != nullptr || !rod_.guides[i].ring.from_butt_m) return std::nullopt;
    return rod_.guides[i].ring.from_butt_m->value();
  }

  // The ring's height is counted from the blank's surface under it.
  void Add(double ring_m, double offset_m, const Maybe<double>& angle_deg) {
    const double turned_deg = angle_deg ? std::remainder(angle_deg->value, 360) : 0;
    const bool first_turned = std::all_of(train_.turned.begin(), train_.turned.end(), [](double a) { return a == 0; });
    if (turned_deg != 0 && first_turned) {
      Assume(angle_deg->at, "the blank bends in one plane and does not roll",
             "a ring turned about the blank moves the line's path in space, and that is in it; the roll of the blank "
             "that such an arrangement exists to cure is not");
    }
    train_.ring_m.push_back(ring_m);
    train_.offset_m.push_back(offset_m);
    train_.turned.push_back(turned_deg == 0 ? 0 : train_.side * turned_deg * kDegree);
  }

  void AddGuide(std::size_t i, double ring_m) {
    const Guide& guide = rod_.guides[i];
    const std::optional<double> diameter = rod_.BlankDiameterAt(ring_m);
    if (!guide.ring_height) {
      CannotTell(absl::StrCat("measure how high the ring of '", guide.id, "' stands (guide_models[].ring_height)"));
    } else if (!diameter) {
      CannotTell(absl::StrCat("guide '", guide.id, "' is not on the blank: measure its place again"));
    }
    if (!guide.ring_height || !diameter || IsNegative(*guide.ring_height)) return;
    train_.guides.push_back(static_cast<int>(i));
    Add(ring_m, guide.ring_height->value.meters() + *diameter / 2, guide.angle_deg);
  }

  void AddGuides() {
    if (!rod_.tip_ring_m) {
      CannotTell(rod_.rest_measure.empty() ? "say where the blank begins in the handle" : rod_.rest_measure);
      return;
    }
    std::vector<std::pair<double, std::size_t>> placed;
    for (std::size_t i = 0; i < rod_.guides.size(); ++i) {
      if (const auto place = PlaceOf(i)) placed.emplace_back(*place, i);
    }
    std::sort(placed.begin(), placed.end());
    for (std::size_t k = 0; k < placed.size(); ++k) {
      const auto& [ring_m, i] = placed[k];
      const std::string& id = rod_.guides[i].id;
      constexpr double kApartM = 1e-4;  // thinner than any ring
      if (k > 0 && ring_m - placed[k - 1].first < kApartM) {
        CannotTell(
            absl::StrCat("'", rod_.guides[placed[k - 1].second].id, "' and '", id, "' are at one place: move one"));
      } else if (ring_m > rod_.tip_ring_m->value() - kApartM) {
        CannotTell(absl::StrCat("guide '", id, "' is not behind the tip-top: measure its place again"));
      } else {
        AddGuide(i, ring_m);
      }
    }
  }

  void AddTipTop() {
    if (!rod_.tip_top) {
      CannotTell("describe the tip-top: the line runs through it");
    } else if (!rod_.tip_top->ring_height) {
      CannotTell("measure from the axis of the tip-top's tube to the centre of its ring (tip_top.ring_height)");
    } else if (!IsNegative(*rod_.tip_top->ring_height) && rod_.tip_ring_m) {
      Add(rod_.tip_ring_m->value(), rod_.tip_top->ring_height->value.meters(), rod_.tip_top->angle_deg);
    }
  }

  const Rod& rod_;
  const std::vector<double>* const places_of_;
  std::vector<Assumption>* const assumptions_;
  std::vector<Unknown>* const unknowns_;
  LineTrain train_;
  bool known_ = true;
};

}  // namespace

std::optional<LineTrain> TrainOf(const Rod& rod, const std::vector<double>* places_of,
                                 std::vector<Assumption>* assumptions, std::vector<Unknown>* unknowns) {
  return Train(rod, places_of, assumptions, unknowns).Make();
}

}  // namespace withy
