// The explicit list of all codes, in the order in which the floors and concerns run.
#include <unordered_map>

#include "codes.h"
#include "withy/balance/balance.h"
#include "withy/bending/bending.h"
#include "withy/bonding/bonding.h"
#include "withy/document/document.h"
#include "withy/findings/nearest_name.h"
#include "withy/fit/fit.h"
#include "withy/guides/guides.h"
#include "withy/line_load/line_load.h"
#include "withy/review/review.h"
#include "withy/rod/rod.h"
#include "withy/sections/sections.h"
#include "withy/wraps/wraps.h"

namespace withy {
namespace {

std::vector<Code> AllCodes() {
  std::vector<Code> all;
  for (const auto& codes : {DocumentCodes(), RodCodes(), SectionsCodes(), BendingCodes(), LineLoadCodes(), FitCodes(), BondingCodes(), GuidesCodes(),
                            WrapsCodes(), BalanceCodes(), ReviewCodes()}) {
    all.insert(all.end(), codes.begin(), codes.end());
  }
  return all;
}

}  // namespace

const std::vector<Code>& Catalogue() {
  static const std::vector<Code>* const all = new std::vector<Code>(AllCodes());
  return *all;
}

const Code* FindCode(std::string_view name, std::string* nearest) {
  std::vector<std::string_view> names;
  for (const Code& code : Catalogue()) {
    if (code.name == name) return &code;
    names.push_back(code.name);
  }
  if (nearest) *nearest = NearestName(name, names);
  return nullptr;
}

}  // namespace withy
