// Lays out JSON again; numbers pass as they were written.
#include <rapidjson/error/en.h>
#include <rapidjson/memorystream.h>
#include <rapidjson/prettywriter.h>
#include <rapidjson/reader.h>
#include <rapidjson/stringbuffer.h>

#include <string>

#include "absl/strings/str_cat.h"
#include "format.h"
#include "write.h"

namespace withy {
namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

// The reader hands every number over as text; the library's own writer would put it in quotes, and leave DEL and C1 bare.
class Layout : public rapidjson::PrettyWriter<rapidjson::StringBuffer> {
 public:
  using PrettyWriter::PrettyWriter;
  bool RawNumber(const char* text, rapidjson::SizeType length, bool /*copy*/) {
    return RawValue(text, length, rapidjson::kNumberType);
  }
  bool String(const char* text, rapidjson::SizeType length, bool /*copy*/) {
    std::string quoted;
    AppendJsonString({text, length}, &quoted);
    return RawValue(quoted.data(), quoted.size(), rapidjson::kStringType);
  }
  bool Key(const char* text, rapidjson::SizeType length, bool copy) { return String(text, length, copy); }
};

}  // namespace

absl::StatusOr<std::string> FormatJson(std::string_view bytes) {
  if (bytes.starts_with(kByteOrderMark)) bytes.remove_prefix(kByteOrderMark.size());
  rapidjson::MemoryStream stream(bytes.data(), bytes.size());
  rapidjson::StringBuffer buffer;
  Layout layout(buffer);
  layout.SetIndent(' ', 2);
  rapidjson::Reader reader;
  constexpr unsigned kFlags = rapidjson::kParseIterativeFlag | rapidjson::kParseNumbersAsStringsFlag;
  if (const rapidjson::ParseResult result = reader.Parse<kFlags>(stream, layout); !result) {
    return absl::InvalidArgumentError(
        absl::StrCat(rapidjson::GetParseError_En(result.Code()), " (byte ", result.Offset(), ")"));
  }
  return absl::StrCat(absl::string_view(buffer.GetString(), buffer.GetSize()), "\n");
}

}  // namespace withy
