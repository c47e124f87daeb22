// What would balance the rod without counterweights.
#ifndef WITHY_BALANCE_REMEDIES_H_
#define WITHY_BALANCE_REMEDIES_H_

#include <optional>

#include "weights_in.h"
#include "withy/balance/balance.h"

namespace withy {

// Fills in answers.instead from the moment without counterweights (with those that are potted), answers.parts and the reel.
// Only changes that can be made: masses no less than half of what they are, at most 100 g more, a butt at most 300 mm longer
// (common practice, no source).
void FindRemedies(const Rod& rod, const std::optional<Sums>& reel, BalanceAnswers& answers);

}  // namespace withy

#endif  // WITHY_BALANCE_REMEDIES_H_
