#include "reading.h"

#include <algorithm>
#include <utility>

#include "absl/strings/str_cat.h"
#include "reading_codes.h"
#include "withy/document/path_cursor.h"

namespace withy {
namespace {

constexpr std::size_t kMostErrors = 20;
constexpr std::size_t kMostUnknownFields = 1000;
constexpr std::size_t kToldOfAHabit = 3;
constexpr std::size_t kMostOfAHabit = 1000;

// Turns offsets that never go back into positions, in one pass over the bytes however many are asked for.
class PositionRun {
 public:
  explicit PositionRun(std::string_view bytes) : bytes_(bytes) {}

  Position At(std::size_t offset) {
    const Position further = PositionAt(bytes_.substr(last_.offset), offset - last_.offset);
    if (further.line == 1) {
      last_.column += further.column - 1;
    } else {
      last_.column = further.column;
    }
    last_.line += further.line - 1;
    last_.offset += further.offset;
    return last_;
  }

 private:
  std::string_view bytes_;
  Position last_ = {0, 1, 1};
};

}  // namespace

void Reading::Report(const Code& code, FieldPath at, std::size_t offset, std::string message, std::string help) {
  Finding finding = MakeFinding(code, std::move(at), std::move(message), {}, std::move(help));
  finding.position = Position{std::min(offset, bytes_.size()), 0, 0};
  findings_.push_back(std::move(finding));
  const bool rest_is_read =
      code.severity != Severity::kError || code.name == kUnknownField.name || code.name == kFormatMissing.name;
  if (!rest_is_read && ++fatal_ >= kMostErrors) Stop();
}

void Reading::ReportHabit(std::string_view kind, const Code& code, FieldPath at, std::size_t offset,
                          std::string message, std::string help) {
  Habit& habit = habits_[std::string(kind)];
  habit.last = offset;
  if (++habit.times >= kMostOfAHabit) Stop();
  if (habit.times > kToldOfAHabit) return;
  habit.third = findings_.size();
  Report(code, std::move(at), offset, std::move(message), std::move(help));
}

void Reading::TellHabits() {
  for (const auto& [kind, habit] : habits_) {
    if (habit.times <= kToldOfAHabit) continue;
    const std::size_t more = habit.times - kToldOfAHabit;
    absl::StrAppend(&findings_[habit.third].message, "; ", more, " more of this kind, the last at ",
                    PlaceOf(habit.last));
  }
}

void Reading::ReportUnknown(const Code& code, FieldPath at, std::size_t offset, bool carried, std::string message,
                            std::string help, std::string_view kind) {
  unknown.push_back({at, Position{offset, 0, 0}, carried});
  if (kind.empty()) {
    Report(code, std::move(at), offset, std::move(message), std::move(help));
  } else {
    ReportHabit(kind, code, std::move(at), offset, std::move(message), std::move(help));
  }
  if (unknown.size() < kMostUnknownFields) return;
  Report(kTooMany, {}, offset, absl::StrCat("this is unknown field number ", kMostUnknownFields),
         "This is hardly a design of this format; check that it is the file you meant.");
  Stop();
}

void Reading::TooMany(std::size_t offset) {
  if (stopped_) return;
  Report(kTooMany, {}, offset, absl::StrCat("more than ", limits_.max_items, " fields and list items"));
  Stop();
}

void Reading::ReportTooDeep(const FieldPath& at, std::size_t offset) {
  // The whole path would be as deep as the limit; its beginning says where to look.
  constexpr std::size_t kShown = 8;
  FieldPath shown;
  for (std::size_t i = 0; i < std::min(kShown, at.steps().size()); ++i) {
    const FieldPath::Step& step = at.steps()[i];
    shown = step.field.empty() ? std::move(shown).Item(step.id, step.index) : std::move(shown).Field(step.field);
  }
  Report(kTooDeep, std::move(shown), offset, absl::StrCat("more than ", limits_.max_depth, " levels of nesting"));
  Stop();
}

std::string Reading::PlaceOf(std::size_t offset) const {
  if (form_ == Form::kBinary) return absl::StrCat("byte ", offset);
  const Position place = PositionAt(bytes_, offset);
  return absl::StrCat("line ", place.line, ", column ", place.column);
}

std::vector<Finding> Reading::Finish(const google::protobuf::Message& root) {
  TellHabits();
  std::stable_sort(findings_.begin(), findings_.end(),
                   [](const Finding& a, const Finding& b) { return a.position->offset < b.position->offset; });
  PositionRun found(bytes_), unknown_found(bytes_);
  for (Finding& finding : findings_) {
    finding.at = WithIds(finding.at, root);
    if (form_ != Form::kBinary) finding.position = found.At(finding.position->offset);
  }
  for (UnknownField& field : unknown) {
    field.at = WithIds(field.at, root);
    if (form_ != Form::kBinary) field.position = unknown_found.At(field.position.offset);
  }
  return std::move(findings_);
}

}  // namespace withy
