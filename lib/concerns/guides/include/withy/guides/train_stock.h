// Guides at hand: which ring and frame goes where.
//
//   absl::StatusOr<StockChoice> chosen = ChooseFromStock(rod, plan, wishes.practice, stock);
//   chosen->guides[2].model                  // of Rod::guides[2], with all figures of that model
//
// All trains are gone through in which no ring is larger than the one before it, butt to tip, at the places that the
// guides of the plan would get. Of these are kept, as long as any is left: those whose butt guide takes the loops off a
// fixed spool; those whose butt ring and running ring are usual; those that do not lower the first frequency, by
// Rayleigh's quotient: sum of mass x y(s)^2 over the guides no larger than of the train as and where it is, y the
// deflection of the blank under a weight at its tip. Of those whose largest angle J is then within 2 % of the least,
// the one with the least of that sum is chosen: the least mass near the tip. Where none keeps the frequency it is the
// one with the least of that sum of all. What stays keeps its model.
#ifndef WITHY_GUIDES_TRAIN_STOCK_H_
#define WITHY_GUIDES_TRAIN_STOCK_H_

#include <string>
#include <vector>

#include "absl/status/statusor.h"
#include "withy/guides/train_plan.h"

namespace withy {

struct StockModel {
  Guide guide;  // with the figures of the model; id and places are of no consequence
  int count = 0;
};

struct StockChoice {
  std::vector<Guide> guides;  // as Rod::guides, models chosen
  std::string note;           // how, with numbers
};

// FailedPrecondition: a model without ring size or height, or no train of so many guides can be made.
absl::StatusOr<StockChoice> ChooseFromStock(const Rod& rod, const TrainPlan& plan, const Practice& practice,
                                            const std::vector<StockModel>& stock);

// Deflection of a beam under a weight at its end, at each of `s_m`, over that at the end: the shape that Rayleigh's
// quotient is taken with. Euler-Bernoulli, y'' = (L - s) / EI(s), midpoint rule.
std::vector<double> TipLoadShape(const Beam& beam, const std::vector<double>& s_m);

}  // namespace withy

#endif  // WITHY_GUIDES_TRAIN_STOCK_H_
