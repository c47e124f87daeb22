// What a form cannot carry.
#include <cstddef>
#include <string_view>

#include "absl/strings/str_cat.h"
#include "text_lexer.h"
#include "withy/document/document.h"
#include "withy/document/upgrade.h"

namespace withy {
namespace {

// A name that was misspelt is nowhere but in the bytes; a number is in the design, which JSON cannot show; and a number
// of an older version means something else in this one.
bool IsLost(const UnknownField& field, const Document& document, Form form) {
  return !field.carried || form == Form::kJson || document.version != kCurrent;
}

std::string NameOf(const FieldPath& path) {
  return path.empty() ? "" : path.steps().back().field;
}

// The lines at the head of a text file that name the schema are written again, so they are not lost.
std::size_t SchemaLines(std::string_view bytes) {
  TextLexer lexer(bytes);
  std::string_view head = lexer.Trivia(lexer.Next());
  std::size_t lines = 0;
  while (!head.empty()) {
    const std::string_view line = head.substr(0, head.find('\n'));
    if (line.starts_with("# proto-file:") || line.starts_with("# proto-message:")) ++lines;
    head.remove_prefix(std::min(head.size(), line.size() + 1));
  }
  return lines;
}

}  // namespace

std::vector<Loss> LossesInForm(const Document& document, Form form) {
  std::vector<Loss> losses;
  for (const UnknownField& field : document.unknown) {
    if (IsLost(field, document, form))
      losses.push_back({field.at, absl::StrCat("unknown field '", NameOf(field.at), "'")});
  }
  if (document.form != Form::kText) return losses;
  const std::size_t comments = document.comments - std::min(document.comments, SchemaLines(document.bytes));
  if (comments > 0) {
    losses.push_back({FieldPath(), absl::StrCat(comments, comments == 1 ? " comment" : " comments"), /*comment=*/true});
  }
  return losses;
}

}  // namespace withy
