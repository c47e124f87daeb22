// What one read has found so far, whatever the form: findings, places, unknown fields, and whether to go on.
#ifndef WITHY_DOCUMENT_READING_H_
#define WITHY_DOCUMENT_READING_H_

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "absl/container/flat_hash_map.h"
#include "google/protobuf/message.h"
#include "withy/document/document.h"
#include "withy/document/source_map.h"

namespace withy {

class Reading {
 public:
  // The bytes and limits must outlive it.
  Reading(std::string_view bytes, Form form, const ReadLimits& limits) : bytes_(bytes), form_(form), limits_(limits) {}

  // Records a finding at a byte. After twenty errors that make the file unreadable the reader is stopped: what follows
  // is usually noise.
  void Report(const Code& code, FieldPath at, std::size_t offset, std::string message, std::string help = "");
  // The same for a slip that one author makes all through a file: of each `kind` the first three are recorded, the rest
  // is counted and told with the third. A thousand of one kind stop the reader.
  void ReportHabit(std::string_view kind, const Code& code, FieldPath at, std::size_t offset, std::string message,
                   std::string help);
  // Records a field that the schema does not have; too many of them stop the reader as well. `kind`: as ReportHabit.
  void ReportUnknown(const Code& code, FieldPath at, std::size_t offset, bool carried, std::string message,
                     std::string help = "", std::string_view kind = "");
  // Counts a field, list item or map entry against the limit.
  void CountItem(std::size_t offset) {
    if (++items_ > limits_.max_items) TooMany(offset);
  }
  // Whether `depth` messages within messages are over the limit.
  bool IsTooDeep(std::size_t depth) const { return static_cast<std::ptrdiff_t>(depth) > limits_.max_depth; }
  // Reports that and stops.
  void ReportTooDeep(const FieldPath& at, std::size_t offset);
  void Stop() { stopped_ = true; }

  bool stopped() const { return stopped_; }
  // Whether everything was understood but for unknown fields.
  bool readable() const { return fatal_ == 0; }
  std::string_view bytes() const { return bytes_; }
  Form form() const { return form_; }
  const ReadLimits& limits() const { return limits_; }
  // "line 3, column 7", or "byte 120" of a binary file.
  std::string PlaceOf(std::size_t offset) const;

  SourceMap positions;
  std::vector<UnknownField> unknown;

  // The findings in the order of the file, with ids in their paths and with positions; those of `unknown` are filled
  // too. `root` is the message that was read, whole or not. The reading is at its end.
  std::vector<Finding> Finish(const google::protobuf::Message& root);

 private:
  struct Habit {
    std::size_t times = 0;
    std::size_t third = 0;  // in findings_
    std::size_t last = 0;   // offset
  };
  void TooMany(std::size_t offset);
  void TellHabits();

  std::string_view bytes_;
  Form form_;
  const ReadLimits& limits_;
  std::vector<Finding> findings_;
  absl::flat_hash_map<std::string, Habit> habits_;
  std::size_t items_ = 0;
  std::size_t fatal_ = 0;
  bool stopped_ = false;
};

}  // namespace withy

#endif  // WITHY_DOCUMENT_READING_H_
