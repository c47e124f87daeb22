#include "consistency_codes.h"
#include "reading_codes.h"
#include "withy/document/document.h"

namespace withy {

std::vector<Code> DocumentCodes() {
  std::vector<Code> codes = ReadingCodes();
  const std::vector<Code> consistency = ConsistencyCodes();
  codes.insert(codes.end(), consistency.begin(), consistency.end());
  return codes;
}

}  // namespace withy
