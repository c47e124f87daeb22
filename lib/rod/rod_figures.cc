// Where the figures of `closed` come from.
#include "withy/rod/figure.h"

namespace withy {

std::vector<Figure> RodFigures() {
  constexpr std::string_view kRule =
      "own definition: what was done stays done until an entry corrects, removes or breaks it";
  return {
      {"closed[].kind", "kind of the log's entry", kRule, {}},
      {"closed[].at_end", "the end that was cut", kRule, {"log[cut.section=].cut.at_end"}},
      {"closed[].amount_mm", "logged cuts off this end, added up", kRule, {"log[cut.section=].cut.amount"}},
      {"closed[].count", "counterweights potted, or coats, as logged", kRule, {"log[potted.part=].potted.count"}},
  };
}

}  // namespace withy
