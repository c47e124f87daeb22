#include "replies.h"

#include <algorithm>
#include <climits>
#include <cmath>

#include "absl/strings/match.h"
#include "absl/strings/str_cat.h"
#include "plain_text.h"
#include "practice_table.h"

namespace withy::plugin {
namespace {

absl::Status Lie(std::string_view what) {
  return absl::AbortedError(absl::StrCat("its process sent what is not a result: ", std::string(what)));
}

bool ArePlain(std::initializer_list<const std::string*> lines) {
  return std::all_of(lines.begin(), lines.end(), [](const std::string* line) { return IsPlainLine(*line); });
}

bool ReadOption(const host::v1::DeclaredOption& option, PluginOption& out) {
  out = {option.name(), option.type(), option.default_value(), option.summary(), option.has_default_value()};
  return IsIdentifier(out.name) && (out.type == "string" || out.type == "number" || out.type == "boolean") &&
         ArePlain({&out.summary, &out.default_value});
}

bool ReadEntry(const host::v1::Entry& entry, PluginEntry& out) {
  out.name = entry.name();
  out.summary = entry.summary();
  for (const std::string& extension : entry.extensions()) {
    if (!IsSlug(extension)) return false;
    out.extensions.push_back(extension);
  }
  switch (entry.kind()) {
    case host::v1::Entry::CHECK: {
      const auto severity = static_cast<Severity>(entry.severity());
      if (entry.severity() > static_cast<std::uint32_t>(Severity::kError) || severity == Severity::kCannotTell)
        return false;
      out.kind = PluginEntry::Kind::kCheck;
      out.severity = SeverityName(severity);
      break;
    }
    case host::v1::Entry::EXPORTER:
      if (out.extensions.size() != 1) return false;
      out.kind = PluginEntry::Kind::kExporter;
      out.extension = out.extensions.front();
      out.extensions.clear();
      for (const std::string& want : entry.wants()) {
        if (!IsIdentifier(want)) return false;
        out.wants.push_back(want);
      }
      break;
    case host::v1::Entry::IMPORTER:
      out.kind = PluginEntry::Kind::kImporter;
      break;
    default:
      return false;
  }
  for (const host::v1::DeclaredOption& option : entry.options()) {
    if (!ReadOption(option, out.options.emplace_back())) return false;
  }
  return IsSlug(out.name) && IsPlainLine(out.summary);
}

bool ReadPractices(const host::v1::Info& info, PluginInfo& out) {
  if (info.practices_size() > kMostPractices) return false;
  for (const host::v1::Practice& message : info.practices()) {
    std::optional<Practice> practice = PracticeFrom(message, out.name);
    if (!practice) return false;
    for (const Practice& other : out.practices) {
      if (other.technique == practice->technique) return false;
    }
    out.practices.push_back(*std::move(practice));
  }
  return true;
}

bool IsFailure(std::uint32_t status) {
  switch (static_cast<absl::StatusCode>(status)) {
    case absl::StatusCode::kInvalidArgument:
    case absl::StatusCode::kResourceExhausted:
    case absl::StatusCode::kFailedPrecondition:
    case absl::StatusCode::kNotFound:
    case absl::StatusCode::kOutOfRange:
      return true;
    default:
      return false;
  }
}

}  // namespace

absl::Status ReplyReader::Accept(const Reply& reply) {
  if (!stopped_at_.empty()) return Lie("something after its end");
  return std::visit([this](const auto& value) { return Take(value); }, reply);
}

absl::Status ReplyReader::Take(const host::v1::Info& info) {
  if (info_ || !results_.empty()) return Lie("a second description");
  PluginInfo read;
  read.api = static_cast<int>(info.api());
  read.name = info.name();
  read.version = info.version();
  read.license = info.license();
  read.summary = info.summary();
  if (read.api != kPluginApi || !IsSlug(read.name) || !ArePlain({&read.version, &read.license, &read.summary})) {
    return Lie("a description that is not plain");
  }
  if (info.entries_size() > kMostEntries || info.entries_size() + info.practices_size() == 0) {
    return Lie("a wrong number of entries");
  }
  for (const host::v1::Entry& entry : info.entries()) {
    if (!ReadEntry(entry, read.entries.emplace_back())) return Lie("an entry that is not plain");
  }
  if (!ReadPractices(info, read)) return Lie("a practice that is none");
  info_ = std::move(read);
  return absl::OkStatus();
}

absl::Status ReplyReader::Take(const host::v1::Remark& remark) {
  if (!info_ || current_.findings.size() >= kMostRemarks) return Lie("too many findings");
  Finding finding;
  absl::StatusOr<FieldPath> at = FieldPath::Parse(remark.at());
  if (!at.ok() || !IsPlainLine(remark.at(), kLongestPath)) return Lie("a path that is none");
  if (remark.message().empty() || !ArePlain({&remark.message(), &remark.help()}))
    return Lie("a message that is not plain");
  if (remark.severity() > static_cast<std::uint32_t>(Severity::kError)) return Lie("a severity that does not exist");
  finding.at = *std::move(at);
  finding.severity = static_cast<Severity>(remark.severity());
  finding.message = remark.message();
  finding.help = remark.help();
  for (const host::v1::Number& number : remark.numbers()) {
    if (!IsIdentifier(number.name()) || !std::isfinite(number.value())) return Lie("a number that is not finite");
    finding.numbers.push_back({number.name(), number.value()});
  }
  if (finding.numbers.size() > kMostNumbers) return Lie("too many numbers");
  if (remark.line() > INT_MAX || remark.column() > INT_MAX) return Lie("a line that does not exist");
  if (remark.line() > 0)
    finding.position = Position{0, static_cast<int>(remark.line()), static_cast<int>(remark.column())};
  current_.findings.push_back(std::move(finding));
  return absl::OkStatus();
}

absl::Status ReplyReader::Take(const host::v1::File& file) {
  if (!info_ || current_.files.size() >= static_cast<std::size_t>(limits_.files)) return Lie("too many files");
  if (!IsPlainFileName(file.name())) return Lie("a file name that is not plain");
  for (const OutputFile& other : current_.files) {
    if (absl::EqualsIgnoreCase(other.name, file.name())) return Lie("a file twice");
  }
  current_.files.push_back({file.name(), file.bytes()});
  return absl::OkStatus();
}

absl::Status ReplyReader::Take(const host::v1::Outcome& outcome) {
  if (results_.size() >= kMostEntries) return Lie("too many results");
  if (outcome.status() != 0) {
    if (!IsFailure(outcome.status()) || !IsPlainLine(outcome.message(), kLongestFailure))
      return Lie("a failure that is none");
    current_ = {};
    current_.status = absl::Status(static_cast<absl::StatusCode>(outcome.status()), outcome.message());
  } else if (!info_) {
    return Lie("a result without a description");
  }
  current_.exhausted = outcome.exhausted();
  current_.design = outcome.design();
  results_.push_back(std::move(current_));
  current_ = {};
  return absl::OkStatus();
}

absl::Status ReplyReader::Take(const StoppedAt& stopped) {
  if (stopped.location.empty() || !IsPlainLine(stopped.location)) return Lie("a place that is none");
  stopped_at_ = stopped.location;
  return absl::OkStatus();
}

}  // namespace withy::plugin
