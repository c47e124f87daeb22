// Prints an outline of the text form.
#include <algorithm>
#include <iterator>
#include <utility>

#include "absl/strings/ascii.h"
#include "align_rows.h"
#include "format.h"
#include "text_outline.h"
#include "utf8.h"
#include "write.h"

namespace withy {
namespace {

constexpr int kMostPasses = 5;                // seen: two; the bound is against a layout that never comes to rest
constexpr std::size_t kWidestAligned = 80;  // columns; a wider line does not push its neighbours' comments away

// Appends `item` as one line without the comment at its end; false where it cannot be one.
bool AppendOnOneLine(const OutlineItem& item, std::string* out);

bool AppendOnOneLine(const OutlineBody& body, std::string* out) {
  const bool is_empty = body.items.empty() && body.comment.empty();
  if (!body.one_line && !is_empty) return false;  // a comment ends a line, so there is none in here
  const std::string_view separator = body.kind == BodyKind::kList ? ", " : " ";
  if (body.kind == BodyKind::kMessage) out->append(is_empty ? "{" : "{ ");
  if (body.kind == BodyKind::kList) out->append("[");
  for (const OutlineItem& item : body.items) {
    if (&item != &body.items.front()) out->append(separator);
    if (!AppendOnOneLine(item, out)) return false;
  }
  if (body.kind == BodyKind::kMessage) out->append(is_empty ? "}" : " }");
  if (body.kind == BodyKind::kList) out->append("]");
  return true;
}

void AppendName(const OutlineItem& item, std::string* out) {
  if (item.name.empty()) return;
  out->append(item.name).append(item.body.kind == BodyKind::kMessage ? " " : ": ");
}

bool AppendOnOneLine(const OutlineItem& item, std::string* out) {
  AppendName(item, out);
  if (item.body.kind != BodyKind::kNone) return AppendOnOneLine(item.body, out);
  out->append(item.text);
  return true;
}

bool IsNumber(std::string_view token) {
  const std::size_t sign = token.starts_with('-') ? 1 : 0;
  return token.size() > sign && (absl::ascii_isdigit(static_cast<unsigned char>(token[sign])) || token[sign] == '.');
}

// Appends the tokens of an item that can be one line; false where it cannot.
bool AppendCells(const OutlineItem& item, Row* row) {
  const OutlineBody& body = item.body;
  if (body.kind != BodyKind::kMessage) {
    std::string value = item.text;
    if (body.kind != BodyKind::kNone && !AppendOnOneLine(body, &value)) return false;
    row->push_back({std::string(item.name) + ":", Cell::Kind::kStructure});
    row->push_back({value, IsNumber(value) ? Cell::Kind::kNumber : Cell::Kind::kWord});
    return true;
  }
  row->push_back({std::string(item.name), Cell::Kind::kStructure});
  if (body.items.empty() && body.comment.empty()) {
    row->push_back({"{}", Cell::Kind::kStructure});
    return true;
  }
  if (!body.one_line) return false;
  row->push_back({"{", Cell::Kind::kStructure});
  for (const OutlineItem& field : body.items) {
    if (!AppendCells(field, row)) return false;
  }
  row->push_back({"}", Cell::Kind::kStructure});
  return true;
}

class Printer {
 public:
  // Each item on a line of its own or behind the one before it, as the author had it and as it fits; the outermost each on
  // its own. `begun`: the line of the first is there already.
  void Items(const OutlineBody& body, int depth, bool begun = false);

  // Comments at the ends of neighbouring lines begin in one column, but for those of lines wider than kWidestAligned.
  // Returns what was written.
  std::string WithAlignedComments() const;

 private:
  // A comment at the end of a line.
  struct Trailing {
    int line;           // number of its line
    std::size_t width;  // of the line before it, in characters
    std::size_t at;     // where it begins, its two spaces included
  };

  void Item(const OutlineItem& item, int depth);
  static std::vector<Row> TableAt(const OutlineBody& body, std::size_t begin, int depth);
  static std::vector<std::string> Lines(const OutlineBody& body, int depth);
  static std::size_t Room(int depth) { return kLineWidth - std::min(kLineWidth, static_cast<std::size_t>(2 * depth)); }
  void EndLine() {
    if (!out_.empty()) out_.push_back('\n'), ++lines_;
  }
  void BeginLine(int depth) {
    EndLine();
    line_ = out_.size();
    out_.append(static_cast<std::size_t>(2 * depth), ' ');
  }
  bool Fits(std::size_t more) const { return out_.size() - line_ + more <= kLineWidth; }
  void Comment(std::string_view comment) {
    if (comment.empty()) return;
    trailing_.push_back({lines_, CodePoints(std::string_view(out_).substr(line_)), out_.size()});
    out_.append("  ").append(comment);
  }

  std::string out_;
  std::size_t line_ = 0;  // where the line being written began
  int lines_ = 0;
  std::vector<Trailing> trailing_;
};

const OutlineItem* LastElement(const OutlineBody& body) {
  const OutlineItem* last = nullptr;
  for (const OutlineItem& item : body.items) last = item.IsComment() ? last : &item;
  return last;
}

// The rows that begin with `items[begin]`: neighbouring messages of one field, each alone on a line that has room for it.
std::vector<Row> Printer::TableAt(const OutlineBody& body, std::size_t begin, int depth) {
  const std::vector<OutlineItem>& items = body.items;
  const auto shares_line = [&](std::size_t i) {
    return depth > 0 && (body.one_line || items[i].same_line || (i + 1 < items.size() && items[i + 1].same_line));
  };
  std::vector<Row> rows;
  bool padded = false;
  for (std::size_t i = begin; i < items.size() && body.kind == BodyKind::kMessage; ++i) {
    const OutlineItem& item = items[i];
    if (item.body.kind != BodyKind::kMessage || item.name != items[begin].name || shares_line(i)) break;
    if (i > begin && item.empty_line_before) break;
    Row row;
    if (!AppendCells(item, &row) || Joined(row).size() > Room(depth)) break;
    rows.push_back(std::move(row));
    padded = padded || item.padded;
  }
  if (!padded) rows.clear();
  return rows;
}

// Each item of `body` as one line, empty where it cannot be one. Rows that the author lined up are lined up.
std::vector<std::string> Printer::Lines(const OutlineBody& body, int depth) {
  std::vector<std::string> lines;
  while (lines.size() < body.items.size()) {
    const std::vector<Row> rows = TableAt(body, lines.size(), depth);
    if (!rows.empty()) {
      std::vector<std::string> table = AlignedRows(rows, Room(depth));
      std::move(table.begin(), table.end(), std::back_inserter(lines));
      continue;
    }
    const OutlineItem& item = body.items[lines.size()];
    std::string line;
    if (item.IsComment() || !AppendOnOneLine(item, &line)) line.clear();
    lines.push_back(std::move(line));
  }
  return lines;
}

void Printer::Items(const OutlineBody& body, int depth, bool begun) {
  const OutlineItem* last = LastElement(body);
  const std::vector<std::string> lines = Lines(body, depth);
  bool may_continue = false;  // the line being written may take another item
  for (const OutlineItem& item : body.items) {
    const std::string_view comma = body.kind == BodyKind::kList && !item.IsComment() && &item != last ? "," : "";
    std::string line = lines[static_cast<std::size_t>(&item - body.items.data())];
    const bool is_line = !line.empty();
    line.append(comma);
    if (is_line && may_continue && item.same_line && Fits(line.size() + 1)) {
      out_.append(" ").append(line);
    } else {
      const bool is_first = &item == &body.items.front();
      if (item.empty_line_before && !is_first) EndLine();
      if (!is_first || !begun) BeginLine(depth);
      if (item.IsComment()) {
        out_.append(item.comment);
        may_continue = false;
        continue;
      }
      const bool on_one_line = is_line && (Fits(line.size()) || item.body.kind == BodyKind::kNone);
      if (on_one_line) {
        out_.append(line);
      } else {
        Item(item, depth);
        out_.append(comma);
      }
      may_continue = on_one_line && depth > 0;
    }
    Comment(item.comment);
    may_continue = may_continue && item.comment.empty();
  }
}

// An item that takes several lines; the first has begun.
void Printer::Item(const OutlineItem& item, int depth) {
  const OutlineBody& body = item.body;
  if (body.kind == BodyKind::kPieces) {
    if (item.name.empty()) return Items(body, depth, /*begun=*/true);
    out_.append(item.name).append(":");
    return Items(body, depth + 1);
  }
  AppendName(item, &out_);
  out_.push_back(body.kind == BodyKind::kMessage ? '{' : '[');
  Comment(body.comment);
  Items(body, depth + 1);
  BeginLine(depth);
  out_.push_back(body.kind == BodyKind::kMessage ? '}' : ']');
}

std::string Printer::WithAlignedComments() const {
  std::string aligned;
  std::size_t done = 0;
  for (std::size_t i = 0; i < trailing_.size();) {
    std::size_t end = i, column = 0;
    for (; end < trailing_.size() && trailing_[end].line == trailing_[i].line + static_cast<int>(end - i); ++end) {
      if (trailing_[end].width <= kWidestAligned) column = std::max(column, trailing_[end].width);
    }
    for (; i < end; ++i) {
      aligned.append(out_, done, trailing_[i].at - done);
      if (trailing_[i].width < column) aligned.append(column - trailing_[i].width, ' ');
      done = trailing_[i].at;
    }
  }
  return aligned.append(out_, done);
}

}  // namespace

absl::StatusOr<std::string> FormatText(std::string_view bytes) {
  std::string text(bytes);
  // Where a long line is broken, what comes to stand alone may become a row of a table: repeated until it is at rest.
  for (int pass = 0; pass < kMostPasses; ++pass) {
    const absl::StatusOr<OutlineBody> outline = OutlineText(text);
    if (!outline.ok()) return outline.status();
    Printer printer;
    printer.Items(*outline, 0);
    std::string next = printer.WithAlignedComments();
    if (!next.empty()) next.push_back('\n');
    if (next == text) break;
    text = std::move(next);
  }
  return text;
}

}  // namespace withy
