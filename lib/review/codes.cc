#include "codes.h"

namespace withy {

std::vector<Code> ReviewCodes() {
  return {kUnusedWaiver, kUnknownWaiverCode, kWaiverPath, kNotWaivable};
}

}  // namespace withy
