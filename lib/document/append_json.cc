// Log entries in the JSON form.
#include <rapidjson/memorystream.h>
#include <rapidjson/reader.h>

#include <algorithm>

#include "absl/strings/str_replace.h"
#include "append_forms.h"
#include "write.h"

namespace withy {
namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

// Where things of the outermost object end, in bytes. What was not met is 0. The parser tells of a scalar when it is behind
// it, of a brace or bracket while it stands on it.
struct Outline : rapidjson::BaseReaderHandler<rapidjson::UTF8<>, Outline> {
  explicit Outline(const rapidjson::MemoryStream& stream) : stream(stream) {}

  const rapidjson::MemoryStream& stream;
  std::size_t object_begin = 0;     // behind its brace
  std::size_t last_member_end = 0;  // behind the last value
  std::size_t list_begin = 0;       // behind the bracket of "log"
  std::size_t last_item_end = 0;    // behind the last of "log"
  std::size_t null_end = 0;         // behind a "log" that is null
  int depth = 0;
  bool in_log = false;

  // Of scalars.
  bool Default() {
    EndValue(stream.Tell());
    return true;
  }
  bool Null() {
    if (depth == 1 && in_log) null_end = stream.Tell();
    return Default();
  }
  bool Key(const char* text, rapidjson::SizeType length, bool /*copy*/) {
    if (depth == 1) in_log = std::string_view(text, length) == "log";
    return true;
  }
  bool StartObject() {
    if (++depth == 1) object_begin = stream.Tell() + 1;
    return true;
  }
  bool StartArray() {
    if (++depth == 2 && in_log) list_begin = stream.Tell() + 1;
    return true;
  }
  bool EndObject(rapidjson::SizeType /*count*/) {
    --depth;
    EndValue(stream.Tell() + 1);
    return true;
  }
  bool EndArray(rapidjson::SizeType /*count*/) {
    --depth;
    EndValue(stream.Tell() + 1);
    return true;
  }
  void EndValue(std::size_t end) {
    if (depth == 1) last_member_end = end;
    if (depth == 2 && in_log) last_item_end = end;
  }
};

// The white space that the line at `offset` begins with.
std::string IndentAt(std::string_view bytes, std::size_t offset) {
  const std::size_t line = bytes.rfind('\n', offset) == std::string_view::npos ? 0 : bytes.rfind('\n', offset) + 1;
  return std::string(bytes.substr(line, bytes.find_first_not_of(" \t", line) - line));
}

// A file all on one line stays on one line.
std::string OnOneLine(std::string_view json) {
  std::string line;
  for (std::size_t i = 0; i < json.size(); ++i) {
    if (json[i] != '\n') {
      line.push_back(json[i]);
      continue;
    }
    while (i + 1 < json.size() && json[i + 1] == ' ') ++i;
  }
  return line;
}

// Items of a list, each on lines of its own below `indent`.
std::string ItemsText(const std::vector<v1::Entry>& entries, const std::string& indent) {
  std::string text;
  for (const v1::Entry& entry : entries) {
    std::string item;
    AppendJson(entry, Doubles::kExact, &item);
    text.append(text.empty() ? "\n" : ",\n").append(indent);
    text.append(absl::StrReplaceAll(item, {{"\n", "\n" + indent}}));
  }
  return text;
}

}  // namespace

absl::StatusOr<std::string> AppendLogToJson(std::string_view bytes, const std::vector<v1::Entry>& entries) {
  const std::size_t mark = bytes.starts_with(kByteOrderMark) ? kByteOrderMark.size() : 0;
  rapidjson::MemoryStream stream(bytes.data() + mark, bytes.size() - mark);
  Outline outline(stream);
  rapidjson::Reader reader;
  constexpr unsigned kFlags = rapidjson::kParseIterativeFlag | rapidjson::kParseNumbersAsStringsFlag;
  if (!reader.Parse<kFlags>(stream, outline) || outline.object_begin == 0) {
    return absl::InvalidArgumentError("not a JSON object");
  }
  std::size_t at = 0, replaced = 0;  // where to write, and how many bytes before it go
  std::string text;
  const std::size_t near = outline.list_begin > 0 ? outline.list_begin : outline.last_member_end;
  const std::string outer = IndentAt(bytes, mark + std::max<std::size_t>(near, 1) - 1);
  if (outline.list_begin > 0) {
    const bool first = outline.last_item_end == 0;
    at = first ? outline.list_begin : outline.last_item_end;
    const std::string indent = first ? outer + "  " : IndentAt(bytes, mark + outline.last_item_end - 1);
    text = (first ? "" : ",") + ItemsText(entries, indent) + (first ? "\n" + outer : "");
  } else if (outline.null_end > 0) {
    at = outline.null_end, replaced = std::string_view("null").size();
    text = "[" + ItemsText(entries, outer + "  ") + "\n" + outer + "]";
  } else {
    at = outline.last_member_end > 0 ? outline.last_member_end : outline.object_begin;
    text = std::string(outline.last_member_end > 0 ? "," : "") + "\n" + outer + "\"log\": [" +
           ItemsText(entries, outer + "  ") + "\n" + outer + "]";
  }
  if (bytes.find('\n') >= bytes.size() - 1) text = OnOneLine(text);
  if (bytes.find("\r\n") != std::string_view::npos) text = absl::StrReplaceAll(text, {{"\n", "\r\n"}});
  at += mark;
  return std::string(bytes.substr(0, at - replaced)).append(text).append(bytes.substr(at));
}

}  // namespace withy
