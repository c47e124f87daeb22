// Adding log entries to the bytes of one form; AppendLog chooses, and reads the result again.
#ifndef WITHY_DOCUMENT_APPEND_FORMS_H_
#define WITHY_DOCUMENT_APPEND_FORMS_H_

#include <string>
#include <string_view>
#include <vector>

#include "absl/status/statusor.h"
#include "withy/v1/log.pb.h"

namespace withy {

absl::StatusOr<std::string> AppendLogToText(std::string_view bytes, const std::vector<v1::Entry>& entries);
absl::StatusOr<std::string> AppendLogToJson(std::string_view bytes, const std::vector<v1::Entry>& entries);

}  // namespace withy

#endif  // WITHY_DOCUMENT_APPEND_FORMS_H_
