#include "withy/findings/field_path.h"

#include <charconv>
#include <cstddef>
#include <utility>

#include "absl/status/status.h"
#include "absl/strings/str_cat.h"

namespace withy {
namespace {

bool IsDigit(char c) {
  return c >= '0' && c <= '9';
}
bool IsNameCharacter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_' || IsDigit(c);
}

// An id that would read back as something else stands in quotes: one of digits alone would be an index.
bool NeedsQuotes(std::string_view id) {
  return id.find_first_of("[]\"\\") != std::string_view::npos ||
         id.find_first_not_of("0123456789") == std::string_view::npos;
}

void AppendId(std::string_view id, std::string& out) {
  if (!NeedsQuotes(id)) {
    out += id;
    return;
  }
  out += '"';
  for (char c : id) {
    if (c == '"' || c == '\\') out += '\\';
    out += c;
  }
  out += '"';
}

// Reads a path from left to right; every failure says at which character.
class PathParser {
 public:
  explicit PathParser(std::string_view text) : text_(text) {}

  absl::StatusOr<FieldPath> Parse() {
    FieldPath path;
    while (at_ < text_.size()) {
      absl::Status status = text_[at_] == '[' ? ParseItem(path) : ParseField(path);
      if (!status.ok()) return status;
    }
    return path;
  }

 private:
  absl::Status Fail(std::string_view what) const {
    return absl::InvalidArgumentError(absl::StrCat("field path: ", std::string(what), " at character ", at_ + 1));
  }

  absl::Status ParseField(FieldPath& path) {
    if (!path.empty()) {
      if (text_[at_] != '.') return Fail("expected '.' or '['");
      ++at_;
    }
    const std::size_t begin = at_;
    while (at_ < text_.size() && IsNameCharacter(text_[at_])) ++at_;
    if (at_ == begin) return Fail("expected a field name");
    path = std::move(path).Field(text_.substr(begin, at_ - begin));
    return absl::OkStatus();
  }

  absl::Status ParseItem(FieldPath& path) {
    if (path.empty()) return Fail("expected a field name");
    ++at_;
    const bool quoted = at_ < text_.size() && text_[at_] == '"';
    std::string id;
    if (absl::Status status = quoted ? ReadQuoted(id) : ReadPlain(id); !status.ok()) return status;
    if (at_ == text_.size() || text_[at_] != ']') return Fail("expected ']'");
    int index = -1;
    if (!quoted && IsDigit(id[0]) && id.find_first_not_of("0123456789") == std::string::npos) {
      const auto [end, error] = std::from_chars(id.data(), id.data() + id.size(), index);
      if (error != std::errc()) return Fail("the index is too large");
      id.clear();
    }
    ++at_;
    path = std::move(path).Item(id, index);
    return absl::OkStatus();
  }

  absl::Status ReadPlain(std::string& id) {
    const std::size_t begin = at_;
    while (at_ < text_.size() && text_[at_] != ']' && text_[at_] != '[' && text_[at_] != '"') ++at_;
    id = text_.substr(begin, at_ - begin);
    return id.empty() ? Fail("expected an index or an id") : absl::OkStatus();
  }

  absl::Status ReadQuoted(std::string& id) {
    for (++at_; at_ < text_.size(); ++at_) {
      if (text_[at_] == '"') {
        ++at_;
        return absl::OkStatus();
      }
      if (text_[at_] == '\\' && ++at_ == text_.size()) break;
      id += text_[at_];
    }
    return Fail("the quotes are not closed");
  }

  std::string_view text_;
  std::size_t at_ = 0;
};

}  // namespace

FieldPath FieldPath::Field(std::string_view name) const& {
  return FieldPath(*this).Field(name);
}

FieldPath FieldPath::Field(std::string_view name) && {
  steps_.push_back({.field = std::string(name), .id = "", .index = -1});
  return std::move(*this);
}

FieldPath FieldPath::Item(std::string_view id, int index) const& {
  return FieldPath(*this).Item(id, index);
}

FieldPath FieldPath::Item(std::string_view id, int index) && {
  steps_.push_back({.field = "", .id = std::string(id), .index = index});
  return std::move(*this);
}

absl::StatusOr<FieldPath> FieldPath::Parse(std::string_view text) {
  return PathParser(text).Parse();
}

std::string FieldPath::ToString() const {
  std::string out;
  for (const Step& step : steps_) {
    if (!step.field.empty()) {
      if (!out.empty()) out += '.';
      out += step.field;
      continue;
    }
    out += '[';
    if (step.id.empty() && step.index >= 0) {
      out += std::to_string(step.index);
    } else {
      AppendId(step.id, out);
    }
    out += ']';
  }
  return out;
}

bool FieldPath::IsWithin(const FieldPath& other) const {
  if (steps_.size() < other.steps_.size()) return false;
  for (std::size_t i = 0; i < other.steps_.size(); ++i) {
    const Step& mine = steps_[i];
    const Step& theirs = other.steps_[i];
    if (mine.field != theirs.field) return false;
    const bool by_id = !mine.id.empty() && !theirs.id.empty();
    if (by_id ? mine.id != theirs.id : mine.index != theirs.index) return false;
  }
  return true;
}

}  // namespace withy
