#include "withy/guides/train_stock.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "train_parts.h"

namespace withy {
namespace {

constexpr double kSameJ = 1.02;
constexpr std::size_t kMostTrains = 20000;  // gone through
constexpr std::size_t kMostJudged = 120;    // under the loads
constexpr int kStays = -1;                  // of a place whose guide keeps its model

// What the trade calls the size of a ring; 0 = not known.
double RingOf(const Guide& guide) {
  if (guide.ring_outer) return guide.ring_outer->value.meters();
  return guide.ring_inner ? guide.ring_inner->value.meters() : 0;
}

double MassOf(const Guide& guide) {
  return guide.mass ? guide.mass->value.kilograms() : 0;
}

// The figures of a model on a guide that stays what and where it is.
Guide WithModel(const Guide& guide, const Guide& model) {
  Guide to = model;
  to.id = guide.id;
  to.at = guide.at;
  to.from_tip = guide.from_tip;
  to.angle_deg = guide.angle_deg;
  to.foot_towards = guide.foot_towards;
  to.locked = guide.locked;
  to.ring = guide.ring;
  return to;
}

using Train = std::vector<int>;  // in the sorted stock, butt first; kStays

class Chooser {
 public:
  Chooser(const Rod& rod, const TrainPlan& plan, const Practice& practice, std::vector<StockModel> stock)
      : rod_(rod), plan_(plan), practice_(practice), stock_(std::move(stock)) {}

  absl::StatusOr<StockChoice> Run() {
    for (const StockModel& model : stock_) {
      if (RingOf(model.guide) > 0 && model.guide.ring_height && model.guide.mass) continue;
      return absl::FailedPreconditionError(
          absl::StrCat("model '", model.guide.model,
                       "': write ring_outer, ring_height and mass, else no place can be chosen for it"));
    }
    std::stable_sort(stock_.begin(), stock_.end(), [](const StockModel& a, const StockModel& b) {
      if (RingOf(a.guide) != RingOf(b.guide)) return RingOf(a.guide) > RingOf(b.guide);
      return MassOf(a.guide) > MassOf(b.guide);
    });
    Places();
    Train train;
    std::vector<int> left;
    for (const StockModel& model : stock_) left.push_back(model.count);
    Extend(train, left);
    if (trains_.empty()) {
      return absl::FailedPreconditionError(
          "the stock makes no train of so many guides in which no ring is larger than the one before it");
    }
    const std::size_t all = trains_.size();
    KeepUsual();
    const bool kept = KeepFrequency();
    const std::size_t left_over = trains_.size();
    const Train& best = Judge(kept);
    StockChoice choice = {RodWith(best).guides, ""};
    choice.note = absl::StrFormat("Trains from the stock with no ring larger than the one before it: %d. ", all);
    if (kept) {
      absl::StrAppendFormat(
          &choice.note,
          "Of these %d are of usual rings, take the loops off a fixed spool, and keep the first frequency by "
          "Rayleigh's quotient; at one and the same "
          "places the chosen one comes to %.1f deg, the best to %.1f deg, and of those within 2 %% of that it has "
          "the least mass near the tip.",
          left_over, chosen_deg_, best_deg_);
    } else {
      absl::StrAppend(&choice.note,
                      "None keeps the first frequency by Rayleigh's quotient, since guides go nearer to the tip; the "
                      "chosen one has the least mass there.");
    }
    return choice;
  }

 private:
  const Guide& GuideAt(const Train& train, std::size_t k) const {
    return train[k] == kStays ? rod_.guides[plan_.guides[k]] : stock_[train[k]].guide;
  }

  // Where the guides of the plan would go, and how far the blank goes there under a weight at its tip; likewise as it
  // is.
  void Places() {
    const TrainProposal found = ProposeTrain(rod_, plan_, {.compare = false});
    s_m_ = found.proposed ? found.proposed->layout.s_m : ArithmeticLayout(plan_.problem);
    shape_ = TipLoadShape(plan_.problem.beam, s_m_);
    std::vector<double> now_m;
    for (std::size_t k = 0; k < plan_.guides.size(); ++k) {
      const Guide& guide = rod_.guides[plan_.guides[k]];
      now_m.push_back(guide.from_tip ? FromTip(plan_, guide.from_tip->value.meters()) : s_m_[k]);
      stays_.push_back(!guides::StaysBecause(rod_, guide).empty());
    }
    shape_now_ = TipLoadShape(plan_.problem.beam, now_m);
  }

  void Extend(Train& train, std::vector<int>& left) {
    if (trains_.size() >= kMostTrains) return;
    const std::size_t k = train.size();
    if (k == plan_.guides.size()) {
      trains_.push_back(train);
      return;
    }
    const double ring_before = k > 0 ? RingOf(GuideAt(train, k - 1)) : INFINITY;
    const auto next = [&](int model) {
      train.push_back(model);
      if (RingOf(GuideAt(train, k)) <= ring_before) Extend(train, left);
      train.pop_back();
    };
    if (stays_[k]) return next(kStays);
    const auto last = std::find_if(train.rbegin(), train.rend(), [](int model) { return model != kStays; });
    for (int model = last == train.rend() ? 0 : *last; model < static_cast<int>(stock_.size()); ++model) {
      if (left[model] == 0) continue;
      --left[model];
      next(model);
      ++left[model];
    }
  }

  // Takes out what is not so, unless that is all of them.
  bool Keep(const std::function<bool(const Train&)>& is_so) {
    if (std::none_of(trains_.begin(), trains_.end(), is_so)) return false;
    std::erase_if(trains_, [&](const Train& train) { return !is_so(train); });
    return true;
  }

  void KeepUsual() {
    const double low = plan_.clamp_m + plan_.problem.first_low_m, high = plan_.clamp_m + plan_.problem.first_high_m;
    std::vector<bool> takes_loops;
    for (const StockModel& model : stock_) {
      const Guide guide = WithModel(rod_.guides[plan_.guides.front()], model.guide);
      takes_loops.push_back(guides::InConeWithin(rod_, guide, low, high).has_value());
    }
    Keep([&](const Train& train) { return train.front() == kStays || takes_loops[train.front()]; });
    if (practice_.butt_ring) {
      Keep([this](const Train& train) { return practice_.butt_ring->Holds(RingOf(GuideAt(train, 0))); });
    }
    if (practice_.running_ring) {
      Keep([this](const Train& train) {
        return practice_.running_ring->Holds(RingOf(GuideAt(train, train.size() - 1)));
      });
    }
  }

  double SwungMass(const Train& train, const std::vector<double>& shape) const {
    double sum = 0;
    for (std::size_t k = 0; k < train.size(); ++k) sum += MassOf(GuideAt(train, k)) * shape[k] * shape[k];
    return sum;
  }
  double SwungMass(const Train& train) const { return SwungMass(train, shape_); }

  bool KeepFrequency() {
    const double now = SwungMass(Train(plan_.guides.size(), kStays), shape_now_);
    return Keep([&](const Train& train) { return SwungMass(train) <= now * (1 + 1e-9); });
  }

  Rod RodWith(const Train& train) const {
    Rod rod = rod_;
    for (std::size_t k = 0; k < train.size(); ++k) {
      Guide& guide = rod.guides[plan_.guides[k]];
      if (train[k] != kStays) guide = WithModel(guide, stock_[train[k]].guide);
    }
    return rod;
  }

  const Train& Judge(bool kept) {
    std::stable_sort(trains_.begin(), trains_.end(),
                     [this](const Train& a, const Train& b) { return SwungMass(a) < SwungMass(b); });
    if (!kept) return trains_.front();
    if (trains_.size() > kMostJudged) trains_.resize(kMostJudged);
    std::vector<double> j;
    for (const Train& train : trains_) {
      const Layout layout = JudgeLayout(RodWith(train), plan_, s_m_).layout;
      j.push_back(layout.solved ? layout.j : INFINITY);
    }
    const double least = *std::min_element(j.begin(), j.end());
    const auto chosen = std::find_if(j.begin(), j.end(), [least](double value) { return value <= kSameJ * least; });
    constexpr double kDeg = 180 / std::numbers::pi;
    best_deg_ = least * kDeg;
    chosen_deg_ = *chosen * kDeg;
    return trains_[chosen - j.begin()];
  }

  const Rod& rod_;
  const TrainPlan& plan_;
  const Practice& practice_;
  std::vector<StockModel> stock_;  // largest ring first, then heaviest
  std::vector<double> s_m_, shape_, shape_now_;
  std::vector<bool> stays_;
  std::vector<Train> trains_;
  double best_deg_ = 0, chosen_deg_ = 0;
};

}  // namespace

std::vector<double> TipLoadShape(const Beam& beam, const std::vector<double>& s_m) {
  constexpr int kSteps = 400;
  const double length = beam.length(), h = length / kSteps;
  std::vector<double> y = {0};
  double slope = 0;
  auto piece = beam.pieces.begin();
  for (int i = 0; i < kSteps; ++i) {
    const double middle = (i + 0.5) * h;
    while (piece + 1 != beam.pieces.end() && middle > piece->s1) ++piece;
    const double curvature = (length - middle) / piece->StiffnessAt(middle);
    y.push_back(y.back() + slope * h + curvature * h * h / 2);
    slope += curvature * h;
  }
  std::vector<double> shape;
  for (const double s : s_m) {
    const double place = std::clamp(s / h, 0.0, static_cast<double>(kSteps));
    const auto below = std::min(static_cast<std::size_t>(place), static_cast<std::size_t>(kSteps - 1));
    const double share = place - static_cast<double>(below);
    shape.push_back((y[below] + share * (y[below + 1] - y[below])) / y.back());
  }
  return shape;
}

absl::StatusOr<StockChoice> ChooseFromStock(const Rod& rod, const TrainPlan& plan, const Practice& practice,
                                            const std::vector<StockModel>& stock) {
  return Chooser(rod, plan, practice, stock).Run();
}

}  // namespace withy
