// What a code means, printed from its one declaration.
#ifndef WITHY_REVIEW_EXPLAIN_H_
#define WITHY_REVIEW_EXPLAIN_H_

#include <string>
#include <vector>

#include "withy/findings/finding.h"
#include "withy/review/terminal_text.h"

namespace withy {

// One code: name, severity and since when, summary, why it matters, what to do. Ends with a line end.
std::string ExplainText(const Code& code, const TextStyle& style);

// A table: name, severity, summary, the summary wrapped under itself.
std::string CodeListText(const std::vector<Code>& codes, const TextStyle& style);

// The same as a JSON array of objects with `code`, `severity`, `summary`, `why`, `action` and `since`.
std::string CodeListJson(const std::vector<Code>& codes);

}  // namespace withy

#endif  // WITHY_REVIEW_EXPLAIN_H_
