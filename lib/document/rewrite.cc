#include "withy/document/rewrite.h"

#include <google/protobuf/message.h>

#include <algorithm>
#include <optional>
#include <utility>

#include "absl/strings/ascii.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "absl/strings/str_replace.h"
#include "absl/strings/str_split.h"
#include "field_spans.h"
#include "write.h"

namespace withy {
namespace {

using google::protobuf::FieldDescriptor;
using google::protobuf::Message;

// Bytes to go, and what comes in their place.
struct Edit {
  std::size_t begin = 0, end = 0;
  std::string text;
};

// One step down: a field, or an item of it.
struct Level {
  const FieldDescriptor* field = nullptr;
  int item = -1;
};

// Levels of a path whose fields all are messages; empty where it leads nowhere in `design`.
std::vector<Level> LevelsOf(const FieldPath& path, const Message& design) {
  std::vector<Level> levels;
  const Message* message = &design;
  const std::vector<FieldPath::Step>& steps = path.steps();
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const FieldDescriptor* field = message->GetDescriptor()->FindFieldByName(steps[i].field);
    if (!field || field->cpp_type() != FieldDescriptor::CPPTYPE_MESSAGE || field->is_map()) return {};
    Level level{field};
    if (field->is_repeated()) {
      if (++i == steps.size() || steps[i].index < 0) return {};
      level.item = steps[i].index;
      if (level.item >= message->GetReflection()->FieldSize(*message, field)) return {};
      message = &message->GetReflection()->GetRepeatedMessage(*message, field, level.item);
    } else {
      if (!message->GetReflection()->HasField(*message, field)) return {};
      message = &message->GetReflection()->GetMessage(*message, field);
    }
    levels.push_back(level);
  }
  return levels;
}

// Canonical JSON on one line. A line feed within a string is escaped.
std::string OnOneLine(std::string_view json) {
  std::string line;
  for (std::size_t i = 0; i < json.size(); ++i) {
    if (json[i] != '\n') {
      line.push_back(json[i]);
      continue;
    }
    while (i + 1 < json.size() && json[i + 1] == ' ') ++i;
    if (!line.empty() && line.back() == ',') line.push_back(' ');
  }
  return line;
}

const Message& Below(const Message& parent, const Level& level) {
  const auto& reflection = *parent.GetReflection();
  return level.item >= 0 ? reflection.GetRepeatedMessage(parent, level.field, level.item)
                         : reflection.GetMessage(parent, level.field);
}

// `{ ... }` on one line where it fits.
std::string ValueText(const Message& value) {
  std::string text;
  AppendText(value, Doubles::kExact, &text);
  std::vector<std::string> lines = absl::StrSplit(text, '\n', absl::SkipEmpty());
  for (std::string& line : lines) absl::StripLeadingAsciiWhitespace(&line);
  if (text.size() <= kLineWidth / 2) return absl::StrCat("{ ", absl::StrJoin(lines, " "), lines.empty() ? "}" : " }");
  text = "{\n";
  std::size_t level = 1;
  for (const std::string& line : lines) {
    if (line == "}" || line == "]") --level;
    absl::StrAppend(&text, std::string(2 * level, ' '), line, "\n");
    if (line.ends_with('{') || line.ends_with('[')) ++level;
  }
  return text + "}";
}

// A field of `parent` as written: with its name, or its value alone. A line that begins in it is indented from 0.
std::string FieldText(const Message& parent, const Level& level, bool json, bool value_alone) {
  if (!json) return (value_alone ? "" : level.field->name() + " ") + ValueText(Below(parent, level));
  std::string text;
  AppendJson(Below(parent, level), Doubles::kExact, &text);
  text = OnOneLine(text);
  if (value_alone) return text;
  return absl::StrCat("\"", level.field->name(), "\": ", level.item >= 0 ? "[" + text + "]" : text);
}

class Rewriter {
 public:
  Rewriter(const Document& document, const v1::Design& edited)
      : bytes_(document.bytes), json_(document.form == Form::kJson), edited_(edited) {}

  void Set(const std::vector<Level>& levels) {
    BodySpan body = OutermostBody(bytes_, json_);
    const Message* parent = &edited_;
    for (std::size_t i = 0; i < levels.size(); ++i) {
      const Level& level = levels[i];
      std::vector<FieldSpan> same = FieldsIn(bytes_, body);
      const std::optional<FieldSpan> last_of_all = same.empty() ? std::nullopt : std::optional(same.back());
      std::erase_if(same, [&](const FieldSpan& f) {
        return f.name != level.field->name() && f.name != level.field->json_name();
      });
      const auto index = static_cast<std::size_t>(std::max(level.item, 0));
      if (index >= same.size()) {
        same.empty() ? AddField(body, last_of_all, *parent, level) : AddItem(same.back(), *parent, level);
        return;
      }
      if (i + 1 == levels.size()) {
        const FieldSpan& old = same[index];
        edits_.push_back(
            {old.begin, old.end, Indented(FieldText(*parent, level, json_, old.in_list), IndentOf(old.begin))});
        return;
      }
      body = same[index].body;
      parent = &Below(*parent, level);
    }
  }

  std::string Bytes() {
    std::stable_sort(edits_.begin(), edits_.end(), [](const Edit& a, const Edit& b) { return a.begin < b.begin; });
    const bool two_byte_ends = bytes_.find("\r\n") != std::string::npos;
    std::string result;
    std::size_t at = 0;
    for (const Edit& edit : edits_) {
      result.append(bytes_, at, edit.begin - at);
      result.append(two_byte_ends ? absl::StrReplaceAll(edit.text, {{"\n", "\r\n"}}) : edit.text);
      at = edit.end;
    }
    return result.append(bytes_, at);
  }

 private:
  std::size_t LineBegin(std::size_t at) const {
    const std::size_t end = at == 0 ? std::string::npos : bytes_.rfind('\n', at - 1);
    return end == std::string::npos ? 0 : end + 1;
  }
  bool BeginsItsLine(std::size_t at) const { return bytes_.find_first_not_of(" \t", LineBegin(at)) >= at; }
  std::string IndentOf(std::size_t at) const {
    const std::size_t line = LineBegin(at);
    return bytes_.substr(line, bytes_.find_first_not_of(" \t", line) - line);
  }
  static std::string Indented(const std::string& text, const std::string& indent) {
    return absl::StrReplaceAll(text, {{"\n", "\n" + indent}});
  }
  void Insert(std::size_t at, std::string text) { edits_.push_back({at, at, std::move(text)}); }

  // To the end of a message.
  void AddField(const BodySpan& body, const std::optional<FieldSpan>& last, const Message& parent, const Level& level) {
    const std::string text = FieldText(parent, level, json_, false);
    if (json_) {
      const bool empty = bytes_.find_first_not_of(" \t\r\n", body.begin) == body.end;
      if (!last) return Insert(body.begin, empty ? text : text + ", ");
      const std::size_t end = last->in_list ? bytes_.find(']', last->end) + 1 : last->end;
      return Insert(end, BeginsItsLine(last->begin) ? ",\n" + IndentOf(last->begin) + text : ", " + text);
    }
    if (body.end == bytes_.size()) {
      return Insert(body.end, (bytes_.empty() || bytes_.back() == '\n' ? "" : "\n") + text + "\n");
    }
    if (BeginsItsLine(body.end)) {
      const std::string indent = IndentOf(body.end) + "  ";
      return Insert(LineBegin(body.end), indent + Indented(text, indent) + "\n");
    }
    const std::size_t end = bytes_.find_last_not_of(" \t", body.end - 1) + 1;
    Insert(end, " " + Indented(text, IndentOf(end)) + (end == body.end ? " " : ""));
  }

  // Behind the last of its list.
  void AddItem(const FieldSpan& last, const Message& parent, const Level& level) {
    const std::string text = FieldText(parent, level, json_, last.in_list);
    const std::string comma = last.in_list ? "," : "";
    if (!BeginsItsLine(last.begin)) return Insert(last.end, comma + " " + text);
    const std::string indent = IndentOf(last.begin);
    const std::string line = "\n" + indent + Indented(text, indent);
    if (last.in_list) return Insert(last.end, comma + line);
    // Behind the comment at the end of its line.
    const std::size_t next = bytes_.find_first_not_of(" \t\r", last.end);
    const bool alone = next == std::string::npos || bytes_[next] == '\n' || bytes_[next] == '#';
    std::size_t end = alone ? std::min(bytes_.find('\n', last.end), bytes_.size()) : last.end;
    if (end > last.end && bytes_[end - 1] == '\r') --end;
    Insert(end, line);
  }

  const std::string& bytes_;
  bool json_;
  const v1::Design& edited_;
  std::vector<Edit> edits_;
};

}  // namespace

absl::StatusOr<std::string> RewriteFields(const Document& document, const v1::Design& edited,
                                          const std::vector<FieldPath>& paths) {
  if (document.version == 0) {
    return absl::FailedPreconditionError(absl::StrCat(
        document.name, ": a design of format version 0; 'withy convert' writes it in the current version"));
  }
  Rewriter rewriter(document, edited);
  for (const FieldPath& path : paths) {
    const std::vector<Level> levels = LevelsOf(path, edited);
    if (levels.empty()) return absl::InvalidArgumentError(absl::StrCat(path.ToString(), ": no such message"));
    if (document.form != Form::kBinary) rewriter.Set(levels);
  }
  std::string bytes = document.form == Form::kBinary ? WriteDesign(edited, Form::kBinary) : rewriter.Bytes();
  const ReadResult again =
      ReadDesign(document.name, bytes, {.max_bytes = bytes.size(), .max_depth = 500, .max_items = bytes.size() + 1});
  if (again.document && DesignDigest(again.document->design) == DesignDigest(edited)) return bytes;
  return absl::InvalidArgumentError(absl::StrCat(
      document.name, ": the fields cannot be written so that they are read back; 'withy check' may say why"));
}

}  // namespace withy
