#include "withy/document/append.h"

#include <google/protobuf/message.h>

#include <algorithm>
#include <cstdint>
#include <set>

#include "absl/strings/numbers.h"
#include "absl/strings/str_cat.h"
#include "append_forms.h"

namespace withy {
namespace {

using google::protobuf::Message;

// Every "e<number>" that names something.
void CollectNumbers(const Message& message, std::set<std::uint64_t>* numbers) {
  using Field = google::protobuf::FieldDescriptor;
  const google::protobuf::Reflection& reflection = *message.GetReflection();
  std::vector<const Field*> fields;
  reflection.ListFields(message, &fields);
  for (const Field* field : fields) {
    if (field->cpp_type() == Field::CPPTYPE_STRING && field->name() == "id" && !field->is_repeated()) {
      const std::string id = reflection.GetString(message, field);
      std::uint64_t number = 0;
      if (id.size() > 1 && id[0] == 'e' && absl::SimpleAtoi(id.substr(1), &number)) numbers->insert(number);
    }
    if (field->cpp_type() != Field::CPPTYPE_MESSAGE || field->is_map()) continue;
    const int count = field->is_repeated() ? reflection.FieldSize(message, field) : 1;
    for (int i = 0; i < count; ++i) {
      CollectNumbers(field->is_repeated() ? reflection.GetRepeatedMessage(message, field, i)
                                          : reflection.GetMessage(message, field),
                     numbers);
    }
  }
}

absl::StatusOr<std::string> Appended(const Document& document, const std::vector<v1::Entry>& entries) {
  switch (document.form) {
    case Form::kText:
      return AppendLogToText(document.bytes, entries);
    case Form::kJson:
      return AppendLogToJson(document.bytes, entries);
    case Form::kBinary:
      break;
  }
  // Protocol Buffers, "Encoding", last one wins: messages written one behind the other are read as one, lists joined.
  v1::Design addition;
  for (const v1::Entry& entry : entries) *addition.add_log() = entry;
  return document.bytes + addition.SerializeAsString();
}

bool SaysTheSame(const std::string& bytes, const Document& document, const std::vector<v1::Entry>& entries) {
  v1::Design expected = document.design;
  for (const v1::Entry& entry : entries) *expected.add_log() = entry;
  const ReadResult again =
      ReadDesign(document.name, bytes, {.max_bytes = bytes.size(), .max_depth = 500, .max_items = bytes.size() + 1});
  return again.document && DesignDigest(again.document->design) == DesignDigest(expected);
}

}  // namespace

absl::StatusOr<std::string> AppendLog(const Document& document, const std::vector<v1::Entry>& entries) {
  if (document.version == 0) {
    return absl::FailedPreconditionError(absl::StrCat(
        document.name, ": a design of format version 0 has no log; 'withy convert' writes it in the current version"));
  }
  if (entries.empty()) return document.bytes;
  absl::StatusOr<std::string> bytes = Appended(document, entries);
  if (!bytes.ok() || SaysTheSame(*bytes, document, entries)) return bytes;
  return absl::InvalidArgumentError(absl::StrCat(
      document.name, ": the entries cannot be added so that they are read back; 'withy check' may say why"));
}

std::string NextEntryId(const v1::Design& design) {
  std::set<std::uint64_t> taken;
  CollectNumbers(design, &taken);
  std::uint64_t next = 1;
  for (const v1::Entry& entry : design.log()) {
    std::uint64_t number = 0;
    if (entry.id().size() > 1 && entry.id()[0] == 'e' && absl::SimpleAtoi(entry.id().substr(1), &number)) {
      next = std::max(next, number + 1);
    }
  }
  while (next == 0 || taken.count(next) > 0) ++next;
  return absl::StrCat("e", next);
}

}  // namespace withy
