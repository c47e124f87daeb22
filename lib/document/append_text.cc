// Log entries in the text form.
#include <algorithm>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_replace.h"
#include "append_forms.h"
#include "format.h"
#include "text_lexer.h"
#include "withy/v1/design.pb.h"
#include "write.h"

namespace withy {
namespace {

// `id: "e5" date: "2026-03-22" by: "Ines Averill"`: the first line of an entry.
std::string HeadOf(const v1::Entry& entry) {
  std::string head;
  const auto add = [&](std::string_view name, const std::string& value) {
    if (value.empty()) return;
    head.append(head.empty() ? "" : " ").append(name).append(": ");
    AppendTextString(value, /*readable=*/true, &head);
  };
  add("id", entry.id());
  add("date", entry.date());
  add("by", entry.by());
  return head;
}

absl::StatusOr<std::string> TextOf(const v1::Entry& entry) {
  v1::Design rest;
  v1::Entry& body = *rest.add_log();
  body = entry;
  body.clear_id();
  body.clear_date();
  body.clear_by();
  body.clear_note();
  std::string text;
  AppendText(rest, Doubles::kExact, &text);  // "log { ... }", on one line or several
  constexpr std::string_view kOpen = "log {";
  const bool is_one_line = text.size() > kOpen.size() && text[kOpen.size()] != '\n';
  text.insert(kOpen.size(), absl::StrCat("\n", HeadOf(entry), is_one_line ? "\n" : ""));
  if (!entry.note().empty()) {  // behind what it is about
    std::string note = "note: ";
    AppendTextString(entry.note(), /*readable=*/true, &note);
    text.insert(text.rfind('}'), note + " ");
  }
  return FormatText(text);
}

struct Place {
  std::size_t offset = 0;
  bool behind_entry = false;    // another entry stands right before it
  bool line_is_shared = false;  // something else follows on the line of that entry
};

// Behind the last `log` of the outermost message, and behind the comment at the end of its line; else the end.
Place PlaceOfNext(std::string_view bytes) {
  Place place{.offset = bytes.size()};
  TextLexer lexer(bytes);
  int depth = 0;
  bool in_log = false, name_may_follow = true, ended = false;
  for (Token token = lexer.Next(); token.kind != TokenKind::kEnd; token = lexer.Next()) {
    const bool separator = token.Is(',') || token.Is(';');
    if (ended && !separator) {
      place.line_is_shared = lexer.Trivia(token).find('\n') == std::string_view::npos;
      ended = false;
    }
    if (ended) place.offset = token.end();
    if (token.Is('{') || token.Is('<') || token.Is('[')) {
      ++depth;
    } else if (token.Is('}') || token.Is('>') || token.Is(']')) {
      if (--depth == 0 && in_log) {
        place = {.offset = token.end(), .behind_entry = true};
        in_log = false, ended = true;
      }
    } else if (depth == 0 && token.kind == TokenKind::kIdentifier && name_may_follow) {
      in_log = lexer.Text(token) == "log";
    }
    name_may_follow = depth == 0 && !token.Is(':');
  }
  if (!place.behind_entry || place.line_is_shared) return place;
  const std::size_t line_end = bytes.find('\n', place.offset);
  place.offset = line_end == std::string_view::npos ? bytes.size() : line_end + 1;
  return place;
}

// How the lines of the file end: as its first does.
std::string_view LineEndOf(std::string_view bytes) {
  const std::size_t first = bytes.find('\n');
  return first != std::string_view::npos && first > 0 && bytes[first - 1] == '\r' ? "\r\n" : "\n";
}

}  // namespace

absl::StatusOr<std::string> AppendLogToText(std::string_view bytes, const std::vector<v1::Entry>& entries) {
  const Place place = PlaceOfNext(bytes);
  const std::string_view before = bytes.substr(0, place.offset), after = bytes.substr(place.offset);
  std::string added;
  if (!before.empty() && before.back() != '\n') added.append("\n");
  if (!place.behind_entry && !before.empty() && !before.ends_with("\n\n")) added.append("\n");
  for (const v1::Entry& entry : entries) {
    const absl::StatusOr<std::string> text = TextOf(entry);
    if (!text.ok()) return text.status();
    added.append(*text);
  }
  if (LineEndOf(bytes) == "\r\n") added = absl::StrReplaceAll(added, {{"\n", "\r\n"}});
  return std::string(before).append(added).append(after);
}

}  // namespace withy
