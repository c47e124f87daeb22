#include "text_outline.h"

#include <iterator>
#include <utility>

#include "absl/strings/str_cat.h"
#include "text_lexer.h"

namespace withy {
namespace {

constexpr int kMaxDepth = 1000;  // the reader allows no more than 500; this one only keeps the stack

using Items = std::vector<OutlineItem>;

OutlineItem CommentItem(std::string_view text, bool empty_line_before) {
  OutlineItem item;
  item.comment = text;
  item.empty_line_before = empty_line_before;
  return item;
}

class Outliner {
 public:
  explicit Outliner(std::string_view bytes) : lexer_(bytes) { Advance(); }

  absl::StatusOr<OutlineBody> Run() {
    OutlineBody root;
    root.kind = BodyKind::kMessage;
    while (MoreItems(&root.items) && token_.kind != TokenKind::kEnd) Field(0, &root.items);
    if (!fault_.ok()) return fault_;
    return root;
  }

 private:
  // A comment before token_ that is not placed yet.
  struct Pending {
    std::string_view text;
    int line_ends;  // between it and the token or comment before it
  };

  // Steps to the next token; the comments on the way are added to pending_.
  void Advance();
  void Fail();
  // The comment on the line that has just been read, if there is one and `slot` is free.
  void TakeTrailing(std::string_view* slot);
  // Every comment not placed yet becomes an item. False where reading has failed.
  bool MoreItems(Items* items);
  void Hoist(Items* items) { MoreItems(items); }

  OutlineItem Begin(const Items& items) const;
  // `hoisted` are comments found within `item`; they go before it.
  static void Append(OutlineItem item, Items hoisted, Items* items);
  void Field(int depth, Items* items);
  void Element(int depth, Items* items);
  void Value(int depth, OutlineItem* item, Items* hoisted);
  void Bracketed(int depth, BodyKind kind, char close, OutlineBody* body);
  void Strings(OutlineItem* item);

  TextLexer lexer_;
  Token token_;
  std::vector<Pending> pending_;
  int line_ends_ = 0;        // between token_ and the comment or token before it
  bool began_line_ = false;  // a line ended between token_ and the token before it
  std::size_t line_ = 0;     // lines ended so far
  int wide_gaps_ = 0;        // so far, of two spaces or more between tokens on one line
  absl::Status fault_;
};

void Outliner::Advance() {
  const bool at_start = token_.kind == TokenKind::kEnd;  // the comments before the first token are on their own lines
  token_ = lexer_.Next();
  line_ends_ = at_start ? 1 : 0;
  began_line_ = at_start;
  const std::string_view trivia = lexer_.Trivia(token_);
  if (trivia.size() > 1 && trivia.find_first_not_of(" \t") == std::string_view::npos) ++wide_gaps_;
  for (std::size_t i = 0; i < trivia.size(); ++i) {
    if (trivia[i] == '\n') {
      ++line_ends_, ++line_;
      began_line_ = true;
    } else if (trivia[i] == '#') {
      const std::size_t end = std::min(trivia.find('\n', i), trivia.size());
      const std::size_t last = trivia.substr(0, end).find_last_not_of(" \t\r");
      pending_.push_back({trivia.substr(i, last + 1 - i), line_ends_});
      line_ends_ = 0;
      i = end - 1;
    }
  }
  if (token_.kind == TokenKind::kInvalid) Fail();
}

void Outliner::Fail() {
  if (fault_.ok()) fault_ = absl::InvalidArgumentError(absl::StrCat("not text form at byte ", token_.offset));
}

void Outliner::TakeTrailing(std::string_view* slot) {
  if (!slot->empty() || pending_.empty() || pending_.front().line_ends > 0) return;
  *slot = pending_.front().text;
  pending_.erase(pending_.begin());
}

bool Outliner::MoreItems(Items* items) {
  for (const Pending& comment : pending_) items->push_back(CommentItem(comment.text, comment.line_ends > 1));
  pending_.clear();
  return fault_.ok();
}

OutlineItem Outliner::Begin(const Items& items) const {
  OutlineItem item;
  item.empty_line_before = line_ends_ > 1;
  item.same_line = !began_line_ && !items.empty();
  return item;
}

void Outliner::Append(OutlineItem item, Items hoisted, Items* items) {
  if (!hoisted.empty()) {
    hoisted.front().empty_line_before = std::exchange(item.empty_line_before, false);
    item.same_line = false;
  }
  std::move(hoisted.begin(), hoisted.end(), std::back_inserter(*items));
  items->push_back(std::move(item));
}

void Outliner::Field(int depth, Items* items) {
  if (token_.kind != TokenKind::kIdentifier && token_.kind != TokenKind::kNumber) return Fail();
  OutlineItem item = Begin(*items);
  Items hoisted;
  const int wide_gaps = wide_gaps_;
  item.name = lexer_.Text(token_);
  Advance();
  Hoist(&hoisted);
  if (token_.Is(':')) Advance();
  Hoist(&hoisted);
  Value(depth, &item, &hoisted);
  item.padded = wide_gaps_ > wide_gaps;
  TakeTrailing(&item.comment);
  if (token_.Is(',') || token_.Is(';')) Advance();
  TakeTrailing(&item.comment);
  Append(std::move(item), std::move(hoisted), items);
}

void Outliner::Element(int depth, Items* items) {
  OutlineItem item = Begin(*items);
  Items hoisted;
  Value(depth, &item, &hoisted);
  TakeTrailing(&item.comment);
  if (token_.Is(',')) {
    Advance();
  } else if (!token_.Is(']')) {
    Fail();
  }
  TakeTrailing(&item.comment);
  Append(std::move(item), std::move(hoisted), items);
}

void Outliner::Value(int depth, OutlineItem* item, Items* hoisted) {
  if (token_.Is('{')) return Bracketed(depth, BodyKind::kMessage, '}', &item->body);
  if (token_.Is('<')) return Bracketed(depth, BodyKind::kMessage, '>', &item->body);
  if (token_.Is('[')) return Bracketed(depth, BodyKind::kList, ']', &item->body);
  if (token_.kind == TokenKind::kString) return Strings(item);
  if (token_.Is('-')) {
    item->text = "-";
    Advance();
    Hoist(hoisted);
  }
  if (token_.kind != TokenKind::kIdentifier && token_.kind != TokenKind::kNumber) return Fail();
  item->text.append(lexer_.Text(token_));
  Advance();
}

void Outliner::Bracketed(int depth, BodyKind kind, char close, OutlineBody* body) {
  if (depth > kMaxDepth) return Fail();
  body->kind = kind;
  const std::size_t line = line_;
  Advance();
  TakeTrailing(&body->comment);
  while (MoreItems(&body->items) && !token_.Is(close)) {
    kind == BodyKind::kMessage ? Field(depth + 1, &body->items) : Element(depth + 1, &body->items);
  }
  body->one_line = line_ == line;
  if (fault_.ok()) Advance();
}

void Outliner::Strings(OutlineItem* item) {
  OutlineBody pieces{.kind = BodyKind::kPieces, .items = {}, .comment = {}, .one_line = true};
  const std::size_t line = line_;
  while (true) {
    OutlineItem piece = Begin(pieces.items);
    piece.text = lexer_.Text(token_);
    pieces.one_line = line_ == line;
    Advance();
    const bool more = token_.kind == TokenKind::kString;
    if (more) TakeTrailing(&piece.comment);  // else it is the field's
    pieces.items.push_back(std::move(piece));
    if (!more) break;
    MoreItems(&pieces.items);
  }
  if (pieces.items.size() == 1) {
    item->text = std::move(pieces.items.front().text);
  } else {
    item->body = std::move(pieces);
  }
}

}  // namespace

absl::StatusOr<OutlineBody> OutlineText(std::string_view bytes) {
  return Outliner(bytes).Run();
}

}  // namespace withy
