#include "words.h"

#include <algorithm>

#include "absl/strings/str_cat.h"
#include "consistency_codes.h"
#include "field_words.h"
#include "withy/findings/nearest_name.h"

namespace withy {
namespace {

bool IsOwnWord(std::string_view word) {
  constexpr std::string_view kOther = "other:";
  return word.starts_with(kOther) && word.find_first_not_of(' ', kOther.size()) != std::string_view::npos;
}

}  // namespace

void CheckWord(const std::string& word, const FieldRules& field, const Spot& spot, std::vector<Finding>& findings) {
  if (IsOwnWord(word) || std::find(field.names.begin(), field.names.end(), word) != field.names.end()) return;
  findings.push_back(
      MakeFinding(kUnknownWord, spot.Path(),
                  absl::StrCat("`", word, "` is not a known word here", DidYouMean(NearestName(word, field.names))), {},
                  absl::StrCat("Known words: ", ListOf(field.names), ". A word of your own is written `other: ...`.")));
}

}  // namespace withy
