#include "field_spans.h"

#include "text_lexer.h"

namespace withy {
namespace {

bool Opens(const Token& token) {
  return token.Is('{') || token.Is('<') || token.Is('[');
}
bool Closes(const Token& token) {
  return token.Is('}') || token.Is('>') || token.Is(']');
}

class Walk {
 public:
  Walk(std::string_view bytes, const BodySpan& body) : lexer_(bytes, body.begin), end_(body.end) { Next(); }

  std::vector<FieldSpan> Fields() {
    while (!AtEnd()) {
      if (Separates()) {
        Next();
        continue;
      }
      name_ = lexer_.Text(token_);
      if (token_.kind == TokenKind::kString) name_ = name_.substr(1, name_.size() - 2);
      begin_ = token_.offset;
      if (token_.Is('['))
        SkipGroup();  // the name of an extension
      else
        Next();
      if (token_.Is(':')) Next();
      if (token_.Is('['))
        List();
      else
        fields_.push_back(Value(begin_, false));
    }
    return std::move(fields_);
  }

 private:
  bool AtEnd() const { return token_.kind == TokenKind::kEnd || token_.offset >= end_; }
  bool Separates() const { return token_.Is(',') || token_.Is(';'); }
  void Next() {
    last_end_ = token_.end();
    token_ = lexer_.Next();
  }

  // From a bracket to behind the one that closes it.
  void SkipGroup() {
    int depth = 0;
    do {
      if (Opens(token_)) ++depth;
      if (Closes(token_)) --depth;
      Next();
    } while (depth > 0 && token_.kind != TokenKind::kEnd);
  }

  FieldSpan Value(std::size_t begin, bool in_list) {
    FieldSpan span{name_, begin, 0, {}, in_list};
    if (Opens(token_)) {
      span.body.begin = token_.end();
      SkipGroup();
      span.body.end = last_end_ - 1;
    } else if (token_.kind == TokenKind::kString) {
      while (token_.kind == TokenKind::kString) Next();  // pieces that are one value
    } else {
      if (token_.Is('-')) Next();
      Next();
    }
    span.end = last_end_;
    return span;
  }

  void List() {
    Next();
    while (!AtEnd() && !token_.Is(']')) {
      if (Separates())
        Next();
      else
        fields_.push_back(Value(token_.offset, true));
    }
    Next();
  }

  TextLexer lexer_;
  std::size_t end_, begin_ = 0, last_end_ = 0;
  Token token_;
  std::string_view name_;
  std::vector<FieldSpan> fields_;
};

}  // namespace

BodySpan OutermostBody(std::string_view bytes, bool json) {
  return json ? BodySpan{bytes.find('{') + 1, bytes.rfind('}')} : BodySpan{0, bytes.size()};
}

std::vector<FieldSpan> FieldsIn(std::string_view bytes, const BodySpan& body) {
  return Walk(bytes, body).Fields();
}

}  // namespace withy
