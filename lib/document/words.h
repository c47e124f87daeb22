// Words of open lists.
#ifndef WITHY_DOCUMENT_WORDS_H_
#define WITHY_DOCUMENT_WORDS_H_

#include <string>
#include <vector>

#include "schema_rules.h"
#include "spot.h"
#include "withy/findings/finding.h"

namespace withy {

// Checks a word that is not empty: one of the known ones, or the author's own, "other: ice jigging".
void CheckWord(const std::string& word, const FieldRules& field, const Spot& spot, std::vector<Finding>& findings);

}  // namespace withy

#endif  // WITHY_DOCUMENT_WORDS_H_
